import { LINES } from '../../glass/lines.ts';
import { AIR, plainIndex } from '../../glass/medium.ts';
import { cardinal } from '../../trace/cardinal.ts';
import type { Lens } from '../../trace/lens.ts';
import { paraxialRay, type RayPair, rayPair } from '../../trace/paraxial-rays.ts';
import { prescription } from '../../trace/prescription.ts';
import { rays, trace } from '../../trace/rays.ts';
import { seidelBySurface, seidelSums } from '../../trace/seidel.ts';
import type { Check, Value } from '../check.ts';
import { lensOf, ofLens, type PrintedLens } from './printed-lens.ts';
import { entrancePupilMm } from './pupil-of-stop.ts';

/** The media here are given by an index alone: any wavelength will do. */
const ANY_NM = LINES.d;

const EXAMPLE: PrintedLens = { radii: ['50', '-50', 'plane'], thicknessesMm: [10, 2], media: [plainIndex(1.5), plainIndex(1.6)] };
const EXAMPLE_MM = 300;
/** The axial ray from 300 mm before the lens, 10 mm high at its first surface; the principal ray is read for an object of 20 mm. */
const axial = paraxialRay(prescription(lensOf(EXAMPLE), ANY_NM), 10, 10 / EXAMPLE_MM);
const principal = paraxialRay(prescription(lensOf(EXAMPLE), ANY_NM), 0, -20 / EXAMPLE_MM);
const imageMm = -(axial.height[2] as number) / (axial.slope[3] as number);

const TRIPLET: PrintedLens = {
  radii: ['37.40', '-341.48', '-42.65', '36.40', 'plane', '204.52', '-37.05'],
  thicknessesMm: [5.9, 12.93, 2.5, 2, 9.85, 5.9],
  media: [plainIndex(1.61272), AIR, plainIndex(1.64769), AIR, AIR, plainIndex(1.61272)],
};
const TRIPLET_STOP = 4;
const triplet = prescription(lensOf(TRIPLET), ANY_NM);
const tripletRays = rayPair(triplet, { pupilRadiusMm: 14.6, pupilDistanceMm: entrancePupilMm(triplet, TRIPLET_STOP), slope: 0.21 });
const tripletCardinal = cardinal(triplet);

/** Height, slope behind and angle of incidence of both rays at a surface, as table 6.1 lists them. */
function tableRow(surface: number, printed: readonly string[]): Value[] {
  const of = (which: keyof RayPair) => {
    const { height, slope, incidence } = tripletRays[which];
    return [height[surface], slope[surface + 1], (incidence[surface] as number) / (triplet.index[surface] as number)];
  };
  const values = [...of('marginal'), ...of('chief')] as number[];
  const names = ['axial height', 'axial slope', 'axial incidence', 'principal height', 'principal slope', 'principal incidence'];
  return printed.map((text, i) => ({ what: names[i] as string, printed: text, of: () => values[i] as number }));
}

/** A textbook's cemented doublet: its radii are the rounded reciprocals of the curvatures that were traced. */
const DOUBLET: PrintedLens = {
  radii: ['7.3895', '-5.1784', '-16.2225'],
  thicknessesMm: [1.05, 0.4],
  media: [plainIndex(1.517), plainIndex(1.649)],
};

/** Where a real ray parallel to the axis at height `y` crosses it, from the last vertex. */
function crossing(lens: Lens, y: number): number {
  const ray = rays(1);
  [ray.y[0], ray.N[0]] = [y, 1];
  trace(prescription(lens, ANY_NM), ray);
  return (ray.z[0] as number) - ((ray.y[0] as number) * (ray.N[0] as number)) / (ray.M[0] as number);
}

