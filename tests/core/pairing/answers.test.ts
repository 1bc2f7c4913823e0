import { describe, expect, it } from 'vitest';
import { Gap } from '../../../core/figure.ts';
import { type Answer, numberIn } from '../../../core/index.ts';
import { answer, interval } from '../../../core/pairing/answer.ts';
import { assumptionsOf, movedMost } from '../../../core/pairing/assumptions.ts';
import { turned } from '../../../core/pairing/difference.ts';
import type { Evaluation } from '../../../core/pairing/evaluate.ts';
import { TOLD } from '../../../core/pairing/registry.ts';
import { laidOn, subjectSize } from '../../../core/pairing/subject.ts';
import { sweepValues } from '../../../core/pairing/sweep.ts';
import { swingOf } from '../../../core/pairing/swing.ts';
import { told } from './told.ts';

const INF = Number.POSITIVE_INFINITY;
const marked = () => 'marked' as const;

describe('an answer', () => {
  it('never carries what is not finite', () => {
    expect(answer(5, 'mm', 4, 6, marked, 0)).toEqual({ state: 'known', value: 5, unit: 'mm', low: 4, high: 6, origin: 'marked' });
    expect(answer(5, 'mm', -INF, INF, marked, 0)).toEqual({ state: 'known', value: 5, unit: 'mm', origin: 'marked' });
    expect(Object.keys(answer(5, 'mm', -INF, INF, marked, 0))).toEqual(['state', 'value', 'unit', 'origin']);
    expect(answer(INF, 'mm', 4, INF, marked, 0)).toEqual({ state: 'unlimited', unit: 'mm', low: 4 });
    expect(Object.keys(answer(INF, 'mm', INF, INF, marked, 0))).toEqual(['state', 'unit']);
    expect(answer(Gap.unknown('/a'), 'mm', 0, 0, marked, 0)).toEqual({ state: 'unknown', unit: 'mm', missing: ['/a'] });
    expect(answer(Gap.none('gone'), 'mm', 0, 0, marked, 0)).toEqual({ state: 'none', unit: 'mm', why: 'gone' });
  });
  it('is read as a number or a span', () => {
    const all: Answer[] = [
      answer(5, 'mm', 4, 6, marked, 0),
      answer(5, 'mm', -INF, INF, marked, 0),
      answer(INF, 'mm', 4, INF, marked, 0),
      answer(INF, 'mm', INF, INF, marked, 0),
      answer(Gap.unknown('/a'), 'mm', 0, 0, marked, 0),
      answer(Gap.none('gone'), 'mm', 0, 0, marked, 0),
    ];
    expect(all.map(numberIn)).toEqual([5, 5, INF, INF, undefined, undefined]);
    expect(all.map(interval)).toEqual([[4, 5, 6], [-INF, 5, INF], [4, INF, INF], [INF, INF, INF], undefined, undefined]);
  });
  it('is turned round with its low and high, where it has them', () => {
    expect(turned(answer(5, 'mm', 3, 6, marked, 0))).toEqual({
      state: 'known',
      value: -5,
      unit: 'mm',
      low: -6,
      high: -3,
      origin: 'marked',
    });
    expect(Object.keys(turned(answer(5, 'mm', -INF, 6, marked, 0))).sort()).toEqual(['low', 'origin', 'state', 'unit', 'value']);
    expect(Object.keys(turned(answer(5, 'mm', 3, INF, marked, 0))).sort()).toEqual(['high', 'origin', 'state', 'unit', 'value']);
    const none = answer(Gap.none('gone'), 'mm', 0, 0, marked, 0);
    expect(turned(none)).toBe(none);
  });
});

const move = (path: string, moves: Record<string, readonly [up: number, down: number]>) => ({
  input: { path },
  up: TOLD.map(({ id }) => moves[id]?.[0] ?? 0),
  down: TOLD.map(({ id }) => moves[id]?.[1] ?? 0),
});

