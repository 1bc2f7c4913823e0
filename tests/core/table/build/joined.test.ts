import { describe, expect, it } from 'vitest';
import { built } from '../../../../core/table/build/joined.ts';
import type { Box } from '../../../../core/table/build/run.ts';
import { adapterOf, type Piece, tubeOf } from '../../../../core/table/threads/adapter.ts';
import { M25, M42 } from '../../../../core/table/threads/known.ts';
import { stockOf } from '../../../../core/table/threads/stock.ts';
import type { Sex } from '../../../../core/table/threads/thread.ts';

const ring = (a: string, sexA: Sex, b: string, sexB: Sex, more: object = {}): Piece =>
  adapterOf({
    ends: [
      { thread: a, sex: sexA },
      { thread: b, sex: sexB },
    ],
    ...more,
  });
const box = (...rings: Piece[]): Box => ({ rings: stockOf(rings), tubes: [], taken: new Set(), preferOwned: false });
const OBJECTIVE = { end: { thread: M25, sex: 'male' } } as const;
const RELAY = { end: { thread: M42, sex: 'female' } } as const;
const middle = (from: number, to: number) => ({ fromShoulderMm: (from + to) / 2 });

describe('what stands between two ends', () => {
  const [first, second] = [
    ring('M25', 'female', 'M32', 'male', { name: 'first', lengthMm: 4, clearMm: 22 }),
    ring('M32', 'female', 'M42 x 1', 'male', { name: 'second', lengthMm: 6 }),
  ];

  it('is told with what is wanted of it, or with none of that', () => {
    const { run, owned } = built(OBJECTIVE, RELAY, { value: 12, low: 11, high: 14 }, box(first, second), () => undefined);
    expect(run).toStrictEqual({
      state: 'joined',
      parts: 2,
      lengthMm: 10,
      leastMm: 10,
      mostMm: 10,
      wantedMm: 12,
      differsMm: -2,
      wantedLowMm: 11,
      wantedHighMm: 14,
      toBuy: 0,
    });
    expect(owned).toEqual([first, second]);
    expect(built(OBJECTIVE, RELAY, undefined, box(first, second), () => undefined).run).toStrictEqual({
      state: 'joined',
      parts: 2,
      lengthMm: 10,
      leastMm: 10,
      mostMm: 10,
      toBuy: 0,
    });
  });

  it('is as narrow as its narrowest piece, in the middle of that, known to a millimetre where it is taken as usual', () => {
    const at = (...rings: Piece[]) => {
      const { run } = built(OBJECTIVE, RELAY, undefined, box(...rings), middle);
      return run.state === 'joined' ? run.narrowest : undefined;
    };
    expect(at(first, second)).toStrictEqual({ label: 'first', diameterMm: 22, fromShoulderMm: 2 });
    expect(at(first, { ...second, clearMm: 18 })).toStrictEqual({
      label: 'second',
      diameterMm: { value: 18, plusMinus: 1, origin: 'assumed' },
      fromShoulderMm: 7,
    });
    // Of two as narrow the one nearer to the objective.
    expect(at(first, { ...second, clearMm: 22 })?.label).toBe('first');
  });

  it('is as narrow as the narrowest that can be placed', () => {
    const behind = (from: number, to: number) => (from >= 4 ? middle(from, to) : undefined);
    const { run } = built(OBJECTIVE, RELAY, undefined, box(first, second), behind);
    expect(run).toMatchObject({ narrowest: { label: 'second', fromShoulderMm: 7 } });
  });

  it('counts a focusing tube as it is set', () => {
    const turning = { ...tubeOf({ thread: 'M42 x 1', lengthMm: 20, reachMm: 10, clearMm: 20 }), name: 'turning' };
    const { run } = built(OBJECTIVE, RELAY, { value: 36, low: 30, high: 38 }, { ...box(first, second), tubes: [turning] }, middle);
    // 10 mm of rings before it, and 26 mm of its own.
    expect(run).toMatchObject({ lengthMm: 36, leastMm: 30, mostMm: 40, narrowest: { label: 'turning', fromShoulderMm: 23 } });
  });

  it('is unknown with the first end that is', () => {
    const unknown = (path: string) => ({ unknown: `${path} is not told`, path });
    expect(built(unknown('/a'), unknown('/b'), undefined, box(), middle).run).toMatchObject({ state: 'unknown', path: '/a' });
    expect(built(OBJECTIVE, unknown('/b'), undefined, box(), middle).run).toMatchObject({ state: 'unknown', path: '/b' });
  });
});
