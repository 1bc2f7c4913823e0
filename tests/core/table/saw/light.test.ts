import { describe, expect, test } from 'vitest';
import type { Pairing } from '../../../../core/index.ts';
import { toldBy } from '../../../../core/table/saw/saw.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import { unsolvedInWords } from '../../../../core/table/saw/words.ts';
import { bare, NINETY_FIVE_OF_EVEN, only } from './bare.ts';
import { figureOf, q } from './simulated.ts';

describe('what light shows', () => {
  const loss = (pairing: Pairing): number => figureOf(pairing, 'cornerLossEv');
  const at = (e: number, rim = 16): Pairing => ({ ...bare(rim), objective: { ...bare().objective, exitPupilFromShoulderMm: e } });

  test.each(['cornerLossEv', 'cornerIllumination', 'halfRadiusMm', 'onsetRadiusMm'] as const)('%s leads back to the exit pupil', (id) => {
    for (const e of [-38, -12, 4]) {
      const far = { ...at(e), infinitySpaceMm: 140 };
      const name = id === 'cornerIllumination' ? 'cornerShare' : id;
      const r = only(bare(), { kind: 'wall', [name]: q(figureOf(far, id), 1e-4), infinitySpaceMm: 140 } as Sighting);
      expect(r.value).toBeCloseTo(e, 5);
    }
  });

  test('the ± of one radius is that of 1/r, in proportion to which the distance from pupil to rim is', () => {
    const r = figureOf({ ...at(-20), infinitySpaceMm: 140 }, 'halfRadiusMm');
    const found = only(bare(), { kind: 'wall', halfRadiusMm: q(r, 0.1), infinitySpaceMm: 140 });
    // The relay's way of mapping angles does not move a radius of half the shared area.
    const half = (160 * NINETY_FIVE_OF_EVEN * 0.1) / r;
    expect(found.value - found.low).toBeCloseTo(half, 6);
    expect(found.high - found.value).toBeCloseTo(half, 6);
  });

  test('the ± of two radii by the formula of errors: 1/r = (S - e) / k for any k that the openings make', () => {
    const [S1, S2, d] = [140, 240, 0.001];
    const radius = (infinitySpaceMm: number): number => figureOf({ ...at(-20), infinitySpaceMm }, 'halfRadiusMm');
    const [y1, y2] = [1 / radius(S1), 1 / radius(S2)];
    const wall = (S: number): Sighting => ({ kind: 'wall', halfRadiusMm: q(radius(S), d), infinitySpaceMm: S });
    const found = toldBy(bare(), { sightings: [wall(S1), wall(S2)], opening: '/relay/clearApertureMm' }).results[0];
    // e = (S1 y2 - S2 y1) / (y2 - y1), and a half-width of y is d y².
    const rise = (y: number, S: number): number => (((S1 - S2) * y) / (y2 - y1) ** 2) * d * (S === S1 ? y1 : y2) ** 2;
    const half = NINETY_FIVE_OF_EVEN * Math.hypot(rise(y2, S1), rise(y1, S2));
    expect((found?.plusMinus as number) / half).toBeCloseTo(1, 3);
  });

  test('two radii at two spacings lead back to the pupil and to a rim that is told wrong', () => {
    const truth = at(-27, 15.2);
    const wall = (infinitySpaceMm: number): Sighting => ({
      kind: 'wall',
      halfRadiusMm: q(figureOf({ ...truth, infinitySpaceMm }, 'halfRadiusMm'), 0.01),
      infinitySpaceMm,
    });
    const { results } = toldBy(bare(17), { sightings: [wall(140), wall(240)], opening: '/relay/clearApertureMm' });
    expect(results.map(({ path }) => path)).toEqual(['/objective/exitPupilFromShoulderMm', '/relay/clearApertureMm']);
    expect(results[0]?.value).toBeCloseTo(-27, 4);
    expect(results[1]?.value).toBeCloseTo(15.2, 5);
  });

  const ringed = (pairing: Pairing, diameterMm: number | { value: number; plusMinus: number }): Pairing => ({
    ...pairing,
    sensor: { ...pairing.sensor, widthMm: 60, heightMm: 40 },
    stops: [{ label: 'a tube', diameterMm, fromShoulderMm: 55 }],
  });
  const ofRing = ['halfRadiusMm', 'onsetRadiusMm'].map(
    (name) => ({ kind: 'wall', [name]: q(figureOf(ringed(at(-20, 60), 13.7), name as 'halfRadiusMm'), 0.01) }) as Sighting,
  );

  test('two readings at one spacing lead back to the pupil and to a ring', () => {
    const { results } = toldBy(ringed(bare(60), q(15, 2)), { sightings: ofRing, opening: '/stops/0/diameterMm' });
    expect(results.map(({ path }) => path)).toEqual(['/objective/exitPupilFromShoulderMm', '/stops/0/diameterMm']);
    expect(results[0]?.value).toBeCloseTo(-20, 0);
    expect(results[1]?.value).toBeCloseTo(13.7, 2);
  });

  test('without a hint of its width a ring as much narrower than the pupil would darken alike: both are told', () => {
    // Two discs whose radii change places share as much, in units of the smaller: b' = a²/b, and z' = z a/b.
    const { results } = toldBy(ringed(bare(60), 15), { sightings: ofRing, opening: '/stops/0/diameterMm' });
    const narrow = 100 / 13.7;
    const [pupils, rings] = results.map(({ also }) => also.map(({ value }) => value).toSorted((a, b) => a - b));
    expect(pupils).toEqual([expect.closeTo(-20, 3), expect.closeTo(55 - (75 * 10) / 13.7, 3)]);
    expect(rings).toEqual([expect.closeTo(narrow, 4), expect.closeTo(13.7, 4)]);
  });

  test('light that no place of the pupil leaves is told with what this pairing can show', () => {
    const sighting: Sighting = { kind: 'wall', cornerLossEv: q(0.8, 0.05) };
    const { results, unsolved } = toldBy(bare(54), { sightings: [sighting] });
    expect(results).toEqual([]);
    expect(unsolved[0]?.why).toBe('unmet');
    expect(unsolved[0]?.spans).toEqual([{ place: 0, least: 0, greatest: 0 }]);
    expect(unsolvedInWords(unsolved[0] as never, [sighting])).toContain("the corner's loss can be 0 stops to 0 stops");
  });

  test('light that hardly changes teaches nothing, and says so', () => {
    const { results, unsolved } = toldBy(bare(54), { sightings: [{ kind: 'wall', cornerLossEv: q(0, 0.05) }] });
    expect(results).toEqual([]);
    expect(unsolved.map(({ why }) => why)).toEqual(['nothing learnt']);
  });

  test('a reading near the beginning of the fall leaves one end to the guess', () => {
    const r = only(bare(20), { kind: 'wall', cornerLossEv: q(0, 0.02) });
    expect(r.cut).toBe(true);
    expect(r.high).toBe(10);
    // The corner is clear from where the pupil's beam just passes the rim.
    expect(loss(at(r.low, 20))).toBeGreaterThan(0);
    expect(loss(at(r.low, 20))).toBeLessThan(0.03);
  });

  test('two places that show the same are both told, and taken as one interval where both are possible', () => {
    // A ring midway darkens alike for a pupil before and behind it.
    const ringed = (guess: Pairing['objective']['exitPupilFromShoulderMm']): Pairing => ({
      ...bare(80),
      infinitySpaceMm: 100,
      objective: { ...bare().objective, ...(guess === undefined ? {} : { exitPupilFromShoulderMm: guess }) },
      stops: [{ diameterMm: 10.4, fromShoulderMm: 50 }],
    });
    const [near, far] = [50 - 20, 50 + 20];
    const seen = figureOf(ringed(near), 'cornerLossEv');
    expect(figureOf(ringed(far), 'cornerLossEv')).toBeCloseTo(seen, 9);
    const sighting: Sighting = { kind: 'wall', cornerLossEv: q(seen, 0.02) };
    const one = only(ringed({ value: 20, plusMinus: 20, origin: 'assumed' }), sighting);
    expect(one.value).toBeCloseTo(near, 6);
    expect(one.also.map(({ value }) => value)).toEqual([expect.closeTo(far, 6)]);
    const both = only(ringed({ value: 40, plusMinus: 60, origin: 'assumed' }), sighting);
    expect(both.value).toBeCloseTo(50, 0);
    expect(both.low).toBeLessThan(near);
    expect(both.high).toBeGreaterThan(far);
    expect(both.also).toHaveLength(2);
  });
});
