import { describe, expect, it } from 'vitest';
import { clearingDiameter } from '../../../core/pupil/clear.ts';
import { type Cut, cuts } from '../../../core/pupil/cuts.ts';
import { onsetSlope } from '../../../core/pupil/illumination.ts';
import { type PlacedStop, type Rig, scaleOf, seenStops } from '../../../core/pupil/stops.ts';
import { behind, pupil, rigWith, rim, ring } from './plain-rig.ts';

const cutsOf = (rig: Rig, corner: number): Cut[] => cuts(rig, seenStops(rig), corner);
const told = (stops: PlacedStop[], corner: number): string[] => cutsOf(rigWith(stops), corner).map((cut) => cut.stop);

describe('which stops cut a corner', () => {
  // 2.5 mm of room, 50 mm from the pupil: 10 mm on the sensor.
  it('leaves out one that only begins to there, and the pupil, which is the beam', () => {
    expect(told([pupil(10), ring('later', 15, 50), ring('sooner', 11, 50)], 10)).toEqual(['sooner']);
    expect(told([pupil(10), ring('later', 14.9, 50), ring('sooner', 11, 50)], 10)).toEqual(['sooner', 'later']);
  });

  it('is none while the loss is less than any digit shows', () => {
    const rig = rigWith([pupil(10), ring('ring', 11, 50)]);
    const onset = onsetSlope(seenStops(rig)) * scaleOf(rig);
    for (let digit = 8; digit < 16; digit++)
      expect(cutsOf(rig, onset * (1 + 10 ** -digit)).every((c) => c.shareOfCornerLoss >= 0)).toBe(true);
    expect(cutsOf(rig, onset * (1 + 1e-12))).toEqual([]);
  });

  it('tells a frame with the opening that the corner asks for, and no space, since none would do', () => {
    expect(cutsOf(rigWith([pupil(10), behind('frame', 16, 0)]), 10)).toStrictEqual([
      { stop: 'frame', path: '/frame', onsetRadiusMm: 8, shareOfCornerLoss: 1, clearsAt: { diameterMm: 20 } },
    ]);
  });

  it('of two frames tells the narrower one: the other never meets the light', () => {
    for (const frames of [
      [behind('narrow', 16, 0), behind('wide', 18, 0)],
      [behind('wide', 18, 0), behind('narrow', 16, 0)],
    ]) {
      const found = cutsOf(rigWith([pupil(10), ...frames]), 10);
      expect(found).toStrictEqual([{ stop: 'narrow', path: '/narrow', onsetRadiusMm: 8, shareOfCornerLoss: 0, clearsAt: {} }]);
    }
  });

  // Each alone is past the pupil's edge at 20 mm: the beam walks 0.1 x 200 = 20 mm there, and 5 + 6 or 5 + 7 mm part them.
  it('tells first the one that begins first where none alone gives anything back', () => {
    const rings = [ring('later', 14, 200), ring('sooner', 12, 200)];
    for (const order of [rings, rings.toReversed()]) {
      const found = cutsOf(rigWith([pupil(10), ...order], { infinitySpaceMm: 300 }), 20);
      expect(found.map((c) => [c.stop, c.shareOfCornerLoss])).toEqual([
        ['sooner', 0],
        ['later', 0],
      ]);
      // 1 and 2 mm of room over 200 mm, 200 mm of focal length.
      expect(found.map((c) => c.onsetRadiusMm)).toEqual([expect.closeTo(1, 12), expect.closeTo(2, 12)]);
    }
  });

  it('tells the pupil after a ring that gives back half as much, and before one that gives back less', () => {
    const sides = { before: 0, after: 0 };
    for (const corner of [6, 7, 8, 9, 10])
      for (const [narrow, wide] of [
        [9.2, 14],
        [9.6, 12],
        [9.6, 14],
        [9.8, 14],
      ] as const) {
        const found = cutsOf(rigWith([pupil(10), ring('narrow', narrow, 80), ring('wide', wide, 90)]), corner);
        const at = (stop: string): number => found.findIndex((c) => c.stop === stop);
        const share = (stop: string): number => found[at(stop)]?.shareOfCornerLoss ?? 0;
        if (at('pupil') < 0 || at('narrow') < 0) continue;
        const first = share('narrow') >= share('pupil') / 2;
        expect(at('narrow') < at('pupil')).toBe(first);
        sides[first ? 'before' : 'after']++;
      }
    expect(sides.before).toBeGreaterThan(0);
    expect(sides.after).toBeGreaterThan(0);
  });
});

