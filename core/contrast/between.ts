import type { Between } from './colours.ts';
import type { Differences } from './differences.ts';

/** Neighbouring wavelengths with this much of the light count, and may differ by this much, in waves. */
const WEIGHTY = 0.1;
const NEAR = 0.3;

/** Whether the phases change so much from one wavelength to the next that sums over these few do not stand for all. */
export function coloursPart({ phase, rate, area }: Differences, focus: number, weights: readonly number[]): boolean {
  for (let c = 1; c < phase.length; c++) {
    if (Math.min(weights[c - 1] as number, weights[c] as number) < WEIGHTY) continue;
    const [phases, rates, areas] = [phase[c] as Float64Array, rate[c] as Float64Array, area[c] as Float64Array];
    const [phasesBefore, ratesBefore, areasBefore] = [
      phase[c - 1] as Float64Array,
      rate[c - 1] as Float64Array,
      area[c - 1] as Float64Array,
    ];
    let [w, square] = [0, 0];
    for (let i = 0; i < phases.length; i++) {
      const s = Math.min(areasBefore[i] as number, areas[i] as number);
      const change = (phases[i] as number) - (phasesBefore[i] as number) + focus * ((rates[i] as number) - (ratesBefore[i] as number));
      w += s;
      square += s * change * change;
    }
    if (square > NEAR * NEAR * w) return true;
  }
  return false;
}

/** The same at many wavelengths, by the polynomial through the few: phases are smooth in the wavelength. */
export function filledIn({ phase, rate, area }: Differences, { from }: Between): Differences {
  const points = (area[0] as Float64Array).length;
  const mixed = (of: readonly Float64Array[], parts: readonly number[]): Float64Array => {
    const sums = new Float64Array(points);
    for (const [c, part] of parts.entries()) {
      const own = of[c] as Float64Array;
      for (let i = 0; i < points; i++) sums[i] = (sums[i] as number) + part * (own[i] as number);
    }
    return sums;
  };
  const whole = Array.from({ length: points }, (_, i) => area.every((one) => (one[i] as number) > 0));
  return {
    phase: from.map((parts) => mixed(phase, parts)),
    rate: from.map((parts) => mixed(rate, parts)),
    area: from.map((parts) => mixed(area, parts).map((a, i) => (whole[i] ? Math.max(0, a) : 0))),
  };
}
