import { expect, test } from 'vitest';
import { Gap } from '../../../core/figure.ts';
import { put, type Standing, setting, shapeOf } from '../../../core/table/setting.ts';

const one = (more: { usual?: number; standing?: Standing }) =>
  setting({ key: 'lengthMm', symbol: 'l', unit: 'mm', words: 'a length', bounds: [2, 10], ...more });
const none = () => undefined;
const guess = (value: number, plusMinus: number) => ({ value, plusMinus, why: 'typical' });

test('what is given is taken before what is usual, and its interval ends where the setting does', () => {
  expect(put(one({ usual: 5 }), 7, none)).toMatchObject({
    value: 7,
    input: { path: '/lengthMm', value: 7, plusMinus: 0, least: 7, greatest: 7 },
  });
  expect(put(one({ usual: 5 }), { value: 9, plusMinus: 3, origin: 'measured' }, none).input).toMatchObject({
    value: 9,
    plusMinus: 3,
    least: 6,
    greatest: 10,
    origin: 'measured',
  });
  expect(put(one({}), { value: 3, plusMinus: 3 }, none).input).toMatchObject({ least: 2, greatest: 6 });
  expect(put(one({ usual: 5 }), undefined, none).value).toBe(5);
  expect(put(one({ usual: 5 }), 7, none).input?.put(7, 8)).toBe(8);
});

test('without any of them it is missing, under its own path', () => {
  const { value, input } = put(one({}), undefined, none);
  expect(input).toBeUndefined();
  expect(value).toBeInstanceOf(Gap);
  expect((value as Gap).missing).toEqual(['/lengthMm']);
});

test('a guess is told as one, cut to what the setting may be, its ± with it', () => {
  const input = put(one({ standing: guess(9, 3) }), undefined, none).input;
  expect(input).toMatchObject({ value: 8, plusMinus: 2, least: 6, greatest: 10, origin: 'assumed', guess: 'typical' });
  expect(put(one({ standing: guess(1, 3) }), undefined, none).input).toMatchObject({ value: 3, plusMinus: 1 });
  expect(put(one({ standing: guess(5, 1) }), undefined, none).input).toMatchObject({ value: 5, plusMinus: 1 });
  // What is given puts the guess aside.
  expect(put(one({ standing: guess(9, 3) }), 4, none).input).toMatchObject({ value: 4, plusMinus: 0, guess: undefined });
});

test('a guess may follow from what else is set, and there is none where too little is', () => {
  const twice = one({
    usual: 3,
    standing: (read) => {
      const width = read('widthMm');
      return width === undefined ? undefined : guess(2 * width, 0.5);
    },
  });
  expect(put(twice, undefined, (key) => (key === 'widthMm' ? 3 : undefined)).input).toMatchObject({
    value: 6,
    plusMinus: 0.5,
    origin: 'assumed',
  });
  expect(put(twice, undefined, none).input).toMatchObject({ value: 3, plusMinus: 0 });
});

test('what is given as assumed is told as typical of its class; what is measured or engraved is no guess', () => {
  const guessOf = (origin?: string) => put(one({}), { value: 5, plusMinus: 1, ...(origin ? { origin } : {}) }, none).input?.guess;
  expect(guessOf('assumed')).toBe('given as typical of its class');
  for (const origin of ['measured', 'marked', undefined]) expect(guessOf(origin)).toBeUndefined();
});

test('all settings of a request may be left out', () => {
  expect(shapeOf([one({})]).lengthMm.safeParse(undefined).success).toBe(true);
});
