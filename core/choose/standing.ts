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
  /** Where two or more, level with each other, are beyond doubt ahead of all the rest: those; and those behind all the rest. */
  readonly first: readonly number[];
  readonly last: readonly number[];
  /** Whether it is left open who is first, or last: not known of all, or level with some and not with others. */
  readonly firstOpen: boolean;
  readonly lastOpen: boolean;
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

type Places = Pick<Row, 'best' | 'worst' | 'first' | 'last' | 'firstOpen' | 'lastOpen'>;

function placesOf(stands: Row['stands'], way: Row['way']): Places {
  if (!way) return { best: undefined, worst: undefined, first: [], last: [], firstOpen: false, lastOpen: false };
  const [front, back] = [endOf(stands, way), endOf(stands, way === 'more' ? 'less' : 'more')];
  return { best: front.alone, worst: back.alone, first: front.shared, last: back.shared, firstOpen: front.open, lastOpen: back.open };
}

/** Who stands at one end: one alone, several level with each other, or nobody, because it is open or because all are level. */
function endOf(stands: Row['stands'], way: 'more' | 'less'): { alone: number | undefined; shared: readonly number[]; open: boolean } {
  const places = stands.map((_, i) => i);
  const ahead = (i: number, j: number): boolean => stands[j]?.[i] === way;
  const alone = places.find((i) => places.every((j) => j === i || ahead(i, j)));
  if (alone !== undefined) return { alone, shared: [], open: false };
  const known = stands.flat().every((s) => s !== 'not known');
  // Where all is known, those that nobody is ahead of are level with each other. To be level is not handed on, though:
  // one of them may also be level with what another of them is ahead of, and then there is no place to share.
  const foremost = places.filter((i) => !places.some((j) => ahead(j, i)));
  const apart = known && foremost.every((i) => places.every((j) => foremost.includes(j) || ahead(i, j)));
  return { alone, shared: apart && foremost.length < places.length ? foremost : [], open: !apart };
}

/** Of a pairing less itself. */
const nothing = (own: Answer): Answer =>
  own.state === 'known' ? { state: 'known', value: 0, unit: own.unit, low: 0, high: 0, origin: own.origin } : own;
