import { describe, expect, it } from 'vitest';
import { pairingSchema } from '../../../core/index.ts';
import { FIGURE_IDS, RADIUS_IDS } from '../../../core/pairing/registry.ts';
import { report } from '../../../core/pairing/report.ts';

/**
 * A pupil of 10 mm in the shoulder, a rim of 20 mm that far behind it, a relay of 200 mm: a place at `r` on the sensor gets
 * what two discs of radius 5 and 10 share whose centres stand `r S / 200` apart.
 */
const rig = (infinitySpaceMm: number, more: object = {}) => {
  const { relay, ...other } = more as { relay?: object };
  return report(
    pairingSchema.parse({
      objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0 },
      relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 20, frontPrincipalPlaneFromRimMm: 0, ...relay },
      sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
      infinitySpaceMm,
      ...other,
    }),
  );
};
const HALF_DIAGONAL = Math.hypot(36, 24) / 2;

/** The area that two discs share, over that of the small one: the two sectors less the kite between the centres. */
function shared(d: number, r = 5, R = 10): number {
  if (d <= R - r) return 1;
  if (d >= R + r) return 0;
  const [a, b] = [Math.acos((d * d + r * r - R * R) / (2 * d * r)), Math.acos((d * d + R * R - r * r) / (2 * d * R))];
  return (r * r * (a - Math.sin(2 * a) / 2) + R * R * (b - Math.sin(2 * b) / 2)) / (Math.PI * r * r);
}

describe('the curve of a report', () => {
  it('runs in 128 even steps from the middle to a little past the corner, with the light at each place and what it costs', () => {
    const { curve } = rig(100).vignetting;
    expect(curve).toHaveLength(128);
    curve.forEach(({ radiusMm, relativeIllumination: E, lossEv }, i) => {
      // At whole nanometres.
      expect(Math.abs(radiusMm - (1.15 * HALF_DIAGONAL * i) / 127)).toBeLessThan(0.51e-6);
      expect(radiusMm).toBe(Number(radiusMm.toFixed(6)));
      expect(E).toBeCloseTo(shared(radiusMm / 2), 7);
      expect(lossEv).toBeCloseTo(-Math.log2(E), 7);
    });
    expect(curve[0]).toEqual({ radiusMm: 0, relativeIllumination: 1, lossEv: 0 });
    // No minus before a nought.
    expect(Object.is(curve[0]?.lossEv, 0)).toBe(true);
  });

  it('tells no loss where no light is left', () => {
    const { curve } = rig(200).vignetting;
    const dark = curve.filter(({ radiusMm }) => radiusMm >= 15);
    expect(dark.length).toBeGreaterThan(20);
    for (const point of dark) expect(point).toEqual({ radiusMm: point.radiusMm, relativeIllumination: 0 });
  });

  it('stands at the radii that are asked for, if any are, in their order', () => {
    const { curve } = rig(100, { radiiMm: [20, 0, 14] }).vignetting;
    expect(curve.map(({ radiusMm }) => radiusMm)).toEqual([20, 0, 14]);
    expect(curve[0]?.relativeIllumination).toBeCloseTo(shared(10), 7);
    expect(curve[2]?.relativeIllumination).toBeCloseTo(shared(7), 7);
  });

  it('is empty, and nothing cuts, where an opening is not known', () => {
    const { curve, cuts } = rig(100, { relay: { clearApertureMm: undefined } }).vignetting;
    expect([curve, cuts]).toEqual([[], []]);
  });
});

describe('what cuts', () => {
  it('is told with where it begins and what would clear it', () => {
    const [cut, ...others] = rig(100).vignetting.cuts;
    expect(others).toEqual([]);
    // 5 mm of room at 1/2 mm for each millimetre of picture; in the corner the beam walks half of 21.63 mm.
    expect(cut).toMatchObject({ onsetRadiusMm: expect.closeTo(10, 9), shareOfCornerLoss: 1 });
    expect(cut?.clearsAt?.diameterMm).toBeCloseTo(2 * (5 + HALF_DIAGONAL / 2), 9);
    expect(cut?.clearsAt?.infinitySpaceMm).toBeCloseTo(1000 / HALF_DIAGONAL, 9);
  });
  it('is nothing where the corner is clear', () => {
    expect(rig(46).vignetting.cuts).toEqual([]);
    expect(rig(47).vignetting.cuts).toHaveLength(1);
  });
  it('is told without a remedy where no single change clears the corner', () => {
    // Two rims of one size in one place: to open either leaves the other, and the pupil's own distance from the ring cuts at any space.
    const stops = [
      { label: 'a ring', diameterMm: 12, fromShoulderMm: 30 },
      { label: 'the next', diameterMm: 12, fromShoulderMm: 30 },
    ];
    const { cuts } = rig(100, { stops, relay: { clearApertureMm: 60 } }).vignetting;
    expect(cuts.length).toBeGreaterThanOrEqual(2);
    for (const cut of cuts) expect(cut).not.toHaveProperty('clearsAt');
  });
});

it('a report has every figure and every radius, each once, in their order', () => {
  const { figures, vignetting, ...rest } = rig(100);
  expect(Object.keys(figures)).toEqual([...FIGURE_IDS]);
  expect(Object.keys(vignetting)).toEqual([...RADIUS_IDS, 'curve', 'cuts']);
  expect(Object.keys(rest)).toEqual(['sentence', 'coverage', 'assumptions', 'cautions']);
  for (const answer of [...Object.values(figures), ...RADIUS_IDS.map((id) => vignetting[id])]) expect(answer.state).toBeTruthy();
});
