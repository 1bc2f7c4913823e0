import { expect, it } from 'vitest';
import { type Figure, figure, leaf } from '../../../core/figure.ts';
import { graph } from '../../../core/graph.ts';
import type { Input } from '../../../core/pairing/input.ts';
import { mapping } from '../../../core/pairing/leaves.ts';
import { originsOf } from '../../../core/pairing/origins.ts';
import { spreadOf } from '../../../core/pairing/spread.ts';
import { input, of3, sheetOf, x, y } from './small.ts';

function origin(figure: Figure, inputs: readonly Input[]): string {
  const { all, sheet } = sheetOf([figure], inputs);
  return originsOf(all, sheet, inputs, spreadOf(all, sheet, inputs, [figure]))(0);
}
const bare = (node: typeof x, value: number, from: Input['origin']) => input(node, value, [value, value], { origin: from });
const doubtful = (node: typeof x, value: number, from: Input['origin'], ends: readonly [number, number] = [value - 1, value + 1]) =>
  input(node, value, ends, { origin: from });

const product = of3((a, b) => a * b);
const first = of3((a) => a);

it('is that of the weakest input which moves the figure', () => {
  expect(origin(product, [bare(x, 10, 'measured'), bare(y, 3, 'measured')])).toBe('measured');
  expect(origin(product, [bare(x, 10, 'measured'), bare(y, 3, 'marked')])).toBe('marked');
  expect(origin(product, [bare(x, 10, 'marked'), bare(y, 3, 'marked')])).toBe('marked');
  expect(origin(product, [bare(x, 10, 'marked'), bare(y, 3, 'assumed')])).toBe('assumed');
  expect(origin(product, [doubtful(x, 10, 'measured'), doubtful(y, 3, 'assumed')])).toBe('assumed');
});

it('does not heed an input that does not move the figure, whatever it is', () => {
  for (const other of [bare, doubtful] as const)
    for (const weak of ['marked', 'assumed'] as const) expect(origin(first, [bare(x, 10, 'measured'), other(y, 3, weak)])).toBe('measured');
  expect(origin(first, [bare(x, 10, 'marked'), bare(y, 3, 'assumed')])).toBe('marked');
});

it('is assumed where a guess only raises the figure, or only lowers it', () => {
  const above = of3((a, b) => Math.max(a, 10) * b);
  const below = of3((a, b) => Math.min(a, 10) * b);
  for (const figure of [above, below]) expect(origin(figure, [doubtful(x, 10, 'assumed'), bare(y, 3, 'marked')])).toBe('assumed');
  expect(origin(above, [doubtful(x, 10, 'marked'), bare(y, 3, 'assumed')])).toBe('assumed');
});

it('looks a little above what an input is, or below where it may be no more', () => {
  const above = of3((a, b) => Math.max(a, 10) * b);
  const below = of3((a, b) => Math.min(a, 10) * b);
  const measured = bare(y, 3, 'measured');
  expect(origin(above, [bare(x, 10, 'marked'), measured])).toBe('marked');
  expect(origin(above, [doubtful(x, 10, 'marked'), measured])).toBe('marked');
  expect(origin(below, [doubtful(x, 10, 'marked', [9, 10]), measured])).toBe('marked');
  expect(origin(above, [doubtful(x, 10, 'marked', [9, 10]), measured])).toBe('measured');
  expect(origin(below, [bare(x, 10, 'marked'), measured])).toBe('measured');
});

it('goes by inputs with an interval as well as without', () => {
  expect(origin(product, [doubtful(x, 10, 'marked'), bare(y, 3, 'measured')])).toBe('marked');
  expect(origin(product, [doubtful(x, -10, 'marked'), doubtful(y, 3, 'measured')])).toBe('marked');
});

it('is never that of what the model cannot know, nor of what the figure cannot rest on', () => {
  const mapped = figure({
    id: 'f',
    unit: '1',
    symbol: 'f',
    words: '',
    source: '',
    as: () => '',
    needs: [x, mapping],
    of: (a, q) => a * (2 - q),
  });
  const strange = leaf('strange', 'q', '', '');
  const inputs = [bare(x, 10, 'measured'), bare(mapping, 0, 'marked'), bare(strange, 0, 'marked'), doubtful(strange, 0, 'assumed')];
  const all = graph([mapped]);
  const sheet = all.fill(new Map(inputs.map(({ leaf: node, value }) => [node, value])));
  expect(originsOf(all, sheet, inputs, spreadOf(all, sheet, inputs, [mapped]))(0)).toBe('measured');
});
