import { ORIGINS, type Origin } from '../parts/quantity.ts';
import { sameJson } from '../same.ts';
import { type Answer, answer } from './answer.ts';
import { type Evaluation, evaluate, raw } from './evaluate.ts';
import { combined, excursions } from './excursions.ts';
import type { Glassworks } from './glassworks.ts';
import type { Input } from './inputs.ts';
import { FIGURES, type FigureId, GRAPH } from './registry.ts';
import { type Report, reportOf } from './report.ts';
import type { Pairing } from './schema.ts';
import { moved, partsOf, plain, withInputs } from './spread.ts';
import { movedBy, movedTogether } from './together.ts';

export const MOST_ABREAST = 12;

/** `figures` hold pairing `of` less pairing `from`, by their places in the list that was sent. */
export interface Difference {
  from: number;
  of: number;
  figures: Record<FigureId, Answer>;
}

export interface Comparison {
  reports: Report[];
  differences: Difference[];
}

/**
 * Pairings side by side, and each less the first. An input that both share (the same objective, the
 * same space) moves in both at once, so that its ± cancels as far as it acts alike.
 * @throws PairingError
 */
export function compare(pairings: readonly Pairing[], works?: Glassworks): Comparison {
  const evaluations = pairings.map((pairing) => evaluate(pairing, works));
  const first = evaluations[0] as Evaluation;
  return {
    reports: evaluations.map(reportOf),
    differences: evaluations.slice(1).map((other, i) => ({ from: 0, of: i + 1, figures: differencesOf(first, other) })),
  };
}

const valuesOf = (sheet: unknown[]): number[] => FIGURES.map((figure) => plain(figure, raw(sheet, figure)));
const minus = (a: readonly number[], b: readonly number[]): number[] => a.map((x, j) => x - (b[j] as number));

function differencesOf(first: Evaluation, other: Evaluation): Record<FigureId, Answer> {
  const a = valuesOf(first.sheet);
  const b = valuesOf(other.sheet);
  const base = minus(b, a);
  const doubtful = pairedInputs(first, other).filter(({ input }) => input.greatest > input.least);
  const moves = doubtful.map(({ input, inFirst, inOther }) => {
    const atFirst = inFirst && moved(GRAPH, first.sheet, inFirst);
    const atOther = inOther && moved(GRAPH, other.sheet, inOther);
    const at = (x: number): number[] => minus(atOther ? valuesOf(atOther(x)) : b, atFirst ? valuesOf(atFirst(x)) : a);
    return excursions(at, input.least, input.value, input.greatest, base);
  });
  const allMoved = ({ sheet }: Evaluation, side: 'inFirst' | 'inOther', values: readonly number[]): number[] => {
    const own = doubtful.flatMap((pair, i) => (pair[side] ? [{ input: pair[side], value: values[i] as number }] : []));
    return valuesOf(
      withInputs(
        GRAPH,
        sheet,
        own.map((o) => o.input),
        own.map((o) => o.value),
      ),
    );
  };
  const count = doubtful.filter(({ input }) => !input.apart).length;
  const rows = movedTogether(count).map((row) => {
    const parts = partsOf(
      doubtful.map(({ input }) => input),
      row,
    );
    const values = doubtful.map(({ input }, i) => movedBy(input, parts[i] as number));
    return { parts, figures: minus(allMoved(other, 'inOther', values), allMoved(first, 'inFirst', values)) };
  });
  const [rise, fall] = combined(moves, rows, base);
  return Object.fromEntries(
    FIGURES.map((figure, j) => {
      const value = base[j] as number;
      const gap = [first.answers[figure.id], other.answers[figure.id]].find((x) => x.state === 'unknown' || x.state === 'none');
      if (gap) return [figure.id, gap];
      if (!Number.isFinite(value)) return [figure.id, { state: 'none', unit: figure.unit, why: 'one of the two is without limit' }];
      return [
        figure.id,
        answer(value, figure.unit, value - (fall[j] as number), value + (rise[j] as number), () =>
          weaker(first.answers[figure.id], other.answers[figure.id]),
        ),
      ];
    }),
  ) as Record<FigureId, Answer>;
}

function weaker(...answers: Answer[]): Origin {
  const origins = answers.flatMap((x) => (x.state === 'known' ? [x.origin] : []));
  return ORIGINS.find((o) => origins.includes(o)) ?? 'marked';
}

/** The inputs of both: once where they are the same thing, else each on its own. */
function pairedInputs(first: Evaluation, other: Evaluation): { input: Input; inFirst?: Input; inOther?: Input }[] {
  const shared = (input: Input): Input | undefined => {
    const twin = other.inputs.find((i) => i.path === input.path);
    return twin && sameThing(first.pairing, other.pairing, input, twin) ? twin : undefined;
  };
  const twins = new Set(first.inputs.map(shared));
  return [
    ...first.inputs.map((input) => {
      const twin = shared(input);
      return twin ? { input, inFirst: input, inOther: twin } : { input, inFirst: input };
    }),
    ...other.inputs.filter((input) => !twins.has(input)).map((input) => ({ input, inOther: input })),
  ];
}

/** An input of the same part, or of equal settings; parts are the same when all that is told of them is. */
function sameThing(a: Pairing, b: Pairing, input: Input, twin: Input): boolean {
  if (input.least !== twin.least || input.greatest !== twin.greatest || input.value !== twin.value) return false;
  const root = input.path.split('/')[1] as keyof Pairing;
  return sameJson(a[root], b[root]);
}
