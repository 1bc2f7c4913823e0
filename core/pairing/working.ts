import { type Figure, Gap, type Node, type Step } from '../figure.ts';
import type { Graph, Sheet } from '../graph.ts';
import type { Origin } from '../parts/quantity.ts';
import { short } from '../words.ts';
import type { Input } from './input.ts';
import { mapping } from './leaves.ts';

/** One number that a formula stands on. */
export interface WorkingTerm {
  symbol: string;
  words: string;
  /** As shown, with its unit. */
  text: string;
  /** Set for inputs: where to change it, and where it comes from. */
  path?: string;
  origin?: Origin;
  /** Set for values on the way: their own working. */
  working?: { symbols: string; numbers: string };
}

/** A figure told three times: in words, in symbols, with this pairing's numbers. */
export interface Working {
  words: string;
  symbols: string;
  numbers: string;
  source: string;
  terms: WorkingTerm[];
}

type Show = (value: number) => string;
const DIGITS = 5;
const shown: Show = (x) => (Number.isFinite(x) ? short(x, DIGITS) : '∞');

/** What a working is told from: a pairing's or the table's figures, worked out. */
export interface WorkedOut {
  readonly graph: Graph;
  readonly sheet: Sheet;
  readonly inputs: readonly Input[];
}

const raw = ({ graph, sheet }: WorkedOut, node: Node): unknown => sheet[graph.place.get(node) as number];

/** The working of one figure; `show` writes a number (the tests pass all its digits). */
export function workingOf(evaluation: WorkedOut, figure: Figure, show: Show = shown): Working {
  const texts = formula(evaluation, figure, show);
  return { words: figure.words, source: figure.source, ...texts, terms: termsOf(evaluation, figure, show) };
}

const numeric = (node: Node): boolean => node.symbol !== '';

function formula(worked: WorkedOut, node: Step<unknown>, show: Show): { symbols: string; numbers: string } {
  const values = node.needs.map((need) => raw(worked, need));
  const symbols = node.as(...node.needs.map((need, i) => (values[i] instanceof Gap ? '' : need.symbol)));
  const right = node.as(...values.map((v) => (typeof v === 'number' ? show(v) : '')));
  const value = raw(worked, node);
  const result = typeof value === 'number' ? show(value) : '';
  return {
    symbols: symbols ? `${node.symbol} = ${symbols}` : node.symbol,
    numbers: right && right !== result ? `${node.symbol} = ${right} = ${result}` : `${node.symbol} = ${result}`,
  };
}

/** What stands in the formula, and once more what stands in that, down to the inputs; each once. */
function termsOf(evaluation: WorkedOut, figure: Figure, show: Show): WorkingTerm[] {
  const seen = new Set<Node>();
  const terms: WorkingTerm[] = [];
  const visit = (node: Node): void => {
    if (node.kind === 'leaf') return;
    for (const need of node.needs) {
      if (seen.has(need)) continue;
      seen.add(need);
      const value = raw(evaluation, need);
      if (numeric(need) && typeof value === 'number') terms.push(term(evaluation, need, value, show));
      visit(need);
    }
  };
  visit(figure);
  return terms;
}

function term(evaluation: WorkedOut, node: Node, value: number, show: Show): WorkingTerm {
  const input = evaluation.inputs.find((i) => i.leaf === node);
  return {
    symbol: node.symbol,
    words: node.words,
    text: told(node, input, value, show),
    // What the model cannot know has no field to lead to, and nobody marked it.
    ...(input && input.leaf !== mapping ? { path: input.path, origin: input.origin } : {}),
    ...(node.kind === 'leaf' ? {} : { working: formula(evaluation, node, show) }),
  };
}

function told(node: Node, input: Input | undefined, value: number, show: Show): string {
  if (input?.leaf === mapping) return `${show(value)}, up to ${show(input.greatest)}`;
  const unit = node.unit && node.unit !== '1' ? ` ${node.unit}` : '';
  const spread = input && input.plusMinus > 0 ? ` ± ${short(input.plusMinus, 2)}` : '';
  return `${Number.isFinite(value) ? show(value) : 'without limit'}${spread}${unit}`;
}