describe('the infinity space that would clear a corner', () => {
  // Off the focus the ring limits at some spaces and the pupil at others: two stretches are clear, none between them.
  const at = (infinitySpaceMm: number, order = (stops: PlacedStop[]) => stops): Rig =>
    rigWith(order([pupil(10), ring('ring', 8, 10), rim(12)]), {
      infinitySpaceMm,
      relayFocalLengthMm: 100,
      sensorOffsetMm: 50,
      exitPupilFromShoulderMm: -40,
    });
  const clear = (space: number): boolean => onsetSlope(seenStops(at(space))) * scaleOf(at(space)) >= 1;

  it.each([90, 110, 130, 150])('is the nearest one, from %d mm either way', (space) => {
    const nearest = cutsOf(at(space), 1)[0]?.clearsAt.infinitySpaceMm as number;
    const away = Math.abs(nearest - space);
    expect(clear(nearest + 1e-6) || clear(nearest - 1e-6)).toBe(true);
    for (let d = 0; d < away - 1e-6; d += 0.5) expect(clear(space + d) || clear(space - d)).toBe(false);
  });

  it('lies on either side of where it stands, in whatever order the stops are listed', () => {
    for (const order of [(stops: PlacedStop[]) => stops, (stops: PlacedStop[]) => stops.toReversed()]) {
      expect(cutsOf(at(90, order), 1)[0]?.clearsAt.infinitySpaceMm).toBeLessThan(90);
      expect(cutsOf(at(150, order), 1)[0]?.clearsAt.infinitySpaceMm).toBeGreaterThan(150);
    }
  });
});

describe('the opening that would clear a height', () => {
  const opening = (stops: PlacedStop[], i: number, r: number) => clearingDiameter(rigWith(stops), i, r);

  it('is the beam and how far it has walked by there, wherever the stop is listed', () => {
    // 5 + 80 x 14 / 200 = 10.6
    expect(opening([ring('ring', 12, 80), pupil(10)], 0, 14)).toBeCloseTo(21.2, 12);
    expect(opening([pupil(10), ring('ring', 12, 80)], 1, 14)).toBeCloseTo(21.2, 12);
  });

  it('of a frame is the picture', () => {
    expect(opening([pupil(10), behind('frame', 16, 0)], 1, 15)).toBeCloseTo(30, 12);
  });

  it('is none beyond the frame, and one up to its edge', () => {
    const stops = [pupil(10), ring('ring', 12, 80), behind('frame', 28, 0)];
    expect(opening(stops, 1, 14)).toBeCloseTo(21.2, 12);
    expect(opening(stops, 1, 14.01)).toBeUndefined();
  });

  it('counts from a ring that limits the axis, and asks whether the others pass its beam', () => {
    // Radius 4 at 50: the ring at 60 walks 0.5 from it at 10 mm, the pupil 2.5, the rim at 100 2.5: 4 + 2.5.
    const stops = [pupil(20), ring('narrow', 8, 50), ring('second', 10, 60), rim(9)];
    expect(opening(stops, 3, 10)).toBeCloseTo(13, 12);
    expect(opening([pupil(12.9), ...stops.slice(1)], 3, 10)).toBeUndefined();
    expect(opening([pupil(20), ring('narrow', 8, 50), ring('second', 8.9, 60), rim(9)], 3, 10)).toBeUndefined();
  });

  it('lets pass what another takes by a rounding of its size, and no more', () => {
    const short = (by: number) => opening([pupil(10), ring('ring', 12, 80), ring('other', 2 * (7.5 - by), 50)], 1, 10);
    expect(short(0)).toBeCloseTo(18, 9);
    expect(short(2e-9)).toBeCloseTo(18, 9);
    expect(short(1e-8)).toBeUndefined();
  });
});
