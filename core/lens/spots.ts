import type { Setting } from '../contrast/field.ts';
import { valueAt } from '../trace/focus.ts';
import { sunflower } from '../trace/points.ts';
import { meanAt } from '../trace/spot.ts';
import { UM_PER_MM } from '../units.ts';
import { arrived, blurOf, spotsOf } from './blur.ts';

/** Where the rays of a spot fall, µm from its middle: x across the field axis, y outward. All wavelengths together. */
export interface SpotDiagram {
  readonly xUm: readonly number[];
  readonly yUm: readonly number[];
  /** Root mean square about the middle, each wavelength by its light. */
  readonly rmsUm: number;
  /** From the middle of one wavelength's spot to that of another, the greatest such distance. */
  readonly lateralColourUm: number;
}

/** What is drawn, an even scatter; what is measured comes from the rule that blur is measured by. */
const DRAWN = sunflower(120);

/** The spot of a field point on the plane at `planeMm` behind the last vertex; undefined where no light arrives. */
export function spotDiagram(setting: Setting, slope: number, planeMm: number): SpotDiagram | undefined {
  const blur = blurOf(setting, slope);
  if (!blur) return undefined;
  const { colours, discs, pupilDistanceMm } = setting;
  const beams = colours.prescriptions.flatMap((lens) => {
    const beam = arrived(lens, DRAWN, discs, pupilDistanceMm, slope);
    return beam ?? [];
  });
  const spots = spotsOf(setting, slope);
  const middles = spots.map(({ tangential }) => meanAt(tangential, planeMm));
  const whole = spots.reduce((sum, { weight }) => sum + weight, 0);
  const middle = spots.reduce((sum, { weight }, c) => sum + (weight / whole) * (middles[c] as number), 0);
  const [xUm, yUm]: [number[], number[]] = [[], []];
  for (const { bundle, weights } of beams)
    for (let i = 0; i < bundle.count; i++) {
      if (weights[i] === 0) continue;
      const reach = (planeMm - (bundle.z[i] as number)) / (bundle.N[i] as number);
      xUm.push(UM_PER_MM * ((bundle.x[i] as number) + reach * (bundle.L[i] as number)));
      yUm.push(UM_PER_MM * ((bundle.y[i] as number) + reach * (bundle.M[i] as number) - middle));
    }
  return {
    xUm,
    yUm,
    rmsUm: UM_PER_MM * Math.sqrt(valueAt(blur, planeMm)),
    lateralColourUm: UM_PER_MM * (Math.max(...middles) - Math.min(...middles)),
  };
}
