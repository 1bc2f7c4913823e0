import { describe, expect, it } from 'vitest';
import { figure, Gap, leaf, type Node, openFigure, step } from '../../../core/figure.ts';
import { graph } from '../../../core/graph.ts';
import type { Input } from '../../../core/pairing/input.ts';
import { mapping } from '../../../core/pairing/leaves.ts';
import { workingOf } from '../../../core/pairing/working.ts';
import { input } from './small.ts';

const length = leaf('length', 'a', 'mm', 'a length');
const factor = leaf('factor', 'k', '1', 'a factor');
const given = leaf('given', 'g', 'mm', 'a length given outright');
const kind = leaf<string>('kind', '', '', 'a kind');

const twice = step({
  id: 'twice',
  symbol: 'b',
  unit: 'mm',
  words: 'twice the length',
  needs: [length],
  of: (a) => 2 * a,
  as: (a) => `2 × ${a}`,
});
const hidden = step({ id: 'hidden', needs: [length, kind], of: (a) => [a] });
const bareStep = step({
  id: 'bare',
  symbol: 'c',
  unit: '',
  words: 'worked out elsewhere',
  needs: [hidden],
  of: ([a]: number[]) => a as number,
});
const text = { unit: 'mm', words: 'the whole', source: 'a book' } as const;

function worked(node: ReturnType<typeof figure>, values: readonly (readonly [Node, unknown])[], inputs: readonly Input[] = []) {
  const all = graph([node]);
  return { graph: all, sheet: all.fill(new Map(values)), inputs };
}

describe('the working of a figure', () => {
  const sum = figure({
    id: 'sum',
    symbol: 's',
    ...text,
    needs: [twice, factor, length],
    of: (b, k, a) => b * k + a,
    as: (b, k, a) => `${b} × ${k} + ${a}`,
  });

  it('tells the formula in symbols and in numbers, and down to the inputs what stands in it, each once', () => {
    const inputs = [input(length, 12.34567, [12, 13], { plusMinus: 0.254, origin: 'measured' }), input(factor, 3, [3, 3])];
    expect(
      workingOf(
        worked(
          sum,
          [
            [length, 12.34567],
            [factor, 3],
          ],
          inputs,
        ),
        sum,
      ),
    ).toEqual({
      words: 'the whole',
      source: 'a book',
      // 2 × 12.34567 × 3 + 12.34567 = 86.41969, to five digits.
      symbols: 's = b × k + a',
      numbers: 's = 24.691 × 3 + 12.346 = 86.42',
      terms: [
        {
          symbol: 'b',
          words: 'twice the length',
          text: '24.691 mm',
          working: { symbols: 'b = 2 × a', numbers: 'b = 2 × 12.346 = 24.691' },
        },
        { symbol: 'a', words: 'a length', text: '12.346 ± 0.25 mm', path: '/length', origin: 'measured' },
        { symbol: 'k', words: 'a factor', text: '3', path: '/factor', origin: 'marked' },
      ],
    });
  });

  it('leaves out what is not known, and does not say a number twice', () => {
    const either = openFigure({
      id: 'either',
      symbol: 'e',
      ...text,
      needs: [given, length],
      of: (g, a) => (typeof g === 'number' ? g : a),
      as: (g, a) => g || a,
    });
    const of = (...values: (readonly [Node, unknown])[]) => {
      const { symbols, numbers, terms } = workingOf(worked(either, values), either);
      return { symbols, numbers, terms: terms.map((term) => term.text) };
    };
    expect(of([given, Gap.unknown('/given')], [length, 5])).toEqual({ symbols: 'e = a', numbers: 'e = 5', terms: ['5 mm'] });
    expect(of([given, 7], [length, Gap.unknown('/length')])).toEqual({ symbols: 'e = g', numbers: 'e = 7', terms: ['7 mm'] });
    expect(of([given, Gap.unknown('/given')], [length, Gap.unknown('/length')])).toEqual({ symbols: 'e', numbers: 'e = ', terms: [] });
  });

  it('keeps the symbol of what is no number, and tells a value without limit in words', () => {
    const shown = figure({
      id: 'shown',
      symbol: 'h',
      ...text,
      needs: [kind, bareStep, length],
      of: (_, c) => c,
      as: (k, c, a) => `${k}${c} + ${a}`,
    });
    const all = worked(shown, [
      [kind, 'tube'],
      [length, Number.POSITIVE_INFINITY],
    ]);
    const { symbols, terms } = workingOf(all, shown);
    expect(symbols).toBe('h = c + a');
    expect(terms).toEqual([
      { symbol: 'c', words: 'worked out elsewhere', text: 'without limit', working: { symbols: 'c', numbers: 'c = ∞' } },
      { symbol: 'a', words: 'a length', text: 'without limit mm' },
    ]);
  });

  it('has no line for a number without a symbol', () => {
    const coded = figure({ id: 'coded', symbol: 'h', ...text, needs: [kind, length], of: (_, a) => a, as: (_, a) => a });
    const { terms } = workingOf(
      worked(coded, [
        [kind, 3],
        [length, 5],
      ]),
      coded,
    );
    expect(terms.map(({ symbol }) => symbol)).toEqual(['a']);
  });

  it('leads to no field for what the model cannot know', () => {
    const mapped = figure({ id: 'mapped', symbol: 'm', ...text, needs: [mapping], of: (q) => q, as: (q) => `1 − ${q}` });
    const { terms } = workingOf(worked(mapped, [[mapping, 0]], [input(mapping, 0, [0, 0.75])]), mapped);
    expect(terms).toEqual([{ symbol: 'q', words: mapping.words, text: '0, up to 0.75' }]);
  });
});
