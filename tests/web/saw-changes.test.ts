import { expect, it } from 'vitest';
import type { Answer } from '../../core/index.ts';
import { sawOf, type Tightened } from '../../core/table.ts';
import { changesOf } from '../../web/table/saw/tightens.tsx';
import { OPENING } from './support.ts';

/** What taking a finding does to the headline figures: shrunk intervals apart from moved ones, the rest left out. */

const known = (low: number, value: number, high: number): Answer => ({ state: 'known', unit: 'mm', origin: 'marked', low, value, high });
const one = (before: Answer, after: Answer): Tightened => ({ id: 'litCircleMm', before, after });
const count = (before: Answer, after: Answer): readonly [number, number] => {
  const { tighter, moved } = changesOf([one(before, after)]);
  return [tighter.length, moved.length];
};

it('calls tighter only what shrinks, moved what lies elsewhere, and leaves out the unchanged', () => {
  const before = known(30, 40, 50);
  expect(count(before, known(38, 42, 46))).toEqual([1, 0]);
  expect(count(before, known(33, 43, 53))).toEqual([0, 1]);
  expect(count(before, known(28, 40, 52))).toEqual([0, 1]);
  expect(count(before, known(30.1, 40, 49.9))).toEqual([0, 0]);
  expect(count(before, before)).toEqual([0, 0]);
  expect(count(before, { state: 'none', unit: 'mm', why: 'nothing' })).toEqual([0, 0]);
});

it('holds of a ruler on the opening pairing: every row that is said to tighten does', () => {
  const { figures } = sawOf(OPENING, { sightings: [{ kind: 'ruler', acrossMm: { value: 2.31, plusMinus: 0.01 } }] });
  const { tighter, moved } = changesOf(figures);
  expect(tighter.map(({ id }) => id)).toContain('systemMagnification');
  for (const { before, after } of tighter) expect(after.high - after.low).toBeLessThan(0.98 * (before.high - before.low));
  for (const { before, after } of moved) expect(after.high - after.low).toBeGreaterThanOrEqual(0.98 * (before.high - before.low));
  expect(tighter.length + moved.length).toBeLessThan(figures.length);
});
