import { ORIGINS, type Origin } from '../parts/quantity.ts';
import { sameJson } from '../same.ts';
import { type Answer, answer } from './answer.ts';
import { type Evaluation, raw } from './evaluate.ts';
import { combined, excursions, samplesOver } from './excursions.ts';
import type { Input } from './input.ts';
import { partsOf } from './moved-rows.ts';
import { type FigureId, type Plan, planFor } from './registry.ts';
import type { Pairing } from './schema.ts';
import { moved, plain, withInputs } from './spread.ts';
import { movedBy, movedTogether } from './together.ts';

/** Works out by how much one pairing's figures exceed another's. */
export type Differing<Id extends FigureId> = (from: Evaluation, of: Evaluation) => Record<Id, Answer>;

/**
 * The figures asked for of `of`, less those of `from`. An input that both share (the same objective, the
 * same space) moves in both at once, so that its ± cancels as far as it acts alike; any other moves alone.
 * Which figures are asked for changes none of them.
 */
export const differenceOf = <Id extends FigureId>(from: Evaluation, of: Evaluation, ids: readonly Id[]): Record<Id, Answer> =>
  differing(ids)(from, of);

/** The same for many pairs: what the figures need is looked up once. */
export function differing<Id extends FigureId>(ids: readonly Id[]): Differing<Id> {
  const plan = planFor(ids);
  // Rows of inputs moved together hang on the order of the inputs: taken in one order, the two ways round are opposites.
  return (from, of) => (inOrder(from, of) ? less(plan, from, of) : opposite(less(plan, of, from))) as Record<Id, Answer>;
}

const inOrder = (a: Evaluation, b: Evaluation): boolean => JSON.stringify(a.pairing) <= JSON.stringify(b.pairing);

type Answers = Partial<Record<FigureId, Answer>>;

const opposite = (answers: Answers): Answers => Object.fromEntries(Object.entries(answers).map(([id, told]) => [id, turned(told)]));

/** A difference the other way round. */
export function turned(told: Answer): Answer {
  if (told.state !== 'known') return told;
  const { low, high, ...rest } = told;
  return {
    ...rest,
    value: 0 - told.value,
    ...(high === undefined ? {} : { low: 0 - high }),
    ...(low === undefined ? {} : { high: 0 - low }),
  };
}

const minus = (a: readonly number[], b: readonly number[]): number[] => a.map((x, j) => x - (b[j] as number));

/** `other` less `first`. */
function less({ graph, told }: Plan, first: Evaluation, other: Evaluation): Answers {
  const valuesOf = (sheet: readonly unknown[]): number[] => told.map((figure) => plain(figure, sheet[graph.place.get(figure) as number]));
  /** Of the whole sheet what these figures need. */
  const part = ({ sheet }: Evaluation): unknown[] => graph.order.map((node) => raw(sheet, node));
  const [firstSheet, otherSheet] = [part(first), part(other)];
  const a = valuesOf(firstSheet);
  const b = valuesOf(otherSheet);
  const base = minus(b, a);
  const every = base.map((_, j) => j);
  const doubtful = pairedInputs(first, other).filter(({ input }) => input.greatest > input.least);
  const at = (sheet: unknown[], input: Input | undefined, still: number[]): ((x: number) => number[]) => {
    if (!input || !graph.place.has(input.leaf)) return () => still;
    const here = moved(graph, sheet, input);
    return (x) => valuesOf(here(x));
  };
  const moves = doubtful.map(({ input, inFirst, inOther }) => {
    const [atFirst, atOther] = [at(firstSheet, inFirst, a), at(otherSheet, inOther, b)];
    const all = (x: number): number[] => minus(atOther(x), atFirst(x));
    const xs = samplesOver(input.least, input.value, input.greatest);
    const rows = xs.map((x) => (x === input.value ? base : all(x)));
    return excursions(
      xs,
      (j, k) => (rows[k] as number[])[j] as number,
      base,
      every,
      (j) => (x) => all(x)[j] as number,
    );
  });
  const allMoved = (sheet: unknown[], side: 'inFirst' | 'inOther', values: readonly number[]): number[] => {
    const own = doubtful.flatMap((pair, i) => (pair[side] ? [{ input: pair[side], value: values[i] as number }] : []));
    const [inputs, to] = [own.map((o) => o.input), own.map((o) => o.value)];
    return valuesOf(withInputs(graph, sheet, inputs, to));
  };
  const inputs = doubtful.map(({ input }) => input);
  const rows = movedTogether(inputs.filter((input) => !input.apart).length).map((row) => {
    const parts = partsOf(inputs, row);
    const values = doubtful.map(({ input }, i) => movedBy(input, parts[i] as number));
    return { parts, figures: minus(allMoved(otherSheet, 'inOther', values), allMoved(firstSheet, 'inFirst', values)) };
  });
  const partsOfRows = rows.map(({ parts }) => parts);
  const [rise, fall] = combined(moves, partsOfRows, (row, j) => rows[row]?.figures[j] as number, base);
  return Object.fromEntries(
    told.map(({ id, unit }, j) => {
      const value = base[j] as number;
      const [ofFirst, ofOther] = [first.answers[id], other.answers[id]];
      const gap = [ofFirst, ofOther].find((x) => x.state === 'unknown' || x.state === 'none');
      if (gap) return [id, gap];
      if (!Number.isFinite(value)) return [id, { state: 'none', unit, why: 'one of the two is without limit' }];
      const [low, high] = [value - (fall[j] as number), value + (rise[j] as number)];
      return [id, answer(value, unit, low, high, () => weaker(ofFirst, ofOther), j)];
    }),
  );
}

/** The weaker origin of two that are known, as they are where their difference is. */
function weaker(...answers: Answer[]): Origin {
  const origins = answers.map((x) => (x as Extract<Answer, { state: 'known' }>).origin);
  return ORIGINS.find((o) => origins.includes(o)) as Origin;
}

/** The inputs of both: once where they are the same thing, else each on its own. */
function pairedInputs(first: Evaluation, other: Evaluation): { input: Input; inFirst: Input | undefined; inOther: Input | undefined }[] {
  const shared = (input: Input): Input | undefined => {
    const twin = other.inputs.find((i) => i.path === input.path && i.leaf === input.leaf);
    return twin && sameThing(first.pairing, other.pairing, input, twin) ? twin : undefined;
  };
  const twins = new Set(first.inputs.map(shared));
  return [
    ...first.inputs.map((input) => ({ input, inFirst: input, inOther: shared(input) })),
    ...other.inputs.filter((input) => !twins.has(input)).map((input) => ({ input, inFirst: undefined, inOther: input })),
  ];
}

/** An input of the same part, or of equal settings; parts are the same when all that is told of them is. What its glass does may hang on more. */
function sameThing(a: Pairing, b: Pairing, input: Input, twin: Input): boolean {
  if (input.least !== twin.least || input.greatest !== twin.greatest) return false;
  const root = input.path.split('/')[1] as keyof Pairing;
  return sameJson(a[root], b[root]);
}
