import { describe, expect, test } from 'vitest';
import { MOST_SIGHTINGS, sightingsSchema } from '../../../../core/table/saw/sightings.ts';

const accepts = (sighting: object): boolean => sightingsSchema.safeParse([sighting]).success;
const read = (value: number): object => ({ value, plusMinus: 1e-9 });
const kind = {
  ruler: { kind: 'ruler' },
  micrometer: { kind: 'micrometer', divisions: 100, divisionUm: 10 },
  wall: { kind: 'wall' },
  far: { kind: 'far', imageMm: read(200), thingMm: 1000 },
  extensions: { kind: 'extensions', firstAcrossMm: read(100), secondAcrossMm: read(50), apartMm: 50 },
};

/** The ends of what can be seen, from the bench: no ruler of a tenth of a micrometre, no thing nearer than half a metre is far. */
describe.each([
  ['an object of less than a micrometre to half a metre', kind.ruler, 'acrossMm', 0.001, 500],
  ['a pair of pixels to a million', kind.micrometer, 'pixels', 2, 1_000_000],
  ['a corner a stop brighter than the middle to twelve stops darker', kind.wall, 'cornerLossEv', -1, 12],
  ['no light to half as much again', kind.wall, 'cornerShare', 0, 1.5],
  ['a hundredth of a mm to a quarter of a metre', kind.wall, 'onsetRadiusMm', 0.01, 250],
  ['the same where half is left', kind.wall, 'halfRadiusMm', 0.01, 250],
  ['a picture 5 mm to 10 m behind', kind.far, 'imageMm', 5, 10_000],
  ['a micrometre to 5 m across a bare lens', kind.extensions, 'firstAcrossMm', 0.001, 5000],
  ['and at the longer extension', kind.extensions, 'secondAcrossMm', 0.001, 5000],
] as const)('%s can be read', (_, base, field, least, greatest) => {
  test(`${field} from ${least} to ${greatest}`, () => {
    for (const end of [least, greatest]) expect(accepts({ ...base, [field]: read(end) })).toBe(true);
    const beyond = 1e-3 * Math.max(1e-3, Math.min(Math.abs(least), Math.abs(greatest)));
    for (const end of [least - beyond, greatest + beyond]) expect(accepts({ ...base, [field]: read(end) })).toBe(false);
  });
});

describe.each([
  ['divisions', kind.micrometer, 0.1, 100_000],
  ['divisionUm', kind.micrometer, 0.1, 10_000],
  ['thingMm', kind.far, 500, 100_000_000],
  ['apartMm', kind.extensions, 0.1, 1000],
] as const)('what a reading is made with: %s', (field, base, least, greatest) => {
  test(`from ${least} to ${greatest}, bare or with a ± that may be 0`, () => {
    const asked = (x: unknown): boolean => accepts({ ...base, ...(base.kind === 'micrometer' ? { pixels: read(100) } : {}), [field]: x });
    for (const end of [least, greatest]) {
      expect(asked(end)).toBe(true);
      expect(asked({ value: end })).toBe(true);
      expect(asked({ value: end, plusMinus: 0 })).toBe(true);
    }
    for (const end of [0.999 * least, 1.001 * greatest]) {
      expect(asked(end)).toBe(false);
      expect(asked({ value: end })).toBe(false);
    }
    expect(asked({ value: least, plusMinus: -0.001 })).toBe(false);
  });
});

test('a reading without its ± says nothing, and is told what to look like only where it is no object', () => {
  const messages = (acrossMm: unknown): string =>
    sightingsSchema
      .safeParse([{ kind: 'ruler', acrossMm }])
      .error?.issues.map(({ message }) => message)
      .join() ?? '';
  expect(messages(2.3)).toContain('must be an object with the value that was read and its plusMinus');
  expect(messages({ value: 2.3, plusMinus: 0 })).not.toContain('must be an object with');
  expect(messages({ value: 2.3, plusMinus: 0.1, of: 3 })).not.toContain('must be an object with');
  expect(messages({ value: 2.3, plusMinus: 0.1 })).toBe('');
});

test('one sighting is enough, twelve are the most', () => {
  const many = (n: number): boolean =>
    sightingsSchema.safeParse(Array.from({ length: n }, () => ({ kind: 'ruler', acrossMm: read(2) }))).success;
  expect([0, 1, 12, 13].map(many)).toEqual([false, true, true, false]);
  expect(MOST_SIGHTINGS).toBe(12);
});