export const RAY_TABLES: readonly Check[] = [
  {
    id: 'RAY-001',
    claim: 'an axial ray through a cemented lens from an object 300 mm before it',
    source: 'optical-engineering',
    known: 'read',
    how: 'a paraxial ray, surface by surface',
    values: [
      { what: 'y2', printed: '9.555556', of: () => axial.height[1] as number },
      { what: 'n u behind surface 2', printed: '-0.0475556', of: () => 1.6 * (axial.slope[2] as number) },
      { what: 'y3', printed: '9.496111', of: () => axial.height[2] as number },
      { what: "l'", printed: '199.6846', of: () => imageMm },
    ],
  },
  {
    id: 'RAY-002',
    claim: 'the principal ray of the same lens through the middle of its first surface, and the image of an object of 20 mm',
    source: 'optical-engineering',
    known: 'read',
    how: 'a paraxial ray, followed to where the axial ray crosses the axis',
    values: [
      { what: 'y3', printed: '-0.528889', of: () => principal.height[2] as number },
      { what: 'n u behind surface 3', printed: '-0.0675556', of: () => principal.slope[3] as number },
      { what: 'image height', printed: '-14.0187', of: () => (principal.height[2] as number) + imageMm * (principal.slope[3] as number) },
    ],
  },
  {
    id: 'RAY-010',
    claim: "a triplet's focal length, back focal length, numerical aperture, f-number and image height",
    source: 'optical-engineering',
    known: 'read',
    how: 'the cardinal points, and the marginal and the chief ray',
    values: [
      { what: 'focal length', printed: '101.181', of: () => tripletCardinal.effectiveFocalLengthMm },
      { what: 'back focal length', printed: '77.405', of: () => tripletCardinal.backFocalLengthMm },
      { what: 'numerical aperture', printed: '0.1443', of: () => -(tripletRays.marginal.slope[7] as number) },
      { what: 'f-number', printed: '3.47', of: () => tripletCardinal.effectiveFocalLengthMm / (2 * 14.6) },
      {
        what: 'image height',
        printed: '21.248',
        of: () => (tripletRays.chief.height[6] as number) + tripletCardinal.backFocalLengthMm * (tripletRays.chief.slope[7] as number),
      },
    ],
  },
  {
    id: 'RAY-011',
    claim: "the triplet's Petzval radius over its focal length",
    source: 'optical-engineering',
    known: 'read',
    how: 'the fourth Seidel sum is the square of the invariant over the Petzval radius',
    values: [
      {
        printed: '-2.935',
        of: () => -((14.6 * 0.21) ** 2 / seidelSums(seidelBySurface(triplet, tripletRays)).S4) / tripletCardinal.effectiveFocalLengthMm,
      },
    ],
  },
  {
    id: 'RAY-012',
    claim: "both paraxial rays at the triplet's first surface",
    source: 'optical-engineering',
    known: 'read',
    how: 'the marginal and the chief ray, with the pupil that is the image of the stop',
    values: tableRow(0, ['14.600000', '-0.148315', '0.390374', '-6.411174', '0.195343', '0.038578']),
  },
  {
    id: 'RAY-013',
    claim: "both paraxial rays at the triplet's second surface",
    source: 'optical-engineering',
    known: 'read',
    how: 'the marginal and the chief ray, with the pupil that is the image of the stop',
    values: tableRow(1, ['13.724943', '-0.263817', '-0.188507', '-5.258650', '0.324469', '0.210743']),
  },
  {
    id: 'RAY-200',
    claim: 'a cemented doublet: paraxial focus, focal length, and where the real ray at 2 mm crosses the axis',
    source: 'lens-design',
    known: 'from memory',
    how: 'the cardinal points, and a real ray',
    values: [
      ofLens(DOUBLET, "paraxial l'", '11.285857', (lens) => cardinal(prescription(lens, ANY_NM)).backFocalLengthMm),
      ofLens(DOUBLET, "f'", '12.0000', (lens) => cardinal(prescription(lens, ANY_NM)).effectiveFocalLengthMm),
      ofLens(DOUBLET, "marginal L'", '11.293900', (lens) => crossing(lens, 2)),
      ofLens(
        DOUBLET,
        "marginal L' less paraxial l'",
        '0.008043',
        (lens) => crossing(lens, 2) - cardinal(prescription(lens, ANY_NM)).backFocalLengthMm,
      ),
    ],
  },
];
