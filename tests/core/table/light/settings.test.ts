import { expect, it } from 'vitest';
import { quantityIn } from '../../../../core/parts/quantity.ts';
import { SETTINGS } from '../../../../core/table/light/settings.ts';

/** What is not beyond a bench, and nothing that has no width. */
it.each([
  ['noseFrontDiameterMm', 0.1, 200],
  ['noseTaperLengthMm', 0, 200],
  ['inTheWayMm', 0, 200],
  ['diffuserDiameterMm', 0.1, 500],
  ['diffuserTopDiameterMm', 0.1, 500],
  ['diffuserHeightMm', 0.1, 500],
  ['diffuserThicknessMm', 0, 50],
])('%s is taken from %d to %d mm and not beyond', (key, least, most) => {
  const schema = quantityIn((SETTINGS.find((one) => one.key === key) as (typeof SETTINGS)[number]).bounds);
  expect([least, most].map((x) => schema.safeParse(x).success)).toEqual([true, true]);
  expect([least - 0.001, most + 0.01].map((x) => schema.safeParse(x).success)).toEqual([false, false]);
});

it('no taper, nothing in the way and a wall of paper are usual', () => {
  const usual = Object.fromEntries(SETTINGS.map((one) => [one.key, one.usual]).filter(([, value]) => value !== undefined));
  expect(usual).toEqual({ noseTaperLengthMm: 0, inTheWayMm: 0, diffuserThicknessMm: 0 });
});
