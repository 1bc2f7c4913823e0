import { expect } from 'vitest';
import type { Figure } from '../../../core/figure.ts';
import { type Answer, DIMENSION, numberIn, workingOf } from '../../../core/index.ts';
import type { WorkedOut } from '../../../core/pairing/working.ts';
import { workOut } from './evaluator.ts';

/** Figures worked out, of whatever registry. */
export interface Sample extends WorkedOut {
  readonly answers: Readonly<Record<string, Answer>>;
}

const answerOf = ({ answers }: Sample, { id }: Figure): Answer => answers[id] as Answer;

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

/** The working of each figure comes to it when its numbers are worked out, and so does each step in it. Returns how often each was. */
export function numbersCome(samples: readonly Sample[], figures: readonly Figure[]): Map<string, number> {
  const checked = new Map<string, number>();
  for (const sample of samples)
    for (const figure of figures) {
      const value = numberIn(answerOf(sample, figure));
      if (value === undefined) continue;
      const working = workingOf(sample, figure, whole);
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
  return checked;
}

/** It comes to it when its symbols are looked up among its terms. Returns how many were. */
export function symbolsCome(samples: readonly Sample[], figures: readonly Figure[]): number {
  let checked = 0;
  for (const sample of samples)
    for (const figure of figures) {
      const value = numberIn(answerOf(sample, figure));
      if (value === undefined) continue;
      const working = workingOf(sample, figure, whole);
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
  return checked;
}

/** Symbols that mean two things in one working. */
export function clashesIn(samples: readonly Sample[], figures: readonly Figure[]): string[] {
  const clashes = new Set<string>();
  for (const sample of samples)
    for (const figure of figures) {
      const { terms } = workingOf(sample, figure, whole);
      const symbols = [...terms.map((term) => term.symbol), figure.symbol];
      symbols.forEach((symbol, i) => {
        if (symbols.indexOf(symbol) === i) return;
        // A step that only passes an input on may carry its symbol: then both are told with one value.
        const values = new Set(terms.filter((term) => term.symbol === symbol).map((term) => valueOfTerm(term.text)));
        if (values.size > 1 || symbol === figure.symbol) clashes.add(`${figure.id}: ${symbol}`);
      });
    }
  return [...clashes];
}

/** Unit, symbol, words and source of each, and a symbol of its own. */
export function toldWhole(figures: readonly Figure[]): void {
  for (const figure of figures) {
    expect(DIMENSION).toHaveProperty([figure.unit]);
    for (const text of [figure.symbol, figure.words, figure.source]) expect(text.trim().length, figure.id).toBeGreaterThan(0);
    expect(figure.words, figure.id).toMatch(/\w+ \w+/);
  }
  const symbols = figures.map((figure) => figure.symbol);
  expect(symbols.filter((symbol, i) => symbols.indexOf(symbol) !== i)).toEqual([]);
  expect(new Set(figures.map(({ id }) => id)).size).toBe(figures.length);
}

/** Each has its working: its symbol, its source, what it rests on and where that comes from. */
export function workingsReach(sample: Sample, figures: readonly Figure[]): void {
  for (const figure of figures) {
    const working = workingOf(sample, figure);
    expect(working.symbols.startsWith(figure.symbol)).toBe(true);
    expect(working.numbers.startsWith(`${figure.symbol} = `), working.numbers).toBe(true);
    expect(working.source).toBe(figure.source);
    if (numberIn(answerOf(sample, figure)) !== undefined) expect(working.terms.length, figure.id).toBeGreaterThan(0);
    for (const term of working.terms) {
      expect(term.path === undefined, term.symbol).toBe(term.origin === undefined);
      expect(term.words.length, term.symbol).toBeGreaterThan(0);
      if (term.path !== undefined) expect(term.working, term.symbol).toBeUndefined();
    }
  }
}

/** Each figure follows its dimension from `before` to `after`, where all lengths are `k` times as large. Returns how many were. */
export function scalesBy(k: number, before: Sample, after: Sample, figures: readonly Figure[], what = ''): number {
  let checked = 0;
  for (const figure of figures) {
    const [a, b] = [answerOf(before, figure), answerOf(after, figure)];
    expect(b.state, `${figure.id} ${what}`).toBe(a.state);
    if (a.state !== 'known' || b.state !== 'known') continue;
    const due = a.value * k ** DIMENSION[figure.unit];
    expect(Math.abs(b.value - due), `${figure.id}: ${a.value} to ${b.value}`).toBeLessThanOrEqual(1e-8 * Math.abs(due) + 1e-12);
    checked++;
  }
  return checked;
}
