import type { Setting } from '../contrast/field.ts';
import { ringsAndSpokes } from '../trace/points.ts';
import { THROUGH } from '../trace/rays.ts';
import { meanAt, spot } from '../trace/spot.ts';
import { UM_PER_MM } from '../units.ts';
import { arrived } from './blur.ts';

/** Where the rays of a spot fall, µm from its middle: x across the field axis, y outward. All wavelengths together. */
export interface SpotDiagram {
  readonly xUm: readonly number[];
  readonly yUm: readonly number[];
  /** Root mean square about the middle, each wavelength by its light. */
  readonly rmsUm: number;
  /** From the middle of one wavelength's spot to that of another, the greatest such distance. */
  readonly lateralColourUm: number;
}

const POINTS = ringsAndSpokes(6, 18);

/** The spot of a field point on the plane at `planeMm` behind the last vertex; undefined where no light arrives. */
export function spotDiagram({ colours, discs, pupilDistanceMm }: Setting, slope: number, planeMm: number): SpotDiagram | undefined {
  const beams = colours.prescriptions.map((lens) => arrived(lens, POINTS, discs, pupilDistanceMm, slope));
  const spots = beams.map((beam) => beam && spot(beam.bundle, beam.weights, planeMm));
  const weight = (c: number): number => (spots[c] ? (colours.weights[c] as number) : 0);
  const whole = spots.reduce((sum, _, c) => sum + weight(c), 0);
  if (whole === 0) return undefined;
  const middles = spots.flatMap((s) => (s ? [meanAt(s.tangential, planeMm)] : []));
  const middle = spots.reduce((sum, s, c) => sum + (s ? (weight(c) / whole) * meanAt(s.tangential, planeMm) : 0), 0);
  const [xUm, yUm]: [number[], number[]] = [[], []];
  let square = 0;
  beams.forEach((beam, c) => {
    if (!beam) return;
    const { bundle, weights } = beam;
    for (let i = 0; i < bundle.count; i++) {
      if (bundle.status[i] !== THROUGH || weights[i] === 0) continue;
      const reach = (planeMm - (bundle.z[i] as number)) / (bundle.N[i] as number);
      const x = (bundle.x[i] as number) + reach * (bundle.L[i] as number);
      const y = (bundle.y[i] as number) + reach * (bundle.M[i] as number) - middle;
      square += (weight(c) / whole) * (weights[i] as number) * (x * x + y * y);
      xUm.push(UM_PER_MM * x);
      yUm.push(UM_PER_MM * y);
    }
  });
  return {
    xUm,
    yUm,
    rmsUm: UM_PER_MM * Math.sqrt(square),
    lateralColourUm: UM_PER_MM * (Math.max(...middles) - Math.min(...middles)),
  };
}
