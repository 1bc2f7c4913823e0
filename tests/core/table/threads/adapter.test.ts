import { describe, expect, it } from 'vitest';
import {
  adapterOf,
  adapterSchema,
  COMMON_RINGS,
  COMMON_TUBES,
  endOf,
  endSchema,
  threadText,
  tubeOf,
  tubeSchema,
} from '../../../../core/table/threads/adapter.ts';
import type { Sex } from '../../../../core/table/threads/thread.ts';

const end = (thread: string, sex: Sex) => ({ thread, sex });
const ENDS = [end('58', 'male'), end('52', 'female')] as [ReturnType<typeof end>, ReturnType<typeof end>];

describe('what is told of rings and tubes', () => {
  const ring = (more: object) => adapterSchema.safeParse({ ends: ENDS, ...more }).success;
  const tube = (more: object) => tubeSchema.safeParse({ thread: 'M42 x 1', lengthMm: 7, ...more }).success;

  it('names a thread in 1 to 60 letters, and is told what would do where it does not', () => {
    expect(['C', 'M25'.padEnd(60), 'M25'.padEnd(61)].map((text) => threadText.safeParse(text).success)).toEqual([true, true, false]);
    expect(threadText.safeParse('bayonet').error?.issues).toMatchObject([
      { message: 'names no thread', params: { code: 'notAThread', expected: expect.stringMatching(/M25/) } },
    ]);
    expect(endSchema.safeParse(end('bayonet', 'male')).error?.issues.map(({ path }) => path)).toEqual([['thread']]);
    expect(() => endOf(end('bayonet', 'male'))).toThrow(RangeError);
  });

  it('has lengths from 0 to 500 mm, openings from 0.1 to 300 mm, names of 1 to 120 letters', () => {
    expect([-0.1, 0, 500, 501].map((lengthMm) => ring({ lengthMm }))).toEqual([false, true, true, false]);
    expect([-0.1, 0, 500, 501].map((lengthMm) => tube({ lengthMm }))).toEqual([false, true, true, false]);
    expect([0.09, 0.1, 300, 301].map((clearMm) => ring({ clearMm }))).toEqual([false, true, true, false]);
    expect([-0.1, 0, 300, 301].map((reachMm) => tube({ reachMm }))).toEqual([false, true, true, false]);
    expect([0, 1, 120, 121].map((n) => ring({ name: 'x'.repeat(n) }))).toEqual([false, true, true, false]);
  });
});

describe('a ring', () => {
  it('is owned and 3 mm long where nothing else is told, and called by its ends', () => {
    expect(adapterOf({ ends: ENDS })).toMatchObject({
      name: 'ring, male M58 x 0.75 to female M52 x 0.75',
      lengthMm: 3,
      lengthKnown: false,
      clearKnown: false,
      owned: true,
    });
    expect(adapterOf({ ends: ENDS, name: 'mine', lengthMm: 5, clearMm: 40, owned: false })).toMatchObject({
      name: 'mine',
      lengthMm: 5,
      lengthKnown: true,
      clearMm: 40,
      clearKnown: true,
      owned: false,
    });
  });

  it('is as open as its narrower end: the root of its thread, of a male one less a wall, of a very narrow one half', () => {
    const open = (a: string, sexA: Sex, b: string, sexB: Sex) => adapterOf({ ends: [end(a, sexA), end(b, sexB)] }).clearMm;
    // The thread takes 1.0825 pitches of the width.
    expect(open('M25', 'female', 'M42 x 1', 'male')).toBeCloseTo(25 - 0.8119, 4);
    expect(open('M25', 'male', 'M42 x 1', 'male')).toBeCloseTo(25 - 0.8119 - 2, 4);
    expect(open('5 x 1', 'male', 'M42 x 1', 'male')).toBeCloseTo((5 - 1.0825) / 2, 4);
  });
});

it('a tube is of one thread, and a focusing one where it can be turned at all', () => {
  const tube = (more: object = {}) => tubeOf({ thread: 'M42 x 1', lengthMm: 17, ...more });
  expect(tube()).toMatchObject({ name: 'tube M42 x 1', reachMm: 0, owned: true, lengthMm: 17, ends: [{ sex: 'female' }, { sex: 'male' }] });
  expect(tube({ reachMm: 0.5 })).toMatchObject({ name: 'focusing tube M42 x 1', reachMm: 0.5 });
  expect(tube({ reachMm: 14, name: 'mine' }).name).toBe('mine');
});

describe('what can be bought', () => {
  it('are step rings of any two sizes up to five places apart in their row', () => {
    const names = COMMON_RINGS.map(({ name }) => name).filter((name) => name.startsWith('step ring'));
    // Of 12 sizes there are 11 + 10 + 9 + 8 + 7 pairs so near, either way round.
    expect(new Set(names).size).toBe(90);
    expect(names.length).toBe(90);
    for (const told of ['37 male to 55 female', '55 male to 37 female']) expect(names).toContain(`step ring, ${told}`);
    for (const told of ['37 male to 58 female', '58 male to 37 female', '58 male to 58 female'])
      expect(names).not.toContain(`step ring, ${told}`);
  });
  it('are rings that have a name of their own or are called by their ends, none of them owned', () => {
    const names = COMMON_RINGS.map(({ name }) => name);
    expect(names).toContain('ring, female RMS to male M42 x 1');
    expect(names).toContain('reversing ring, male M42 x 1 to male 58');
    expect(names).toContain('coupling ring, 58 male to 58 male');
    expect([...COMMON_RINGS, ...COMMON_TUBES].some(({ owned }) => owned)).toBe(false);
  });
  it('are tubes of the old screw mount and of T, plain or focusing', () => {
    const told = COMMON_TUBES.map(({ name, lengthMm, reachMm }) => `${name}, ${lengthMm}${reachMm > 0 ? ` to ${lengthMm + reachMm}` : ''}`);
    expect(told).toEqual([
      ...[7, 14, 28].map((mm) => `tube M42 x 1, ${mm}`),
      ...['17 to 31', '25 to 55', '36 to 90'].map((mm) => `focusing tube M42 x 1, ${mm}`),
      ...[5, 10, 15, 20, 30, 40].map((mm) => `tube M42 x 0.75, ${mm}`),
    ]);
  });
});
