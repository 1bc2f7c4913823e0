import { glassNamed } from '../../glass/glasses.ts';
import { abbeNumber, LINES } from '../../glass/lines.ts';
import { type Medium, plainIndex } from '../../glass/medium.ts';
import { cardinal } from '../../trace/cardinal.ts';
import { rayPair } from '../../trace/paraxial-rays.ts';
import { type Prescription, prescription } from '../../trace/prescription.ts';
import { fieldCurves, type Seidel, seidelBySurface, seidelSums } from '../../trace/seidel.ts';
import type { Check, Value } from '../check.ts';

const F_MM = 100;
const FIELD = 0.1;

/** Surfaces of these curvatures without thickness between them. */
const thin = (curvatures: readonly number[], media: readonly Medium[]): Prescription =>
  prescription(
    {
      radiiMm: curvatures.map((c) => 1 / c),
      thicknessesMm: media.map(() => 0),
      media,
      semiAperturesMm: curvatures.map(() => Number.POSITIVE_INFINITY),
    },
    LINES.d,
  );

/** A thin lens of 100 mm, from all the bending in front (1) to all behind (-1). */
function bent(n: number, shape: number): Prescription {
  const all = 1 / (F_MM * (n - 1));
  return thin([(all * (shape + 1)) / 2, (all * (shape - 1)) / 2], [plainIndex(n)]);
}

/** Sums in collimated light with the stop at the lens, at f/1, and the slope of the marginal ray behind it. */
function sums(lens: Prescription): { readonly of: Seidel; readonly imageSlope: number } {
  const pair = rayPair(lens, { pupilRadiusMm: focalLengthMm(lens) / 2, pupilDistanceMm: 0, slope: FIELD });
  return { of: seidelSums(seidelBySurface(lens, pair)), imageSlope: pair.marginal.slope[lens.count] as number };
}

const focalLengthMm = (lens: Prescription): number => cardinal(lens).effectiveFocalLengthMm;

/** Radius of the field that lies `behind` the paraxial focus at the height of the field, mm. */
const curveRadiusMm = (lens: Prescription, behind: number): number => (focalLengthMm(lens) * FIELD) ** 2 / (2 * behind);

type Curve = keyof ReturnType<typeof fieldCurves>;
const radiusMm = (lens: Prescription, curve: Curve): number => {
  const { of, imageSlope } = sums(lens);
  return curveRadiusMm(lens, fieldCurves(of, imageSlope)[curve]);
};
/** The same over the focal length. */
const radius = (lens: Prescription, curve: Curve): number => radiusMm(lens, curve) / focalLengthMm(lens);

/** How far the edge ray of an f/1 lens crosses before the paraxial focus, over the focal length: third order, so `k` in `k f / N²`. */
function longitudinal(lens: Prescription): number {
  const { of, imageSlope } = sums(lens);
  return of.S1 / (2 * imageSlope * imageSlope) / focalLengthMm(lens);
}

/** The least of it over all bendings: it is a parabola, which three of them give. */
function leastLongitudinal(n: number): number {
  const [before, middle, behind] = [-1, 0, 1].map((shape) => longitudinal(bent(n, shape))) as [number, number, number];
  const curve = (before + behind) / 2 - middle;
  return middle - ((behind - before) / 2) ** 2 / (4 * curve);
}

/** Crown glass whose index the source does not tell: half-way from 1.517 to 1.520, and half of what that makes. */
function crown(shape: number): Pick<Value, 'of' | 'slack'> {
  const [low, high] = [1.517, 1.52].map((n) => () => longitudinal(bent(n, shape))) as [() => number, () => number];
  return {
    of: () => (low() + high()) / 2,
    slack: { of: () => Math.abs(high() - low()) / 2, why: 'an index that is not told' },
  };
}

const BENDINGS = [-1, 0, 0.7, 1];
const ofBendings = (curve: Curve, words: string, printed: string): Value[] =>
  BENDINGS.map((shape) => ({ what: `${words}, bent ${shape}`.replace('-', '−'), printed, of: () => radius(bent(1.5168, shape), curve) }));

/** A thin achromat, cemented; how it is bent does not matter here. */
const [CROWN, FLINT] = ['N-BK7', 'SF5'].map((name) => glassNamed(name) as Medium) as [Medium, Medium];
const ACHROMAT = ((): Prescription => {
  const [V1, V2] = [abbeNumber(CROWN, 'd'), abbeNumber(FLINT, 'd')];
  const [P1, P2] = [V1 / (V1 - V2) / F_MM, -V2 / (V1 - V2) / F_MM];
  const first = 0.02;
  const second = first - P1 / (CROWN.indexAt(LINES.d) - 1);
  return thin([first, second, second - P2 / (FLINT.indexAt(LINES.d) - 1)], [CROWN, FLINT]);
})();
const achromat = (what: string, printed: string, of: () => number): Value => ({ what, printed, of });

export const THIN: readonly Check[] = [
  {
    id: 'THN-001',
    claim: 'field curves of a thin lens with the stop at it, however bent: n f, f / (1 + 1/n), f / (3 + 1/n), n = 1.5168',
    source: 'optical-engineering',
    known: 'formula read',
    how: 'the Seidel sums of two surfaces without thickness between them; radius over focal length',
    values: [
      ...ofBendings('petzvalMm', 'Petzval', '-1.5168'),
      ...ofBendings('sagittalMm', 'sagittal', '-0.60267'),
      ...ofBendings('tangentialMm', 'tangential', '-0.27328'),
    ],
  },
  {
    id: 'THN-002',
    claim: 'Petzval radius of a thin lens of 100 mm, -n f',
    source: 'field-curvature',
    known: 'formula read',
    how: 'the fourth Seidel sum',
    values: [{ printed: '-151.68', of: () => radiusMm(bent(1.5168, 1), 'petzvalMm') }],
  },
  {
    id: 'THN-004',
    claim: 'longitudinal spherical aberration over f/N² of a plano-convex lens, either side first; least blur of the best form over f/N³',
    source: 'maker-primer',
    known: 'from memory',
    how: 'the first Seidel sum; of the crown glass the index is not told, the best form is of n = 1.5',
    values: [
      { what: 'curved side first', printed: '0.272', ...crown(1) },
      { what: 'plane side first', printed: '1.069', ...crown(-1) },
      // The least circle of the cone of third-order rays is a quarter as wide as the axial cone is long, over N.
      { what: 'best form', printed: '0.067', of: () => leastLongitudinal(1.5) / 4 },
    ],
  },
  {
    id: 'THN-005',
    claim: 'field curves of a thin achromat of N-BK7 and SF5 with the stop at it, over the focal length',
    source: 'thin-achromats',
    known: 'from memory',
    how: 'the Seidel sums of three surfaces without thickness between them',
    values: [
      achromat('sagittal', '-0.581', () => radius(ACHROMAT, 'sagittalMm')),
      achromat('tangential', '-0.269', () => radius(ACHROMAT, 'tangentialMm')),
      achromat('medial', '-0.367', () => {
        const { of, imageSlope } = sums(ACHROMAT);
        const { sagittalMm, tangentialMm } = fieldCurves(of, imageSlope);
        return curveRadiusMm(ACHROMAT, (sagittalMm + tangentialMm) / 2) / focalLengthMm(ACHROMAT);
      }),
      achromat('Petzval', '-1.387', () => radius(ACHROMAT, 'petzvalMm')),
    ],
  },
];
