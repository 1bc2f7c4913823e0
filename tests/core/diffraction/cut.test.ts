import { describe, expect, it } from 'vitest';
import { cutMtf, diffractionMtf, evaluate, type Pairing, stopsOf } from '../../../core/index.ts';
import type { SeenStops } from '../../../core/pupil/stops.ts';

const discs = (walk: number[], radius: number[]): SeenStops => ({
  walk,
  radius,
  fieldSlope: 1,
  limiting: radius.indexOf(Math.min(...radius)),
  stopOf: walk.map((_, i) => i),
  fieldStop: undefined,
});

/** Area of the pupil that is inside all discs both here and `dx`, `dy` from here, over that inside all: by counting points. */
function counted({ walk, radius }: SeenStops, slope: number, dx: number, dy: number): number {
  const inside = (x: number, y: number): boolean => radius.every((r, i) => Math.hypot(x - (walk[i] as number) * slope, y) <= r);
  const [step, reach] = [0.04, 4];
  let [whole, both] = [0, 0];
  for (let x = -reach; x < reach; x += step)
    for (let y = -reach; y < reach; y += step) {
      if (!inside(x, y)) continue;
      whole++;
      if (inside(x - dx, y - dy)) both++;
    }
  return both / whole;
}

describe('contrast that a cut pupil leaves', () => {
  it('is that of a whole round pupil in the middle, in both directions', () => {
    for (const v of [0, 0.1, 0.37, 0.8, 1, 1.2]) {
      const { sagittal, tangential } = cutMtf(discs([0, 3], [2, 5]), 0, v) ?? { sagittal: -1, tangential: -1 };
      expect(sagittal).toBeCloseTo(diffractionMtf(v), 12);
      expect(tangential).toBeCloseTo(diffractionMtf(v), 12);
    }
  });

  it('is the counted overlap of what two and three discs leave', () => {
    let tried = 0;
    for (const [walk, radius, slope] of [
      [[0, 40], [2, 3], 0.06],
      [[0, 30, -50], [2, 2.2, 3.4], 0.05],
      [[0, -60], [3, 3.5], 0.05],
    ] as const) {
      const seen = discs([...walk], [...radius]);
      for (const v of [0.1, 0.3, 0.55]) {
        const shift = 2 * (seen.radius[seen.limiting] as number) * v;
        const mtf = cutMtf(seen, slope, v);
        expect(mtf?.tangential).toBeCloseTo(counted(seen, slope, shift, 0), 2);
        expect(mtf?.sagittal).toBeCloseTo(counted(seen, slope, 0, shift), 2);
        tried++;
      }
    }
    expect(tried).toBe(9);
    expect(cutMtf(discs([0, 200], [2, 2]), 0.05, 0.1)).toBeUndefined();
  });

  it('falls with the frequency and starts whole, in a pairing whose corner is cut', () => {
    const pairing: Pairing = {
      objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: -20 },
      relay: { kind: 'supplementary', focalLengthMm: 200, clearApertureMm: 24 },
      sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
      infinitySpaceMm: 100,
    };
    const { seen } = stopsOf(evaluate(pairing).sheet) ?? { seen: discs([], []) };
    const at = (v: number) => cutMtf(seen, 18 / 200, v) ?? { sagittal: -1, tangential: -1 };
    expect(at(0).sagittal).toBeCloseTo(1, 12);
    expect(at(0).tangential).toBeCloseTo(1, 12);
    let last = at(0);
    for (let v = 0.05; v < 1; v += 0.05) {
      const here = at(v);
      expect(here.sagittal).toBeLessThanOrEqual(last.sagittal);
      expect(here.tangential).toBeLessThanOrEqual(last.tangential);
      last = here;
    }
    // The rim cuts across the radius: lines at right angles to it suffer most.
    expect(at(0.3).tangential).toBeLessThan(at(0.3).sagittal);
  });
});
