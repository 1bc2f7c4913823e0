import type { Answer } from '../pairing/answer.ts';
import { turned } from '../pairing/difference.ts';
import { BETTER } from './better.ts';
import { COMPARED, type ComparedId } from './compared.ts';

/** How one pairing's figure stands to another's: a tie on paper is level. */
export type Standing = 'more' | 'less' | 'level' | 'not known';

/** Less than this part of the larger of two figures is no difference that anybody would see. */
const ALIKE = 0.01;

/**
 * How `of` stands to `from` in a figure.
 * @param difference the figure of `of` less that of `from`, what they share moved together
 */
export function standingOf(difference: Answer, from: Answer, of: Answer): Standing {
  if (from.state === 'unlimited' && of.state === 'unlimited') return 'level';
  if (difference.state !== 'known' || from.state !== 'known' || of.state !== 'known') return 'not known';
  const { value, low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = difference;
  const open = low <= 0 && high >= 0;
  if (open || Math.abs(value) < ALIKE * Math.max(Math.abs(from.value), Math.abs(of.value))) return 'level';
  return value > 0 ? 'more' : 'less';
}

/** One figure of all pairings; places are those in the list that was compared. */
export interface Row {
  readonly id: ComparedId;
  readonly way: 'more' | 'less' | undefined;
  readonly answers: readonly Answer[];
  /** `differences[from][of]`. */
  readonly differences: readonly (readonly Answer[])[];
  /** `stands[from][of]`: how `of` stands to `from`. */
  readonly stands: readonly (readonly Standing[])[];
  /** The one that is better than every other beyond doubt, and the one that is worse than every other. */
  readonly best: number | undefined;
  readonly worst: number | undefined;
  /** Where two or more share the first place and some are behind: those; and where two or more share the last. */
  readonly first: readonly number[];
  readonly last: readonly number[];
}

/** What each pairing answers, and what a pair of them differs by; a pair is asked for with the lower place first. */
export interface Abreast {
  readonly answers: readonly Readonly<Record<ComparedId, Answer>>[];
  difference(from: number, of: number): Readonly<Record<ComparedId, Answer>>;
}

export const rowsOf = (abreast: Abreast): Row[] => COMPARED.map((id) => rowOf(id, abreast));

function rowOf(id: ComparedId, { answers, difference }: Abreast): Row {
  const told = answers.map((a) => a[id]);
  const differences = told.map((own, from) =>
    told.map((_, of) => (of === from ? nothing(own) : of > from ? difference(from, of)[id] : turned(difference(of, from)[id]))),
  );
  const stands = told.map((a, from) => told.map((b, of) => standingOf(differences[from]?.[of] as Answer, a, b)));
  const way = BETTER[id];
  return { id, way, answers: told, differences, stands, ...placesOf(stands, way) };
}

function placesOf(stands: readonly (readonly Standing[])[], way: Row['way']): Pick<Row, 'best' | 'worst' | 'first' | 'last'> {
  if (!way) return { best: undefined, worst: undefined, first: [], last: [] };
  const behind = way === 'more' ? 'less' : 'more';
  const places = stands.map((_, i) => i);
  const others = (i: number): Standing[] => places.filter((j) => j !== i).map((j) => stands[j]?.[i] as Standing);
  const known = stands.flat().every((s) => s !== 'not known');
  const shared = (so: readonly number[]): readonly number[] => (known && so.length > 1 && so.length < places.length ? so : []);
  return {
    best: places.find((i) => others(i).every((s) => s === way)),
    worst: places.find((i) => others(i).every((s) => s === behind)),
    first: shared(places.filter((i) => !others(i).includes(behind))),
    last: shared(places.filter((i) => !others(i).includes(way))),
  };
}

/** Of a pairing less itself. */
const nothing = (own: Answer): Answer =>
  own.state === 'known' ? { state: 'known', value: 0, unit: own.unit, low: 0, high: 0, origin: own.origin } : own;
