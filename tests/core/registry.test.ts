import { describe, expect, it } from 'vitest';
import {
  DIMENSION,
  evaluate,
  FIGURE_IDS,
  FIGURES,
  type FigureId,
  figureById,
  numberIn,
  pairingSchema,
  RADIUS_IDS,
  report,
  workingOf,
} from '../../core/index.ts';
import { random } from '../support/random.ts';
import { workOut } from './support/evaluator.ts';
import { fullPairing, scaled } from './support/full-pairing.ts';

const TOLD = [...FIGURES, ...RADIUS_IDS.map(figureById)];
const IDS = [...FIGURE_IDS, ...RADIUS_IDS];

/** Every digit, with a real minus sign. */
const whole = (x: number): string => (x === Number.POSITIVE_INFINITY ? '∞' : String(x).replaceAll('-', '−'));

/** `m = 180 / 20 = 9`: what stands between the symbol and the result, and the result. */
function parts(numbers: string): { formula: string; result: string } {
  const [, ...rest] = numbers.split(' = ');
  return { formula: rest[0] ?? '', result: rest.at(-1) ?? '' };
}

/** The number that a term is told with, before its ± and its unit. */
const valueOfTerm = (text: string): number =>
  text.startsWith('without limit') ? Number.POSITIVE_INFINITY : workOut((text.match(/^−?[\d.e+−]+/) ?? [''])[0]);

const same = (a: number, b: number): boolean => a === b || Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b), 1e-9);

const pairings = (seed: number, count: number) => {
  const draw = random(seed);
  return Array.from({ length: count }, () => fullPairing(draw));
};

describe('the working of every figure', () => {
  it('comes to the figure when its numbers are worked out, and so does each step in it', () => {
    const checked = new Map<string, number>();
    for (const pairing of pairings(81_001, 40)) {
      const evaluation = evaluate(pairing);
      for (const figure of TOLD) {
        const value = numberIn(evaluation.answers[figure.id as FigureId]);
        if (value === undefined) continue;
        const working = workingOf(evaluation, figure, whole);
        const told = parts(working.numbers);
        expect(same(workOut(told.formula), value), `${figure.id}: ${working.numbers}, and it is ${value}`).toBe(true);
        expect(same(workOut(told.result), value)).toBe(true);
        checked.set(figure.id, (checked.get(figure.id) ?? 0) + 1);
        for (const term of working.terms) {
          if (!term.working) continue;
          const step = parts(term.working.numbers);
          expect(same(workOut(step.formula), workOut(step.result)), `${term.symbol} in ${figure.id}: ${term.working.numbers}`).toBe(true);
          expect(same(workOut(step.result), valueOfTerm(term.text)), `${term.symbol}: ${term.text}`).toBe(true);
        }
      }
    }
    for (const id of IDS) expect(checked.get(id) ?? 0, id).toBeGreaterThanOrEqual(10);
  });

  it('comes to the figure when its symbols are looked up among its terms', () => {
    let checked = 0;
    for (const pairing of pairings(81_002, 30)) {
      const evaluation = evaluate(pairing);
      for (const figure of TOLD) {
        const value = numberIn(evaluation.answers[figure.id as FigureId]);
        if (value === undefined) continue;
        const working = workingOf(evaluation, figure, whole);
        const table = new Map(working.terms.map((term) => [term.symbol, valueOfTerm(term.text)]));
        const told = parts(working.symbols);
        if (told.formula === '') continue;
        expect(same(workOut(told.formula, table), value), `${figure.id}: ${working.symbols}`).toBe(true);
        checked++;
        for (const term of working.terms) {
          const step = parts(term.working?.symbols ?? '').formula;
          if (step) expect(same(workOut(step, table), valueOfTerm(term.text)), `${figure.id}: ${term.working?.symbols}`).toBe(true);
        }
      }
    }
    expect(checked).toBeGreaterThan(1000);
  });

  it('has one meaning for each symbol', () => {
    const clashes = new Set<string>();
    for (const pairing of pairings(81_003, 25)) {
      const evaluation = evaluate(pairing);
      for (const figure of TOLD) {
        const terms = workingOf(evaluation, figure, whole).terms;
        const symbols = [...terms.map((term) => term.symbol), figure.symbol];
        symbols.forEach((symbol, i) => {
          if (symbols.indexOf(symbol) === i) return;
          // A step that only passes an input on may carry its symbol: then both are told with one value.
          const values = new Set(terms.filter((term) => term.symbol === symbol).map((term) => valueOfTerm(term.text)));
          if (values.size > 1 || symbol === figure.symbol) clashes.add(`${figure.id}: ${symbol}`);
        });
      }
    }
    expect([...clashes]).toEqual([]);
  });
});

describe('every figure', () => {
  it('carries its unit, symbol, words and source, and a symbol of its own', () => {
    for (const figure of TOLD) {
      expect(DIMENSION).toHaveProperty([figure.unit]);
      for (const text of [figure.symbol, figure.words, figure.source]) expect(text.trim().length, figure.id).toBeGreaterThan(0);
      expect(figure.words, figure.id).toMatch(/\w+ \w+/);
    }
    const symbols = TOLD.map((figure) => figure.symbol);
    expect(new Set(symbols).size).toBe(symbols.length);
    expect(new Set(IDS).size).toBe(IDS.length);
  });

  it('is reached in the report and in the working', () => {
    const evaluation = evaluate(fullPairing(random(81_004)));
    const { figures, vignetting } = report(evaluation.pairing);
    expect(Object.keys(figures)).toEqual([...FIGURE_IDS]);
    for (const id of FIGURE_IDS) expect(figures[id].unit).toBe(figureById(id).unit);
    for (const id of RADIUS_IDS) expect(vignetting[id].unit).toBe(figureById(id).unit);
    for (const figure of TOLD) {
      const working = workingOf(evaluation, figure);
      expect(working.symbols.startsWith(figure.symbol)).toBe(true);
      expect(working.numbers.startsWith(`${figure.symbol} = `), working.numbers).toBe(true);
      expect(working.source).toBe(figure.source);
      if (numberIn(evaluation.answers[figure.id as FigureId]) !== undefined) expect(working.terms.length, figure.id).toBeGreaterThan(0);
      for (const term of working.terms) {
        expect(term.path === undefined, term.symbol).toBe(term.origin === undefined);
        expect(term.words.length, term.symbol).toBeGreaterThan(0);
        if (term.path !== undefined) expect(term.working, term.symbol).toBeUndefined();
      }
    }
  });

  it.each([0.6, 1.7])('follows its dimension when all lengths are %d times as large', (k) => {
    let checked = 0;
    for (const pairing of pairings(81_005, 30)) {
      expect(pairingSchema.safeParse(pairing).success).toBe(true);
      const before = evaluate(pairing).answers;
      const after = evaluate(scaled(pairing, k)).answers;
      for (const figure of TOLD) {
        const [a, b] = [before[figure.id as FigureId], after[figure.id as FigureId]];
        expect(b.state, `${figure.id} ${JSON.stringify(pairing)}`).toBe(a.state);
        if (a.state !== 'known' || b.state !== 'known') continue;
        const factor = k ** DIMENSION[figure.unit];
        expect(Math.abs(b.value - a.value * factor), `${figure.id}: ${a.value} to ${b.value}`).toBeLessThanOrEqual(
          1e-8 * Math.abs(a.value * factor) + 1e-12,
        );
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(1000);
  });
});
