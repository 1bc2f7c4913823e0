import { describe, expect, test } from 'vitest';
import { type Pairing, PairingError } from '../../../../core/index.ts';
import { benchOf } from '../../../../core/table/saw/bench.ts';
import { magnificationSeen } from '../../../../core/table/saw/magnification.ts';
import { readingOf } from '../../../../core/table/saw/readings.ts';
import { sawOf, toldBy } from '../../../../core/table/saw/saw.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import { EXIT_PUPIL, RELAY_FOCAL_LENGTH } from '../../../../core/table/saw/unknowns.ts';
import { birgeRatio } from '../../../../core/table/saw/weigh.ts';
import { bare, ruler } from './bare.ts';
import { q } from './simulated.ts';

/** What goes with a finding, or stands in its place: a ruler shows 23.5 mm · 20 mm / f. */

const FOCAL = '/relay/focalLengthMm';
const relay = (over: object): Pairing => ({ ...bare(), relay: { ...bare().relay, ...over } });
const FAR: Sighting = { kind: 'far', imageMm: q(204, 1), thingMm: 10_000 } as Sighting;

describe('what cannot have been seen', () => {
  const unmet = (focalLengthMm: unknown) => toldBy(relay({ focalLengthMm }), { sightings: [ruler(100)] }).unsolved;
  test('is told with what could, by what is known of the number', () => {
    expect(unmet({ value: 200, plusMinus: 2 })).toEqual([
      {
        path: FOCAL,
        from: [0],
        why: 'unmet',
        spans: [{ place: 0, least: expect.closeTo(470 / 202, 6), greatest: expect.closeTo(470 / 198, 6) }],
      },
    ]);
  });
  test('or by any that there are, where it stands as exact', () => {
    expect(unmet(200)).toEqual([
      {
        path: FOCAL,
        from: [0],
        why: 'unmet',
        spans: [{ place: 0, least: expect.closeTo(470 / 5000, 6), greatest: expect.closeTo(470 / 5, 6) }],
      },
    ]);
  });
});

describe('a finding', () => {
  test('of one sighting has no fit and, where it agrees, no clash', () => {
    const [found] = toldBy(bare(), { sightings: [ruler(2.35)] }).results;
    expect(found).toMatchObject({ path: FOCAL, value: expect.closeTo(200, 6), from: [0] });
    expect(found).not.toHaveProperty('fit');
    expect(found).not.toHaveProperty('clash');
  });
  test('of two has the fit of both, with one more than it takes', () => {
    const [found] = toldBy(bare(), { sightings: [ruler(2.35), ruler(2.36)] }).results;
    // Half-widths of 0.01 are σ = 0.01 / √3; two readings 0.01 apart: χ² = 0.01² / (2 σ²) = 1.5.
    expect(found?.fit).toEqual({ chiSquare: expect.closeTo(1.5, 3), freedom: 1, birge: 1 });
    expect(found?.from).toEqual([0, 1]);
  });
  test('is from sightings alone, whatever else the pairing says', () => {
    const wall = { kind: 'wall', halfRadiusMm: q(9, 0.3) } as Sighting;
    const told = toldBy(relay({ clearApertureMm: { value: 16, plusMinus: 2, origin: 'measured' } }), { sightings: [wall] });
    const all = [...told.results, ...told.unsolved];
    expect(all.length).toBeGreaterThan(0);
    for (const { from } of all) expect(from).toEqual([0]);
  });
});

describe('the magnification seen', () => {
  test('goes beside the findings where rulers show one, and is from those alone', () => {
    expect(toldBy(bare(), { sightings: [FAR] })).not.toHaveProperty('magnification');
    expect(toldBy(bare(), { sightings: [FAR, ruler(2.35)] }).magnification?.from).toEqual([1]);
  });
  test('is what the relay makes of the engraved one', () => {
    const half = (1.959964 / Math.sqrt(3)) * 0.02;
    expect(magnificationSeen(relay({ focalLengthMm: 400 }), [readingOf(ruler(1.175, 0.02), 0)])).toEqual({
      value: expect.closeTo(20, 6),
      low: expect.closeTo(23.5 / (1.175 + half), 3),
      high: expect.closeTo(23.5 / (1.175 - half), 3),
      from: [0],
    });
  });
});

describe('what was asked', () => {
  test('names an opening of the pairing', () => {
    const asked = (opening: string) => () => toldBy(bare(), { sightings: [ruler(2.35)], opening });
    expect(asked('/stops/0/diameterMm')).toThrow(PairingError);
    try {
      asked('/stops/0/diameterMm')();
    } catch (error) {
      expect((error as PairingError).problems).toMatchObject([{ path: '/opening', code: 'unknownName' }]);
    }
    expect(asked('/relay/clearApertureMm')).not.toThrow();
  });
  test('goes with what to mind of it, once', () => {
    const sun = 'Never take the sun for the far thing, nor a lamp or a laser: a lens burns and blinds.';
    expect(sawOf(bare(), { sightings: [FAR, FAR] }).cautions).toEqual([sun]);
    expect(sawOf(bare(), { sightings: [ruler(2.35)] }).cautions).toEqual([]);
  });
});

describe('the bench', () => {
  const both = benchOf({ ...bare(), infinitySpaceMm: q(60, 2) }, [readingOf(ruler(2.35), 0)], [RELAY_FOCAL_LENGTH]);
  test('shares what has a ±, and no more', () => {
    expect(both.shared.map(({ path }) => path)).toEqual([
      EXIT_PUPIL.path,
      '/objective/noseDiameterMm',
      '/sensor/registerMm',
      '/infinitySpaceMm',
      '/relay/glass',
    ]);
  });
  test('takes as they stand neither what is sought nor what does not count', () => {
    const pairing: Pairing = { ...bare(), objective: { ...bare().objective, exitPupilFromShoulderMm: -100 }, sensorOffsetMm: 20 };
    const stand = (counts?: (path: string) => boolean) =>
      benchOf(
        pairing,
        [readingOf(ruler(2.35), 0)],
        [EXIT_PUPIL, RELAY_FOCAL_LENGTH],
        undefined,
        counts && (({ path }) => counts(path)),
      ).asTheyStand([-100, 200]);
    expect(stand()).toContain('/sensorOffsetMm');
    expect(stand()).not.toContain(FOCAL);
    expect(stand()).not.toContain(EXIT_PUPIL.path);
    expect(stand((path) => path === '/sensor/widthMm')).toEqual(['/sensor/widthMm']);
  });
  test('counts the greater of two moves where that is the one down', () => {
    // F = 200 + s / 2 with the pupil 100 mm before the relay: 225 at s = 50, 220 and 230 at its ends.
    const pairing: Pairing = { ...bare(), objective: { ...bare().objective, exitPupilFromShoulderMm: -40 } };
    const there = { ...ruler(2.1), sensorOffsetMm: q(50, 10) } as Sighting;
    const { doubts } = benchOf(pairing, [readingOf(there, 0)], [RELAY_FOCAL_LENGTH]);
    expect(doubts(0, [200]).own[0]).toBeCloseTo(470 / 225 - 470 / 220, 9);
  });
});

test("Birge's ratio widens from beyond the 95 % point on, and nothing that has no freedom", () => {
  expect([birgeRatio(3.841, 1), birgeRatio(3.85, 1), birgeRatio(100, 0)]).toEqual([1, Math.sqrt(3.85), 1]);
});
