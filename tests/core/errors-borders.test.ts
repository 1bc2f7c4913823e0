import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { PairingError, problemsOf, shown, valueAt } from '../../core/errors.ts';
import { looseFocalLength, loosePower, within } from '../../core/parts/typical.ts';

const problems = (schema: z.ZodType, input: unknown) => {
  const { error } = schema.safeParse(input);
  return error ? problemsOf(error, input).map(({ path, code, message, expected }) => ({ path, code, message, expected })) : [];
};
const said = (schema: z.ZodType, input: unknown) => problems(schema, input).map(({ message }) => message);

describe('what was given', () => {
  it('is shown in eighty characters at most, cut only beyond them', () => {
    // In quotes, two more than the text.
    expect(shown('x'.repeat(78))).toBe(`"${'x'.repeat(78)}"`);
    expect(shown('y'.repeat(79))).toBe(`"${'y'.repeat(78)}…`);
  });
  it('is shown even where it cannot be written as JSON', () => {
    expect([shown(undefined), shown(12n), shown(Number.NaN), shown(null)]).toEqual(['nothing', '12', 'NaN', 'null']);
  });
  it('is not looked for in what is no object', () => {
    expect([valueAt('text', ['length']), valueAt({ a: null }, ['a', 'b']), valueAt(3, ['a'])]).toEqual([undefined, undefined, undefined]);
  });
});

describe('a refusal', () => {
  it('has a name, and tells every problem at its path', () => {
    const problem = (path: string) => ({ path, code: 'a', message: 'is wrong', given: '1', expected: '2' });
    const error = new PairingError([problem('/a'), problem('')]);
    expect([error.name, error.message, error.problems.length]).toEqual(['PairingError', '/a: is wrong; /: is wrong', 2]);
  });
});

describe('the words of a problem', () => {
  it('tell a border that belongs to what is allowed from one that does not', () => {
    expect([said(z.number().gt(3), 3), said(z.number().min(3), 2), said(z.number().lt(3), 3), said(z.number().max(3), 4)]).toEqual([
      ['must be more than 3'],
      ['must be at least 3'],
      ['must be less than 3'],
      ['must be at most 3'],
    ]);
  });
  it('tell of what a length is the length', () => {
    expect([said(z.string().max(3), 'four'), said(z.array(z.number()).min(2), [1]), said(z.array(z.number()).max(1), [1, 2])]).toEqual([
      ['must be at most 3 characters long'],
      ['must be at least 2 entries long'],
      ['must be at most 1 entries long'],
    ]);
  });
  it('are the schema’s own where it says what must be', () => {
    expect(problems(z.number({ error: 'must be a count' }), 'x')).toMatchObject([{ code: 'wrongType', expected: 'a count' }]);
    expect(problems(z.object({ a: z.enum(['b', 'c']) }), {})).toMatchObject([{ path: '/a', code: 'missing', expected: 'one of "b", "c"' }]);
  });
});

describe('a union', () => {
  const circle = z.strictObject({ radius: z.number() });
  const box = z.strictObject({ width: z.number(), height: z.number() });
  it('of objects is judged by the one that knows most of the names, then by the one with least to complain of', () => {
    const shape = z.union([circle, box]);
    expect(problems(shape, { width: 'x', height: 2 })).toMatchObject([{ path: '/width', code: 'wrongType' }]);
    expect(problems(z.union([box, circle]), { radius: 'x' })).toMatchObject([{ path: '/radius', code: 'wrongType' }]);
    // Neither knows more names than the other: one misses two, the other one.
    expect(problems(z.union([box, circle]), {})).toMatchObject([{ path: '/radius', code: 'missing' }]);
    // A name that is strange deeper down is not one of the object's own.
    const deep = z.union([z.strictObject({ in: circle }), z.strictObject({ other: z.number(), more: z.number() })]);
    expect(problems(deep, { in: { radius: 1, a: 1, b: 2, c: 3 } })).toMatchObject([{ path: '/in', code: 'unknownName' }]);
  });
  it('that none of its kinds fits tells all of them', () => {
    expect(said(z.union([z.number(), circle]), true)).toEqual(['must be a number or an object']);
    expect(said(z.union([z.number(), z.enum(['auto', 'none'])]), true)).toEqual(['must be a number or "auto" or "none"']);
    expect(said(z.union([z.number().min(5), z.literal('plane')]), 3)).toEqual(['must be at least 5']);
  });
});

describe('guesses', () => {
  it('keep within the bounds of their name, in the middle of what is left', () => {
    // From 5 to 5000 mm.
    const of = (value: number, plusMinus: number) => {
      const guess = within('focalLengthMm', { value, plusMinus, why: '' });
      return [guess.value - guess.plusMinus, guess.value + guess.plusMinus];
    };
    expect([of(10, 20), of(4990, 20), of(100, 20)]).toEqual([
      [5, 30],
      [4970, 5000],
      [80, 120],
    ]);
  });
  it('are as loose as markings are', () => {
    const power = (value: number) => loosePower({ value, plusMinus: 0, origin: 'marked' }).plusMinus;
    // A twentieth, a quarter of a dioptre at least, but never more than a quarter of the power.
    expect([power(10), power(2), power(0.8)].map((x) => Number(x.toFixed(9)))).toEqual([0.5, 0.25, 0.2]);
    expect(looseFocalLength({ value: 200, plusMinus: 0, origin: 'marked' }).plusMinus).toBe(10);
  });
});
