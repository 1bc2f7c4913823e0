import { describe, expect, it } from 'vitest';
import type { Evaluation } from '../../../core/index.ts';
import { assumptionsOf } from '../../../core/pairing/assumptions.ts';
import { TOLD } from '../../../core/pairing/registry.ts';
import { told } from './told.ts';

/** Guesses by hand: what each moves, and in what order they are told. */

interface Guessed {
  path: string;
  plusMinus?: number;
  /** By how much it raises a figure, and lowers it. */
  up?: number;
  down?: number;
  /** Which figure, by its place among all. */
  at?: number;
}

const SHARE = TOLD.findIndex(({ id }) => id === 'cornerIllumination');

function assumptions(...all: Guessed[]) {
  const inputs = all.map(({ path, plusMinus = 1 }) => ({ path, value: 5, plusMinus, guess: 'by its class' }));
  const moves = all.map(({ up = 0, down = 0, at = SHARE }, i) => ({
    input: inputs[i],
    up: TOLD.map((_, j) => (j === at ? up : 0)),
    down: TOLD.map((_, j) => (j === at ? down : 0)),
  }));
  const evaluation = { ...told({ cornerIllumination: 0.5 }), inputs, spread: { moves } } as unknown as Evaluation;
  return assumptionsOf(evaluation);
}
const paths = (...all: Guessed[]): string[] => assumptions(...all).map(({ path }) => path);

describe('the assumptions', () => {
  it('are those that move any figure, the first and the last as well', () => {
    expect(paths({ path: '/a', up: 0.1, at: 0 }, { path: '/b', down: 0.1, at: TOLD.length - 1 }, { path: '/c' })).toEqual(['/a', '/b']);
    expect(paths({ path: '/a', up: 1e-9 }, { path: '/b', down: 1e-9 }, { path: '/c', up: 1.1e-9 })).toEqual(['/c']);
  });
  it('come with what matters most first, and else by their paths', () => {
    expect(paths({ path: '/a', up: 0.1 }, { path: '/b', down: 0.3 }, { path: '/c', up: 0.2 })).toEqual(['/b', '/c', '/a']);
    const alike = ['/b', '/d', '/a', '/c'].map((path) => ({ path, up: 0.1 }));
    expect(paths(...alike)).toEqual(['/a', '/b', '/c', '/d']);
    expect(paths(...alike.toReversed())).toEqual(['/a', '/b', '/c', '/d']);
  });
  it('matter no more than all, and without an interval not at all', () => {
    expect(assumptions({ path: '/a', up: 3 }, { path: '/b', plusMinus: 0 })).toEqual([
      { path: '/a', value: 5, plusMinus: 1, why: 'by its class', matters: 1 },
      { path: '/b', value: 5, plusMinus: 0, why: 'by its class', matters: 0 },
    ]);
  });
});
