import { expect, test } from 'vitest';
import { z } from 'zod';
import { Gap } from '../../../core/figure.ts';
import { put, type Setting, shapeOf } from '../../../core/table/setting.ts';

/** What a setting may be, from where to where, and what is taken where it is left out. */
export type Held = readonly [least: number, greatest: number, taken?: number | { value: number; plusMinus: number }];

/** Each setting takes both its ends, bare or as a quantity, and nothing beyond them. */
export function holdsSettings(settings: readonly Setting[], held: Readonly<Record<string, Held>>): void {
  test('every setting is held', () => {
    expect(Object.keys(held).sort()).toEqual(settings.map(({ key }) => key).sort());
  });
  test.each(Object.entries(held))('%s', (key, [least, greatest, taken]) => {
    const one = settings.find((setting) => setting.key === key) as Setting;
    const accepts = (x: unknown): boolean => z.object(shapeOf([one])).safeParse({ [key]: x }).success;
    for (const end of [least, greatest]) {
      expect(accepts(end)).toBe(true);
      expect(accepts({ value: end })).toBe(true);
    }
    const beyond = 1e-3 * Math.max(1e-3, Math.abs(least));
    expect(accepts(least - beyond)).toBe(false);
    expect(accepts(greatest + 1e-3 * greatest)).toBe(false);
    const { value, input } = put(one, undefined, () => undefined);
    if (taken === undefined) expect(value).toBeInstanceOf(Gap);
    else if (typeof taken === 'number') expect([value, input?.plusMinus, input?.guess]).toEqual([taken, 0, undefined]);
    else {
      expect(value).toBeCloseTo(taken.value, 12);
      expect(input?.plusMinus).toBeCloseTo(taken.plusMinus, 12);
      expect(input).toMatchObject({ origin: 'assumed', guess: expect.any(String) });
    }
  });
}
