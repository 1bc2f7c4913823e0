import { describe, expect, test } from 'vitest';
import { Gap, leaf } from '../../../core/figure.ts';
import { graph } from '../../../core/graph.ts';
import { tableAssumptions } from '../../../core/table/assumptions.ts';
import { numberAt, valueAt } from '../../../core/table/at.ts';

interface Guessed {
  path: string;
  guess?: string | undefined;
  /** What it moves each figure by, up and down; none where it moves none. */
  up?: number[];
  down?: number[];
}
const known = (value: number) => ({ state: 'known', value });
const worked = (inputs: readonly Guessed[], answers: Record<string, object>) => {
  const all = inputs.map(({ path, guess }) => ({ path, guess, value: 7, plusMinus: 2 }));
  return {
    inputs: all,
    answers,
    spread: {
      figures: Object.keys(answers).map((id) => ({ id })),
      moves: inputs.flatMap(({ up, down }, i) => (up ? [{ input: all[i], up, down: down ?? up.map(() => 0) }] : [])),
    },
  } as never;
};
const told = (...args: Parameters<typeof worked>) => tableAssumptions(worked(...args)).map(({ path, matters }) => [path, matters]);

describe('what is assumed', () => {
  const WHY = { guess: 'typical' };
  test('counts by the most that it moves a figure either way, as a share of it', () => {
    expect(told([{ path: '/a', ...WHY, up: [2, 3], down: [4, 0] }], { x: known(40), y: known(-20) })).toEqual([['/a', 0.15]]);
    expect(told([{ path: '/a', ...WHY, up: [2], down: [4] }], { x: known(40) })).toEqual([['/a', 0.1]]);
    expect(tableAssumptions(worked([{ path: '/a', ...WHY, up: [4] }], { x: known(40) }))).toEqual([
      { path: '/a', value: 7, plusMinus: 2, why: 'typical', matters: 0.1 },
    ]);
  });
  test('is the whole of what is nothing or has no number, if it moves it at all, and no more than the whole', () => {
    expect(told([{ path: '/a', ...WHY, up: [0.25] }], { x: known(0) })).toEqual([['/a', 1]]);
    expect(told([{ path: '/a', ...WHY, up: [0.25] }], { x: { state: 'unlimited' } })).toEqual([['/a', 1]]);
    expect(told([{ path: '/a', ...WHY, up: [0], down: [0] }], { x: { state: 'unlimited' } })).toEqual([]);
    expect(told([{ path: '/a', ...WHY, up: [8] }], { x: known(2) })).toEqual([['/a', 1]]);
  });
  test('what moves nothing, or is no guess, is left out', () => {
    const answers = { x: known(40) };
    expect(told([{ path: '/a', ...WHY, up: [1e-10], down: [1e-10] }], answers)).toEqual([]);
    expect(
      told(
        [
          { path: '/a', up: [4] },
          { path: '/b', ...WHY },
        ],
        answers,
      ),
    ).toEqual([]);
    expect(told([{ path: '/a', ...WHY, up: [] }], {})).toEqual([]);
  });
  test('what matters most comes first, and of what matters alike the first by name', () => {
    const inputs = ['/c', '/a', '/b', '/d'].map((path, i) => ({ path, ...WHY, up: [i === 3 ? 8 : 4] }));
    expect(told(inputs, { x: known(40) }).map(([path]) => path)).toEqual(['/d', '/a', '/b', '/c']);
  });
});

test('a number is read where there is one, a word only as a value, a gap not at all', () => {
  const [number, word, gap] = ['n', 'w', 'g'].map((id) => leaf<unknown>(id, id, '', id)) as [never, never, never];
  const all = graph([number, word, gap]);
  const sheet = all.fill(
    new Map<never, unknown>([
      [number, 4],
      [word, 'wave'],
      [gap, Gap.unknown('/x')],
    ]) as never,
  );
  const at = { graph: all, sheet };
  expect([number, word, gap].map((node) => numberAt(at, node))).toEqual([4, undefined, undefined]);
  expect([number, word, gap].map((node) => valueAt(at, node))).toEqual([4, 'wave', undefined]);
});
