import { describe, expect, it } from 'vitest';
import { offConjugate } from '../../../core/aberration/off-conjugate.ts';
import { type Conjugates, farthestOffset, offsetAtStrehl, opticalShift } from '../../../core/aberration/off-infinity.ts';

const rig = (other: Partial<Conjugates> = {}): Conjugates => ({
  n: 1,
  naAt: () => 0.42,
  objectiveFocalLength: 10,
  relayFocalLength: 200,
  principalPlane: 200,
  wavelength: 550e-6,
  ...other,
});
/** How large the picture is: height on the sensor per slope, over the focal length. */
const size = ({ relayFocalLength: f, principalPlane: z }: Conjugates, s: number): number => 1 + s / f - (z * s) / (f * f);

describe('a sensor off the focus of the relay', () => {
  it('asks the object nearer by n² fo² s over f F', () => {
    // With the principal plane in the relay's own front focal plane F = f: 1.33² x 100 x 8 / 40000.
    expect(opticalShift(rig({ n: 1.33 }), 8)).toBeCloseTo((1.7689 * 800) / 40_000, 12);
    // F = 200 + 8 - 50 x 8 / 200 = 206.
    expect(opticalShift(rig({ principalPlane: 50 }), 8)).toBeCloseTo(800 / (200 * 206), 12);
    expect(opticalShift(rig(), -8)).toBeCloseTo(-800 / 40_000, 12);
  });

  it('is followed to the focal length, nine tenths of it toward the relay, and not to where a tenth of the size is left', () => {
    for (const principalPlane of [200, 100, 0]) expect(farthestOffset(rig({ principalPlane }), 1)).toBe(200);
    for (const principalPlane of [200, 300, 600]) expect(farthestOffset(rig({ principalPlane }), -1)).toBeCloseTo(-180, 12);
    // .9 x 200² / (z - 200) = 90 for z = 600 one way, for -200 the other; a tenth of the size is left there.
    const [far, back] = [rig({ principalPlane: 600 }), rig({ principalPlane: -200 })];
    expect(farthestOffset(far, 1)).toBeCloseTo(90, 12);
    expect(farthestOffset(back, -1)).toBeCloseTo(-90, 12);
    expect(size(far, 90)).toBeCloseTo(0.1, 12);
    expect(size(back, -90)).toBeCloseTo(0.1, 12);
    // Shrinking so slowly that the focal length comes first.
    expect(farthestOffset(rig({ principalPlane: 250 }), 1)).toBe(200);
  });
});

describe("the sensor's place at which the Strehl ratio has fallen to a limit", () => {
  const ratioAt = (of: Conjugates, s: number): number =>
    offConjugate(of.n, of.naAt(s), (of.relayFocalLength * size(of, s)) / of.objectiveFocalLength).strehl(
      opticalShift(of, s) / of.wavelength,
    );

  it.each([
    ['a dry objective', rig()],
    ['a weak one, near the end', rig({ naAt: () => 0.2, objectiveFocalLength: 20 })],
    ['one in oil', rig({ n: 1.515, naAt: () => 1.2, objectiveFocalLength: 3 })],
    ['a relay far from the pupil', rig({ principalPlane: 350, naAt: () => 0.3 })],
    ['a ring that lets less through farther out', rig({ naAt: (s: number) => 0.42 / (1 + Math.abs(s) / 400) })],
    ['a short relay', rig({ relayFocalLength: 100, principalPlane: 80, naAt: () => 0.5 })],
  ])('is where it first has, on either side: %s', (_, of) => {
    for (const sense of [1, -1] as const)
      for (const limit of [0.8, 0.95]) {
        const place = offsetAtStrehl(of, limit, sense);
        expect(Math.sign(place)).toBe(sense);
        const end = Math.abs(farthestOffset(of, sense));
        if (Number.isFinite(place)) {
          expect(ratioAt(of, place)).toBeCloseTo(limit, 9);
          expect(Math.abs(place)).toBeLessThanOrEqual(end);
        }
        for (let i = 1; i < 50; i++) expect(ratioAt(of, (sense * Math.min(end, Math.abs(place)) * i) / 50)).toBeGreaterThan(limit);
      }
  });

  it('is nowhere, with its sign, where it has not by the farthest that is looked at', () => {
    const weak = rig({ naAt: () => 0.05 });
    expect(offsetAtStrehl(weak, 0.8, 1)).toBe(Number.POSITIVE_INFINITY);
    expect(offsetAtStrehl(weak, 0.8, -1)).toBe(Number.NEGATIVE_INFINITY);
    expect(Number.isFinite(offsetAtStrehl(rig(), 0.8, 1))).toBe(true);
  });

  it('asks for the aperture a few times and no more: the first guess is the fourth order', () => {
    for (const sense of [1, -1] as const) {
      const asked: number[] = [];
      const counted = rig({
        objectiveFocalLength: 20,
        naAt: (s) => {
          asked.push(s);
          return 0.25;
        },
      });
      const place = offsetAtStrehl(counted, 0.8, sense);
      expect(asked.length).toBeLessThan(12);
      const guess = asked.find((s) => Math.abs(s) > 0.01 * Math.abs(place)) as number;
      expect(Math.abs(guess / place - 1)).toBeLessThan(0.1);
    }
  });
});
