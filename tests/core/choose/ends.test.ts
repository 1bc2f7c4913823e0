import { describe, expect, it } from 'vitest';
import { endsOf, smallestCircle } from '../../../core/choose/ends.ts';
import type { LimitWindow } from '../../../core/choose/limit-windows.ts';
import type { Span } from '../../../core/choose/spans.ts';
import type { Value } from '../../../core/choose/values.ts';
import { where } from '../../../core/choose/window-words.ts';
import { Gap } from '../../../core/figure.ts';
import type { FigureId } from '../../../core/index.ts';

const limit = (name: LimitWindow['name'], figure: FigureId, ...intervals: Span[]): LimitWindow => ({
  name,
  figure,
  sense: 'least',
  limit: 1,
  intervals,
  how: 'roots',
});
/** The corrected, the lit and the sharp circle at a place. */
const circles =
  (of: (x: number) => readonly [Value, Value, Value], asked: number[] = []) =>
  () =>
  (x: number): readonly Value[] => {
    asked.push(x);
    return of(x);
  };
const none = circles(() => [1, 2, 3]);
const RANGE = { from: 0, to: 300 };
const ends = (
  window: Span[],
  limits: LimitWindow[],
  stands: Span[] = [[0, 300]],
  read = none,
  why = (_: number): string | undefined => 'it is too long',
) => endsOf({ ...RANGE, window, limits, stands }, read, why);

describe('what closes a window', () => {
  const length = limit('length', 'totalLengthMm', [0, 120]);
  const detail = limit('finestDetail', 'resolvedDetailUm', [40, 300]);

  it('is below its first span and above its last, and nothing where it goes on', () => {
    expect(ends([[40, 120]], [length, detail])).toEqual([
      { side: 'below', at: 40, limits: ['finestDetail'], says: 'the finest detail is lost' },
      { side: 'above', at: 120, limits: ['length'], says: 'the rig grows too long' },
    ]);
    expect(ends([[0, 120]], [length]).map(({ side }) => side)).toEqual(['above']);
    expect(ends([[0, 300]], [])).toEqual([]);
    expect(ends([], [length])).toEqual([]);
    const two = [limit('cornerLight', 'cornerIllumination', [0, 10], [20, 30])];
    expect(
      ends(
        [
          [0, 10],
          [20, 30],
        ],
        two,
      ),
    ).toEqual([{ side: 'above', at: 30, limits: ['cornerLight'], says: 'the corners go dark' }]);
  });

  it('is each limit that ends there, be it of several spans', () => {
    const dark = limit('cornerLight', 'cornerIllumination', [5, 10], [50, 120]);
    expect(ends([[50, 120]], [length, dark])).toMatchObject([
      { side: 'below', limits: ['cornerLight'] },
      { side: 'above', limits: ['length', 'cornerLight'], says: 'the rig grows too long and the corners go dark' },
    ]);
  });

  it('is at an end but for rounding', () => {
    const near = limit('length', 'totalLengthMm', [0, 120 * (1 + 1e-11)]);
    expect(ends([[0, 120]], [near])).toMatchObject([{ limits: ['length'] }]);
    expect(ends([[0, 120]], [limit('length', 'totalLengthMm', [0, 120 * (1 + 1e-7)])])).toMatchObject([{ limits: [] }]);
    expect(ends([[0, 300 * (1 - 1e-11)]], [])).toEqual([]);
    // A mark below nothing is as good as one above it.
    expect(endsOf({ from: -40, to: 300, window: [[-40 * (1 - 1e-11), 300]], limits: [], stands: [] }, none, () => undefined)).toEqual([]);
    expect(endsOf({ from: -40, to: 300, window: [[-30, 300]], limits: [], stands: [] }, none, () => undefined)).toHaveLength(1);
  });

  it('is that there is no such rig beyond, in the words of what contradicts it there', () => {
    const asked: number[] = [];
    const why = (x: number): string => {
      asked.push(x);
      return `at ${x < 100 ? 'less' : 'more'}`;
    };
    const stands: Span[] = [
      [20, 80],
      [100, 200],
    ];
    expect(ends([[100, 200]], [limit('length', 'totalLengthMm', [0, 200])], stands, none, why)).toEqual([
      { side: 'below', at: 100, limits: [], says: 'there is no such rig: at less' },
      { side: 'above', at: 200, limits: [], says: 'there is no such rig: at more' },
    ]);
    // A millionth beyond, of what is longer than a millimetre; of what is shorter a millionth of one.
    expect(asked).toEqual([expect.closeTo(100 - 1e-4, 9), expect.closeTo(200 + 2e-4, 9)]);
    asked.length = 0;
    ends([[0.01, 0.5]], [], [[0.01, 0.5]], none, why);
    expect(asked).toEqual([expect.closeTo(0.01 - 1e-6, 12), expect.closeTo(0.5 + 1e-6, 12)]);
    expect(ends([[100, 200]], [], stands, none, () => undefined)[0]?.says).toBe('there is no such rig: ');
  });

  it('is of a limit on covering the circle that ends beyond', () => {
    const covered = limit('subjectCovered', 'goodFieldMm', [40, 120]);
    const asked: number[] = [];
    const read = circles((x) => (x < 100 ? [20, 30, 40] : [30, 20, 40]), asked);
    expect(ends([[40, 120]], [covered, length], undefined, read)).toEqual([
      { side: 'below', at: 40, limits: ['subjectCovered'], circle: 'corrected', says: 'the corrected field runs out' },
      {
        side: 'above',
        at: 120,
        limits: ['subjectCovered', 'length'],
        circle: 'lit',
        says: 'the light runs out and the rig grows too long',
      },
    ]);
    expect(asked).toEqual([expect.closeTo(40 - 4e-5, 9), expect.closeTo(120 + 1.2e-4, 9)]);
    // Of any other no circle is asked for, and none told.
    expect(ends([[0, 120]], [length], undefined, read)[0]).not.toHaveProperty('circle');
    expect(asked).toHaveLength(2);
    const lost = Gap.unknown('/objective/fieldNumberMm');
    const [blind] = ends(
      [[40, 300]],
      [covered],
      undefined,
      circles(() => [lost, lost, lost]),
    );
    expect(blind).toEqual({ side: 'below', at: 40, limits: ['subjectCovered'], says: 'the subject is not covered to its corners' });
    expect(blind).not.toHaveProperty('circle');
  });
});