describe('what a guess moves', () => {
  const here = { coveredShare: 0.5, cornerIllumination: 0.8, systemMagnification: 10, systemNa: 0, shortestCoveringFocalLengthMm: 400 };
  const by = (moves: Record<string, readonly [number, number]>, answers: object = here) =>
    movedMost(told(answers), move('/a', moves) as never)[0];

  it('counts for shares as it is, for lengths and ratios by their value', () => {
    expect(by({ coveredShare: [0.1, 0.2], systemMagnification: [1, 0] })).toEqual({ id: 'coveredShare', by: 0.2 });
    expect(by({ cornerIllumination: [0.05, 0], systemMagnification: [1, 3] })).toEqual({ id: 'systemMagnification', by: 0.3 });
    expect(by({ cornerIllumination: [0.05, 0], shortestCoveringFocalLengthMm: [40, 0] })).toEqual({
      id: 'shortestCoveringFocalLengthMm',
      by: 0.1,
    });
    expect(by({ systemMagnification: [1, 0] }, { ...here, systemMagnification: -10 })).toEqual({ id: 'systemMagnification', by: 0.1 });
  });
  it('is nothing where there is no value, or a value of nothing', () => {
    expect(by({ systemNa: [1, 1] })?.by).toBe(0);
    expect(by({ coveredShare: [0.5, 0.5] }, {})?.by).toBe(0);
  });
  it('is told as an assumption, the weightiest first, then by path; one without an interval last', () => {
    const guess = (path: string, plusMinus = 1) => ({ path, value: 5, plusMinus, guess: 'a guess' });
    const inputs = [
      guess('/bare', 0),
      guess('/z'),
      guess('/b'),
      guess('/a'),
      guess('/still'),
      { ...guess('/sure'), guess: undefined },
      guess('/more'),
      guess('/unseen'),
      guess('/tiny'),
    ];
    const moves = {
      '/z': [0.1, 0],
      '/b': [0, 0.02],
      '/a': [0.02, 0],
      '/still': [0, 0],
      '/sure': [0.4, 0],
      '/more': [1.5, 0],
      '/tiny': [1e-9, 0],
    } as const;
    const spread = {
      moves: Object.entries(moves).map(([path, by]) => ({
        ...move(path, { coveredShare: by }),
        input: inputs.find((i) => i.path === path),
      })),
    };
    const found = assumptionsOf({ ...told(here), inputs, spread } as unknown as Evaluation);
    expect(found.map(({ path, matters }) => [path, matters])).toEqual([
      ['/more', 1],
      ['/z', 0.1],
      ['/a', 0.02],
      ['/b', 0.02],
      ['/bare', 0],
    ]);
    expect(found[0]).toEqual({ path: '/more', value: 5, plusMinus: 1, why: 'a guess', matters: 1 });
  });
  it('has no swing where it moves no headline figure', () => {
    const evaluation = {
      ...told(here),
      spread: { moves: [move('/a', { pupilDiameterMm: [1, 1] }), move('/b', { coveredShare: [1e-9, 0] })] },
    };
    expect(['/a', '/b', '/c'].map((path) => swingOf(evaluation as unknown as Evaluation, path))).toEqual([undefined, undefined, undefined]);
  });
});

describe('a subject on the sensor', () => {
  it('has its missing side from the other', () => {
    expect([subjectSize({ widthMm: 3, heightMm: 2 }, 10), subjectSize({ heightMm: 2 }, 10), subjectSize({ widthMm: 3 }, 10)]).toEqual([
      [30, 20],
      [20, 20],
      [30, 30],
    ]);
    expect([subjectSize({ depthMm: 1 }, 10), subjectSize(undefined, 10)]).toEqual([undefined, undefined]);
  });
  it('lies with its longer side along the longer side', () => {
    expect([laidOn({ widthMm: 36, heightMm: 24 }, [10, 20]), laidOn({ widthMm: 24, heightMm: 36 }, [20, 10])]).toEqual([
      [20, 10],
      [10, 20],
    ]);
    expect(laidOn({ widthMm: 24, heightMm: 24 }, [10, 20])).toEqual([20, 10]);
  });
});

describe('the values of a sweep', () => {
  it('are spread evenly, both ends met exactly; one value is the first', () => {
    expect(sweepValues({ from: 1, to: 4, steps: 4 })).toEqual([1, 2, 3, 4]);
    expect(sweepValues({ from: 1, to: 4, steps: 1 })).toEqual([1]);
    expect(sweepValues({ from: 10, to: 0, steps: 3 })).toEqual([10, 5, 0]);
    expect(sweepValues({ from: 1, to: 4, steps: 2 })).toEqual([1, 4]);
    // -0.4 + 0.5 · 50 / 50 is not 0.1 in binary.
    for (const [from, to] of [
      [-0.4, 0.1],
      [0.3, 0.9],
      [1e-3, 123.456],
    ] as const)
      expect(sweepValues({ from, to, steps: 51 }).at(-1)).toBe(to);
  });
});
