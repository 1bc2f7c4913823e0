import { describe, expect, it } from 'vitest';
import {
  bareRigOf,
  contradictions,
  evaluate,
  type Pairing,
  pairingSchema,
  relativeIllumination,
  report,
  scaleOf,
  stopsOf,
} from '../../../core/index.ts';
import { diagonalOf } from '../../../core/parts/sensor.ts';
import { randomPairing } from '../../support/pairings.ts';
import { random } from '../../support/random.ts';

/** Pairings of every kind that do not contradict themselves. */
const PAIRINGS = Array.from({ length: 20 }, (_, i) => pairingSchema.safeParse(randomPairing(random(900 + i))).data).filter(
  (pairing) => pairing !== undefined && contradictions(pairing).length === 0,
) as Pairing[];

describe('the curve of the light', () => {
  it('goes evenly from the middle to 15 % past the corner, in whole nanometres', () => {
    for (const pairing of PAIRINGS) {
      const { curve } = report(pairing).vignetting;
      expect(curve).toHaveLength(128);
      const reach = 1.15 * (diagonalOf(pairing.sensor) / 2);
      const off = curve.map(({ radiusMm }, i) => Math.abs(radiusMm - (reach * i) / 127));
      expect(Math.max(...off)).toBeLessThanOrEqual(0.5001e-6);
      expect(curve.every(({ radiusMm }) => radiusMm === Number(radiusMm.toFixed(6)))).toBe(true);
    }
  });

  it('tells the light at the very radii that it names, and at those asked for', () => {
    let cut = 0;
    for (const given of PAIRINGS)
      for (const pairing of [given, { ...given, radiiMm: [0, 1 / 3, 7.123456789012, 400] }]) {
        const stops = stopsOf(evaluate(pairing).sheet);
        if (!stops) throw new Error('every opening is given');
        const { curve } = report(pairing).vignetting;
        if (pairing.radiiMm) expect(curve.map((p) => p.radiusMm)).toEqual(pairing.radiiMm);
        for (const { radiusMm, relativeIllumination: E, lossEv } of curve) {
          expect(E).toBe(relativeIllumination(stops.seen, radiusMm / scaleOf(stops.rig)));
          expect(lossEv).toEqual(E > 0 ? 0 - Math.log2(E) : undefined);
          if (E > 0 && E < 1) cut++;
        }
      }
    expect(cut).toBeGreaterThan(100);
  });
});

describe("a rig without the relay's own openings", () => {
  it('is the same but for them', () => {
    for (const pairing of PAIRINGS) {
      const { sheet } = evaluate(pairing);
      const whole = stopsOf(sheet)?.rig;
      const { stops, ...where } = bareRigOf(sheet);
      expect(whole).toMatchObject(where);
      const own = pairing.relay.kind === 'camera-lens' ? 2 : 1;
      expect(stops).toEqual(whole?.stops.slice(0, -own));
    }
  });
});