it('tells the smallest of the circles that are known', () => {
  const lost = Gap.unknown('/objective/fieldNumberMm');
  expect(
    smallestCircle(
      circles(() => [30, 20, 25]),
      1,
    ),
  ).toBe('lit');
  expect(
    smallestCircle(
      circles(() => [30, 40, 25]),
      1,
    ),
  ).toBe('sharp');
  expect(
    smallestCircle(
      circles(() => [20, 40, 25]),
      1,
    ),
  ).toBe('corrected');
  expect(
    smallestCircle(
      circles(() => [lost, 40, Number.POSITIVE_INFINITY]),
      1,
    ),
  ).toBe('lit');
  expect(
    smallestCircle(
      circles(() => [lost, lost, lost]),
      1,
    ),
  ).toBeUndefined();
});

describe('where a window lies, in words', () => {
  const of = (...spans: Span[]): string => where(spans, { from: 0, to: 300 });
  it('is told from below and from above, or everywhere', () => {
    expect(of([0, 300])).toBe('everywhere');
    expect(of([0, 240])).toBe('up to 240 mm');
    expect(of([173, 300])).toBe('from 173 mm up');
    expect(of([173, 240])).toBe('between 173 and 240 mm');
    expect(of([0, 20], [173, 240], [280, 300])).toBe('up to 20 mm or between 173 and 240 mm or from 280 mm up');
  });
  it('is rounded to the safe side, where that leaves something', () => {
    expect(of([173.2, 240.9])).toBe('between 174 and 240 mm');
    expect(of([173.2, 173.9])).toBe('between 173.2 and 173.9 mm');
    expect(of([173.2, 174.9])).toBe('of 174 mm');
    expect(of([173.1234567, 173.1234567])).toBe('of 173.123 mm');
    expect(of([0.1234, 0.9876])).toBe('between 0.124 and 0.987 mm');
    expect(where([[0, 0.5]], { from: -10, to: 300 })).toBe('between 0 and 0.5 mm');
    expect(where([[0, 0]], { from: -10, to: 300 })).toBe('of 0 mm');
  });
});
