import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { ownId, PairingError, pairingSchema, pointer, problemsOf, quantity, steps, valueAt } from '../../core/index.ts';
import { sawSchema } from '../../core/table.ts';

const problems = (schema: z.ZodType, input: unknown) => {
  const parsed = schema.safeParse(input);
  return parsed.success ? [] : problemsOf(parsed.error, input);
};
const lens = z.strictObject({ f: quantity('focalLengthMm') });

describe('JSON Pointers', () => {
  it('go both ways, escapes included (RFC 6901)', () => {
    expect(pointer(['a/b', 'm~n', 0])).toBe('/a~1b/m~0n/0');
    expect(steps('/a~1b/m~0n/0')).toEqual(['a/b', 'm~n', '0']);
    expect([pointer([]), steps('')]).toEqual(['', []]);
  });
  it('find own values only', () => {
    expect(valueAt({ a: [{ b: 1 }] }, ['a', 0, 'b'])).toBe(1);
    expect(valueAt({}, ['__proto__', 'toString'])).toBeUndefined();
    expect(valueAt(null, ['a'])).toBeUndefined();
  });
});

describe('problems of a failed parse', () => {
  it('say what a number in a union lacks', () => {
    expect(problems(lens, { f: -3 })).toEqual([
      { path: '/f', code: 'tooSmall', message: 'must be at least 5', given: '-3', expected: 'at least 5' },
    ]);
    expect(problems(lens, { f: 1e308 })).toMatchObject([{ path: '/f', code: 'tooBig', given: '1e+308' }]);
    expect(problems(lens, { f: '200' })).toMatchObject([
      { path: '/f', code: 'wrongType', given: '"200"', expected: 'a number or an object' },
    ]);
    expect(problems(lens, {})).toMatchObject([{ path: '/f', code: 'missing', given: 'nothing' }]);
    expect(problems(lens, { f: Number.NaN })).toMatchObject([{ path: '/f', given: 'NaN' }]);
  });
  it('lead into the object of a union', () => {
    expect(problems(lens, { f: { value: 'x' } })).toMatchObject([{ path: '/f/value', code: 'wrongType' }]);
    expect(problems(lens, { f: { value: 200, plusMinus: -1 } })).toMatchObject([{ path: '/f/plusMinus', code: 'tooSmall' }]);
    expect(problems(lens, { f: { value: 200, plusMinus: 199 } })).toMatchObject([
      { path: '/f/plusMinus', code: 'tooBig', expected: 'at most 195' },
    ]);
    expect(problems(lens, { f: { value: 200, extra: 1 } })).toMatchObject([{ path: '/f', code: 'unknownName' }]);
    expect(problems(lens, { f: { value: 200, origin: 'guessed' } })).toMatchObject([{ path: '/f/origin', code: 'notOneOf' }]);
  });
  it('say how a text must be made', () => {
    expect(problems(ownId, 'my lens')).toEqual([
      {
        path: '',
        code: 'wrongForm',
        message: expect.stringMatching(/^must be .*hyphens/),
        given: '"my lens"',
        expected: expect.stringMatching(/^at most 60/),
      },
    ]);
  });
  it('name every field, path first, and stay short', () => {
    const all = problems(pairingSchema, {
      objective: {},
      relay: { kind: 'mirror' },
      sensor: 3,
      infinitySpaceMm: [],
      unknown: 'x'.repeat(500),
    });
    expect(all.map((p) => p.path)).toEqual(
      expect.arrayContaining(['/objective/magnification', '/relay/kind', '/sensor', '/infinitySpaceMm', '']),
    );
    for (const p of all) {
      expect(p.given.length).toBeLessThanOrEqual(80);
      expect(p.message).not.toMatch(/invalid input/i);
      expect(p.expected).not.toBe('');
    }
  });
  it('are at most twenty', () => {
    const stops = Array.from({ length: 8 }, () => ({ diameterMm: -1, fromShoulderMm: 'x', label: 3 }));
    expect(problems(pairingSchema, { objective: {}, relay: {}, sensor: {}, infinitySpaceMm: 1, stops })).toHaveLength(20);
  });
  it('say of a word that tells which of several it is which would do', () => {
    const [problem] = problems(sawSchema, { sightings: [{ kind: 'guess' }] });
    expect(problem).toMatchObject({ path: '/sightings/0/kind', code: 'notOneOf', given: '"guess"' });
    expect(problem?.expected).toContain('"ruler"');
  });
  it('make an error that says all of them', () => {
    expect(new PairingError([{ path: '', code: 'a', message: 'is wrong', given: '1', expected: '2' }]).message).toBe('/: is wrong');
  });
});
