import { describe, expect, test } from 'vitest';
import type { Pairing } from '../../../../core/index.ts';
import { sightingProblems } from '../../../../core/table/saw/contradict.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import { bare, ruler } from './bare.ts';
import { q } from './simulated.ts';

const problems = (sightings: readonly Sighting[], pairing: Pairing = bare()) => sightingProblems(pairing, sightings);
const paths = (sightings: readonly Sighting[], pairing?: Pairing): string[] => problems(sightings, pairing).map(({ path }) => path);
const giving = (gives: 'relay' | 'objective'): Sighting => ({ ...ruler(2.3), gives }) as Sighting;
const far = (thingMm: number): Sighting => ({ kind: 'far', imageMm: q(200, 1), thingMm });
const extensions = (second: number): Sighting => ({
  kind: 'extensions',
  firstAcrossMm: q(100, 1),
  secondAcrossMm: q(second, 1),
  apartMm: 50,
});

describe('one magnification tells one number', () => {
  test('both cannot be asked of rulers, and the objective is what is asked too much', () => {
    expect(paths([giving('relay'), giving('objective')])).toEqual(['/sightings/1/gives']);
    expect(paths([giving('objective'), ruler(2.3), giving('relay')])).toEqual(['/sightings/0/gives']);
  });
  test('either alone can, and both where something else tells the relay', () => {
    for (const same of ['relay', 'objective'] as const) expect(paths([giving(same), giving(same), ruler(2.3)])).toEqual([]);
    expect(paths([giving('relay'), giving('objective'), far(10_000)])).toEqual([]);
    expect(paths([giving('relay'), giving('objective'), extensions(50)])).toEqual([]);
    expect(paths([giving('relay'), giving('objective'), { kind: 'wall', cornerLossEv: q(1, 0.1) }])).toEqual(['/sightings/1/gives']);
  });
});

test('a far thing is farther than its picture', () => {
  expect(paths([far(200)])).toEqual(['/sightings/0/thingMm']);
  expect(paths([far(200.1)])).toEqual([]);
  expect(problems([far(150)])[0]).toMatchObject({ code: 'contradiction', given: '150', expected: 'more than 200' });
});

test('at the longer extension less of the ruler is seen', () => {
  expect(paths([extensions(100)])).toEqual(['/sightings/0/secondAcrossMm']);
  expect(paths([extensions(99.9)])).toEqual([]);
  expect(problems([extensions(101)])[0]).toMatchObject({ given: '101', expected: 'less than 100' });
});

describe('a micrometer', () => {
  const over = (divisions: number | { value: number; plusMinus?: number }): Sighting => ({ kind: 'micrometer', divisions, divisionUm: 10 });
  test('across the whole width is a reading of divisions, which needs its ±', () => {
    for (const bareOnes of [230, { value: 230 }, q(230, 0)]) expect(paths([over(bareOnes)])).toEqual(['/sightings/0/divisions']);
    for (const plusMinus of [0.5, 2]) expect(paths([over(q(230, plusMinus))])).toEqual([]);
  });

  const pixels = (value: number): Sighting => ({ kind: 'micrometer', divisions: 100, divisionUm: 10, pixels: q(value, 1) });
  const sensor = (size: object): Pairing => ({ ...bare(), sensor: { widthMm: 23.5, heightMm: 15.6, ...size } });
  test('over pixels reads no more of them than the diagonal has: 3, 4, 5', () => {
    const counted = sensor({ columns: 4000, rows: 3000 });
    expect(paths([pixels(5000)], counted)).toEqual([]);
    expect(paths([pixels(5001)], counted)).toEqual(['/sightings/0/pixels/value']);
    expect(problems([pixels(5001)], sensor({ columns: 1234, rows: 3000 }))[0]?.expected).toBe('at most 3243.88');
  });
  test('over pixels that nobody counted is taken as it is', () => {
    for (const size of [{}, { columns: 4000 }, { rows: 3000 }]) expect(paths([pixels(900_000)], sensor(size))).toEqual([]);
  });
});

describe('a wall', () => {
  const wall = (read: object): Sighting => ({ kind: 'wall', ...read }) as Sighting;
  test('tells one thing: none and two are named, two at the second', () => {
    expect(problems([wall({})])[0]).toMatchObject({ path: '/sightings/0', message: 'tells nothing of the wall', given: '{"kind":"wall"}' });
    const [two] = problems([wall({ halfRadiusMm: q(9, 1), cornerShare: q(0.5, 0.1), cornerLossEv: q(1, 0.2) })]);
    expect(two).toMatchObject({
      path: '/sightings/0/cornerShare',
      given: '{"value":0.5,"plusMinus":0.1}',
      expected: 'one of cornerLossEv, cornerShare, onsetRadiusMm, halfRadiusMm',
    });
    expect(two?.message).toContain('is given beside cornerLossEv');
    for (const one of [{ cornerShare: q(0.5, 0.1) }, { cornerLossEv: q(11, 0.2) }]) expect(paths([wall(one)], small)).toEqual([]);
  });

  /** 6 by 8 mm: its corner is 5 mm from its middle. */
  const small: Pairing = { ...bare(), sensor: { widthMm: 8, heightMm: 6 } };
  test('has no distance from the middle beyond the corner', () => {
    for (const name of ['onsetRadiusMm', 'halfRadiusMm']) {
      expect(paths([wall({ [name]: q(5, 0.1) })], small)).toEqual([]);
      expect(problems([wall({ [name]: q(5.001, 0.1) })], small)[0]).toMatchObject({
        path: `/sightings/0/${name}/value`,
        given: '5.001',
        expected: 'at most 5',
      });
    }
    expect(problems([wall({ halfRadiusMm: q(15, 0.1) })])[0]?.expected).toBe('at most 14.1');
  });
});
