import { describe, expect, test } from 'vitest';
import type { Pairing } from '../../../../core/index.ts';
import { benchOf } from '../../../../core/table/saw/bench.ts';
import { magnificationSeen } from '../../../../core/table/saw/magnification.ts';
import { readingOf } from '../../../../core/table/saw/readings.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import { measuredAs } from '../../../../core/table/saw/take.ts';
import { EXIT_PUPIL, RELAY_FOCAL_LENGTH } from '../../../../core/table/saw/unknowns.ts';
import { bare, ruler } from './bare.ts';
import { figureOf, q } from './simulated.ts';

const bench = (pairing: Pairing, sightings: readonly Sighting[], unknown = RELAY_FOCAL_LENGTH) =>
  benchOf(pairing, sightings.map(readingOf), [unknown]);
const objective = (over: object): Pairing => ({ ...bare(), objective: { ...bare().objective, ...over } });

describe('what is foretold', () => {
  test('is what a whole evaluation says, of a rig that stands otherwise too', () => {
    const wall = { kind: 'wall', halfRadiusMm: q(9, 1), infinitySpaceMm: 140 } as Sighting;
    const at = (infinitySpaceMm: number): Pairing => ({ ...objective({ exitPupilFromShoulderMm: -20 }), infinitySpaceMm });
    const pupils = bench(bare(), [wall, { kind: 'wall', cornerLossEv: q(1, 0.1) }], EXIT_PUPIL);
    expect(pupils.foretold(0, [-20])).toBeCloseTo(1 / figureOf(at(140), 'halfRadiusMm'), 10);
    expect(pupils.foretold(1, [-20])).toBeCloseTo(figureOf(at(60), 'cornerLossEv'), 10);
    expect(pupils.spaces).toEqual([140, 60]);
  });
  test('is what is missing first where it cannot be', () => {
    const { clearApertureMm: _, ...relay } = bare().relay;
    const blind = bench({ ...bare(), relay } as Pairing, [{ kind: 'wall', cornerLossEv: q(1, 0.1) }, ruler(2)], EXIT_PUPIL);
    expect(blind.missing(0)).toEqual(['/relay/clearApertureMm']);
    expect(blind.foretold(0, [-20])).toBeNaN();
    expect(blind.missing(1)).toEqual([]);
  });
});

describe('what the half-widths do', () => {
  test('a ruler of 2.35 mm, the engraving and the sensor in doubt: a = W f_o / f, f_o = 200 / M', () => {
    const doubtful: Pairing = { ...objective({ magnification: q(10, 1) }), sensor: { ...bare().sensor, widthMm: q(23.5, 0.5) } };
    const { shared, doubts } = bench(doubtful, [ruler(2.35)]);
    const by = Object.fromEntries(shared.map(({ path }, s) => [path, doubts(0, [200]).shared[s]]));
    // The greater of the two moves: M down by a tenth is a up by a ninth.
    expect(by['/objective/magnification']).toBeCloseTo(2.35 / -9, 9);
    expect(by['/sensor/widthMm']).toBeCloseTo((2.35 * 0.5) / 23.5, 9);
    expect(by['/objective/exitPupilFromShoulderMm']).toBe(0);
    expect(shared.map(({ path }) => path)).not.toContain('/relay/focalLengthMm');
    expect(doubts(0, [200]).own).toEqual([]);
  });
  test("of the reading's own numbers, and of where the rig stood: that puts the pairing's own aside", () => {
    const micrometer = { kind: 'micrometer', divisions: q(100, 1), divisionUm: 10, pixels: q(2564, 5) } as Sighting;
    const own = bench(bare(), [micrometer]).doubts(0, [200]).own;
    // n d / p: 100 × 10 µm over 0.39 µm; a hundredth of it for a division, the length as exact.
    expect(own).toEqual([expect.closeTo(1000 / 0.39 / 100, 6), 0]);
    const given: Pairing = { ...objective({ exitPupilFromShoulderMm: -100 }), infinitySpaceMm: q(160, 4), sensorOffsetMm: q(5, 2) };
    // a = W f_o / F, F = f + s − z s / f: at f = 200, z = 260, s = 50 it is 185, and falls by 0.3 a mm.
    const there = (plusMinus?: number): Sighting =>
      ({ ...ruler(2.5), sensorOffsetMm: plusMinus === undefined ? 50 : q(50, plusMinus) }) as Sighting;
    const { shared, doubts } = bench(given, [there(10), there()]);
    expect(doubts(0, [200]).own[0]).toBeCloseTo(470 / (185 - 3) - 470 / 185, 9);
    expect(doubts(1, [200]).own).toEqual([0]);
    const at = (path: string): number => shared.findIndex((input) => input.path === path);
    expect(doubts(0, [200]).shared[at('/sensorOffsetMm')]).toBe(0);
    // 4 mm more of space take 4 × 50 / 200 = 1 mm from F.
    expect(doubts(0, [200]).shared[at('/infinitySpaceMm')]).toBeCloseTo(470 / 184 - 470 / 185, 9);
  });
  test('inputs without a ± that it hangs on are taken as they stand; those that the reading has its own of are not among them', () => {
    expect(
      bench(bare(), [ruler(2.35)])
        .asTheyStand([200])
        .toSorted(),
    ).toEqual(['/objective/magnification', '/objective/referenceFocalLengthMm', '/sensor/widthMm', '/sensorOffsetMm'].toSorted());
    expect(bench(objective({ magnification: q(10, 1) }), [ruler(2.35)]).asTheyStand([200])).not.toContain('/objective/magnification');
    const off = { ...ruler(2.5), sensorOffsetMm: 50 } as Sighting;
    const given: Pairing = { ...objective({ exitPupilFromShoulderMm: -100 }), sensorOffsetMm: 20 };
    expect(bench(given, [ruler(2.35)]).asTheyStand([200])).toContain('/sensorOffsetMm');
    expect(bench(given, [off]).asTheyStand([200])).not.toContain('/sensorOffsetMm');
    expect(bench(given, [off, ruler(2.35)]).asTheyStand([200])).toContain('/sensorOffsetMm');
  });
});

