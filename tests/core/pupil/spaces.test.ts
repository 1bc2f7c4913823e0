import { describe, expect, it } from 'vitest';
import { onsetSlope } from '../../../core/pupil/illumination.ts';
import { clearingSpans } from '../../../core/pupil/spaces.ts';
import { type PlacedStop, type Rig, scaleOf, seenStops } from '../../../core/pupil/stops.ts';
import { behind, pupil, rigWith, rim, ring } from './plain-rig.ts';

/** In focus a stop `z` from the pupil is clear at 10 mm where |z| x 10 / 200 is no more than it is wider than the pupil. */
const spans = (stops: PlacedStop[], other: Partial<Rig> = {}, r = 10) => clearingSpans(rigWith(stops, other), r);

describe('the infinity spaces that clear a height on the sensor', () => {
  it('end where the rim is too far off for its width: 10 mm wider, 200 mm', () => {
    expect(spans([pupil(10), rim(30)])).toEqual([[0, 200]]);
    expect(spans([pupil(10), rim(30, 5)])).toEqual([[0, 195]]);
  });

  it('begin where a rim that stands before the pupil is near enough to it', () => {
    expect(spans([pupil(10), rim(30)], { exitPupilFromShoulderMm: 250 })).toEqual([[50, 450]]);
    expect(spans([pupil(10), rim(30)], { exitPupilFromShoulderMm: 150 })).toEqual([[0, 350]]);
  });

  it('are found by small steps of the height too: half a mm of room, half a mm high', () => {
    expect(spans([pupil(10), rim(11)], { exitPupilFromShoulderMm: 250 }, 0.5)).toEqual([[50, 450]]);
  });

  // 50 mm before the sensor the beam is a quarter as wide, its middle at r (1 - (50 / 200)(1 - z / 200)): 7.5 + z / 80 at 10 mm.
  it('end where the beam walks off a ring behind the relay', () => {
    expect(spans([pupil(10), rim(100), behind('ring', 20, 50)])).toEqual([[0, 100]]);
  });

  it('hold the rings that stand in them, if only just', () => {
    expect(spans([pupil(10), ring('wide', 100, 60), rim(30)])).toEqual([[60, 200]]);
    expect(spans([pupil(10), ring('wide', 100, 200), rim(30)])).toEqual([[200, 200]]);
    expect(spans([pupil(10), ring('wide', 100, 201), rim(30)])).toEqual([]);
    expect(spans([ring('wide', 100, 60), pupil(10), ring('other', 100, 40), rim(30)])).toEqual([[60, 200]]);
  });

  it('hold a frame before the sensor, which each height meets there', () => {
    expect(spans([pupil(10), rim(30), behind('frame', 20.1, 0)])).toEqual([[0, 200]]);
    expect(spans([pupil(10), rim(30), behind('frame', 19.9, 0)])).toEqual([]);
  });

  it('are none where a ring that does not move cuts, and all where it lies on the pupil and is as wide', () => {
    expect(spans([pupil(10), ring('ring', 11, 80)])).toEqual([]);
    expect(spans([pupil(10), ring('ring', 11, 0)])).toEqual([[0, Number.POSITIVE_INFINITY]]);
    expect(spans([pupil(10), ring('ring', 10, 0), rim(30)])).toEqual([[0, 200]]);
  });

  it('are those of the ring that limits the axis where one does', () => {
    // The ring's radius is 4, 80 mm from the pupil; the rim must be within 220 mm of it: (15 - 4) 200 / 10. The pupil is wider by 5.
    expect(spans([pupil(18), ring('ring', 8, 80), rim(30)])).toEqual([[80, 300]]);
  });

  // The sensor beyond the focus sees what stands before the source of the beam that is sharp there upside down.
  it('are those at which the discs say so where a ring is seen upside down', () => {
    let [clear, inverted] = [0, 0];
    for (const inner of [0.5, 1, 2, 4, 12, 18, 24, 30, 40, 60])
      for (const wide of [2, 10, 40, 200])
        for (const r of [0.3, 2]) {
          const rig = rigWith([pupil(10), ring('ring', inner, 60), rim(wide)], {
            relayFocalLengthMm: 100,
            sensorOffsetMm: 50,
            exitPupilFromShoulderMm: 120,
          });
          const found = clearingSpans(rig, r);
          for (let space = 350.13; space < 425; space += 1.7) {
            const there = { ...rig, infinitySpaceMm: space };
            const F = scaleOf(there);
            const near = found.some((span) => span.some((end) => Math.abs(end - space) < 1e-6));
            if (near) continue;
            const inside = found.some(([least, greatest]) => least <= space && space <= greatest);
            expect(inside, JSON.stringify([there, r, found])).toBe(F > 0 && F * onsetSlope(seenStops(there)) >= r);
            if (inside) clear++;
            if (inside && space > 362) inverted++;
          }
        }
    expect(clear).toBeGreaterThan(50);
    expect(inverted).toBeGreaterThan(50);
  });

  // By a second route: the discs as they are seen, at one space after another.
  it.each([
    ['with the sensor beyond the focus', 50],
    ['with the sensor before it', -30],
  ])('are those at which the discs say so, and there is a picture, %s', (_, sensorOffsetMm) => {
    let [clear, several, dark] = [0, 0, 0];
    for (const [wide, at, inner] of [
      [40, 60, 20],
      [24, 20, 11],
      [12, 90, 30],
      [60, 30, 9],
      [16, 10, 10.5],
    ] as const)
      for (const exitPupilFromShoulderMm of [-40, 0, 120])
        for (const r of [2, 5, 9]) {
          const stops = [pupil(10), ring('ring', inner, at), rim(wide)];
          const rig = rigWith(stops, { relayFocalLengthMm: 100, sensorOffsetMm, exitPupilFromShoulderMm });
          const found = clearingSpans(rig, r);
          if (found.length > 1) several++;
          for (let space = at + 0.123; space < 700; space += 9.7) {
            const there = { ...rig, infinitySpaceMm: space };
            const F = scaleOf(there);
            const near = found.some((span) => span.some((end) => Math.abs(end - space) < 1e-6));
            const inside = found.some(([least, greatest]) => least <= space && space <= greatest);
            if (!near) expect(inside, JSON.stringify([there, r, found])).toBe(F > 0 && F * onsetSlope(seenStops(there)) >= r);
            if (inside) clear++;
            else if (F <= 0) dark++;
          }
        }
    expect(clear).toBeGreaterThan(50);
    if (sensorOffsetMm > 0) {
      expect(dark).toBeGreaterThan(50);
      expect(several).toBeGreaterThan(0);
    }
  });
});