describe('a sighting as a reading', () => {
  test('a corner without any light counts as forty stops', () => {
    const { foretold } = readingOf({ kind: 'wall', cornerLossEv: q(1, 0.1) }, 0);
    expect([foretold(3, []), foretold(Number.POSITIVE_INFINITY, [])]).toEqual([3, 40]);
  });
  test('a radius is compared as its reciprocal, and told as a radius', () => {
    const reading = readingOf({ kind: 'wall', halfRadiusMm: q(8, 0.4) }, 0);
    expect([reading.value, reading.plusMinus, reading.foretold(4, []), reading.shown(0.2)]).toEqual([0.125, 0.4 / 64, 0.25, 5]);
  });
  test('a thing at the focal length or nearer has no picture', () => {
    const { foretold } = readingOf({ kind: 'far', imageMm: q(200, 1), thingMm: 600 }, 0);
    expect(foretold(300, [600])).toBeCloseTo(600, 9);
    for (const f of [600, 700]) expect(foretold(f, [600])).toBe(Number.POSITIVE_INFINITY);
  });
  test('only what stood otherwise is told to', () => {
    expect(readingOf(ruler(2), 0).stood).toEqual([]);
    expect(readingOf({ ...ruler(2), sensorOffsetMm: q(3, 1) } as Sighting, 0).stood).toMatchObject([{ value: 3, plusMinus: 1 }]);
    expect(readingOf({ kind: 'far', imageMm: q(200, 1), thingMm: 600 }, 0).stood).toEqual([]);
  });
});

describe('the magnification as it is seen', () => {
  const seen = (pairing: Pairing, ...sightings: Sighting[]) => magnificationSeen(pairing, sightings.map(readingOf));
  test('is the width over what the ruler shows, both ends, whatever the engraving says and is worth', () => {
    for (const magnification of [10, q(11, 2)]) {
      const found = seen(objective({ magnification }), ruler(2.35, 0.05));
      const half = (1.959964 / Math.sqrt(3)) * 0.05;
      expect(found).toEqual({
        value: expect.closeTo(10, 6),
        low: expect.closeTo(23.5 / (2.35 + half), 4),
        high: expect.closeTo(23.5 / (2.35 - half), 4),
        from: [0],
      });
    }
  });
  test('what was seen elsewhere does not count, and alone tells nothing', () => {
    const elsewhere = { ...ruler(1.2), sensorOffsetMm: 50 } as Sighting;
    expect(seen(bare(), ruler(2.35, 0.05), elsewhere)).toMatchObject({ value: expect.closeTo(10, 6), from: [0] });
    expect(seen(bare(), elsewhere)).toBeUndefined();
    expect(seen(bare())).toBeUndefined();
  });
});

describe('a finding as a quantity', () => {
  const F = '/relay/focalLengthMm';
  const as = (value: number, plusMinus: number, relay: unknown = 200, path = F) =>
    measuredAs({ path, value, plusMinus }, { ...bare(), relay: { ...bare().relay, focalLengthMm: relay } } as Pairing);
  test('six digits of the value, three of its ±', () => {
    expect(as(203.456789, 1.23456)).toEqual({ value: 203.457, plusMinus: 1.23, origin: 'measured', marked: 200 });
  });
  test('keeps what is engraved: what is said to be, or of which nothing is said; no guess and nothing measured', () => {
    expect(as(203, 1, { value: 200, plusMinus: 4 }).marked).toBe(200);
    expect(as(203, 1, { value: 200, origin: 'marked' }).marked).toBe(200);
    expect(as(203, 1, { value: 200, origin: 'measured', marked: 190 }).marked).toBe(190);
    for (const origin of ['measured', 'assumed']) expect(as(203, 1, { value: 200, origin })).not.toHaveProperty('marked');
    const bareKind: Pairing = { ...bare(), relay: { kind: 'tube-lens' } };
    expect(measuredAs({ path: F, value: 203, plusMinus: 1 }, bareKind)).not.toHaveProperty('marked');
  });
  test('its ± stays within what the input may be', () => {
    const { value, plusMinus } = as(2, 50);
    expect(value - (plusMinus as number)).toBeGreaterThan(0);
    expect(plusMinus).toBeLessThan(2);
    const far = as(1e9, 50);
    expect(far.plusMinus).toBe(0);
    expect(as(far.value - 10, 50).plusMinus).toBeLessThanOrEqual(10);
    expect(as(far.value - 10, 50).plusMinus).toBeGreaterThan(9);
  });
});
