import { type LimitName, type WindowAnswer, where } from '../../core/choosing.ts';
import { amount, listed, type Relay, short } from '../../core/index.ts';
import { inRows, widthOf } from '../plates/rows.ts';

/** One quantity along the drawing: its px, where its figures stand, and how far it reaches. */
export interface Axis {
  x(value: number): number;
  left: number;
  right: number;
  /** Fine marks, and those that carry a figure. */
  fine: number[];
  told: number[];
}

const ROUND = [1, 1.5, 2, 3, 5, 7];
/** Figures and fine marks closer than this run together, px. */
const FIGURES_APART = 38;
const MARKS_APART = 4;

/** Lengths by their ratio, spaces by their length: as people compare them. */
export function axisOf({ vary, from, to }: Pick<WindowAnswer, 'vary' | 'from' | 'to'>, left: number, right: number): Axis {
  const byRatio = vary !== '/infinitySpaceMm' && from > 0;
  const share = byRatio ? (v: number) => Math.log(v / from) / Math.log(to / from) : (v: number) => (v - from) / (to - from);
  const x = (value: number): number => left + (right - left) * share(value);
  const within = (values: number[]): number[] => values.filter((v) => v >= from && v <= to);
  const told = within(
    byRatio ? decades(from, to).flatMap((ten) => ROUND.map((n) => n * ten)) : evenly(from, to, (right - left) / (to - from)),
  );
  const fine = within(byRatio ? decades(from, to).flatMap((ten) => Array.from({ length: 90 }, (_, i) => ((10 + i) * ten) / 10)) : told);
  return { x, left, right, fine: apart(fine, x, MARKS_APART), told: apart(told, x, FIGURES_APART) };
}

const decades = (from: number, to: number): number[] =>
  Array.from({ length: Math.floor(Math.log10(to)) - Math.floor(Math.log10(from)) + 1 }, (_, i) => 10 ** (Math.floor(Math.log10(from)) + i));

const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
function evenly(from: number, to: number, pxPerMm: number): number[] {
  const step = STEPS.find((s) => s * pxPerMm >= FIGURES_APART) ?? 1000;
  return Array.from({ length: Math.floor(to / step) - Math.ceil(from / step) + 1 }, (_, i) => (Math.ceil(from / step) + i) * step);
}

/** Of values in order those that can be told apart. */
function apart(values: readonly number[], x: (value: number) => number, px: number): number[] {
  let last = Number.NEGATIVE_INFINITY;
  return values.filter((value) => {
    const kept = x(value) - last >= px;
    if (kept) last = x(value);
    return kept;
  });
}

/** One end of a bar: of the limit itself, of what was looked at, or where it closes the window for all. */
type BarEnd = 'limit' | 'beyond' | 'closes';

export interface Bar {
  name: LimitName;
  known: boolean;
  spans: { a: number; b: number; low: BarEnd; high: BarEnd }[];
  /** Where it is met, in words. */
  words: string;
}

/** A bar for each limit, in px. */
export function barsOf(answer: WindowAnswer, { x }: Pick<Axis, 'x'>): Bar[] {
  const closes = (name: LimitName, side: 'below' | 'above', at: number): boolean =>
    answer.ends.some((end) => end.side === side && end.limits.includes(name) && near(end.at, at)) ||
    (answer.conflict?.limits.includes(name) === true && answer.conflict.between.some((edge) => near(edge, at)));
  return answer.limits.map(({ name, how, intervals }) => ({
    name,
    known: how !== 'not known',
    spans: intervals.map(([low, high]) => ({
      a: x(low),
      b: x(high),
      low: low === answer.from ? 'beyond' : closes(name, 'below', low) ? 'closes' : 'limit',
      high: high === answer.to ? 'beyond' : closes(name, 'above', high) ? 'closes' : 'limit',
    })),
    words: how === 'not known' ? 'not known' : intervals.length === 0 ? 'nowhere' : where(intervals, answer),
  }));
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a));

/** A value that has a name: a relay that one may have. */
export interface Mark {
  at: number;
  label: string;
  kind: 'own' | 'close-up' | 'lens';
}

/** Close-up lenses by their power in dioptres and camera lenses by their focal length, as they are commonly made (common practice, without source). */
const POWERS = [10, 8, 6, 5, 4, 3, 2];
const LENGTHS = [85, 100, 135, 180, 200, 300, 400];
export const COMMON_RELAYS: readonly Mark[] = [
  ...POWERS.map((power): Mark => ({ at: 1000 / power, label: `+${power}`, kind: 'close-up' })),
  ...LENGTHS.map((length): Mark => ({ at: length, label: String(length), kind: 'lens' })),
];

export interface PlacedMark {
  mark: Mark;
  /** Where its tick stands, and the middle of its words or, of what hangs, their beginning, px. */
  x: number;
  middle: number;
  row: number;
  /** Whether its words begin at its tick instead of standing about it: they may be long. */
  hung: boolean;
  /** Whether it lies in the window. */
  within: boolean;
}

const GAP = 7;

/** The marks inside the axis, their words in as few rows as keep them apart. */
export function placedMarks(marks: readonly Mark[], { x, left, right }: Axis, { from, to, window }: WindowAnswer): PlacedMark[] {
  const inside = marks.filter(({ at }) => at >= from && at <= to).toSorted((a, b) => a.at - b.at);
  const labels = inside.map(({ at, label }) => ({ at: x(at), width: widthOf(label) }));
  const hung = marks.some(({ kind }) => kind === 'own');
  const placed = hung ? hungRows(labels, right) : inRows(labels, left - 14, right + 14, GAP);
  return inside.map((mark, i) => ({
    mark,
    x: x(mark.at),
    ...(placed[i] as { row: number; middle: number }),
    hung,
    within: window.some(([low, high]) => mark.at >= low && mark.at <= high),
  }));
}

/**
 * Words that begin at their ticks, in rows from the right: what hangs lower stands farther left, so that no tick
 * runs through the words of another. Only at the right edge words are pushed back before their ticks.
 */
function hungRows(labels: readonly { at: number; width: number }[], right: number): { row: number; middle: number }[] {
  const done: { row: number; middle: number; at: number }[] = [];
  for (const { at, width } of labels.toReversed()) {
    const middle = Math.min(at + 4, right + 14 - width);
    const free = (row: number): boolean =>
      done.every((other) => other.row < row || middle + width + GAP <= (other.row === row ? other.middle : other.at));
    let row = 0;
    while (!free(row)) row++;
    done.push({ row, middle, at });
  }
  return done.toReversed();
}

/** The user's own relays as marks: those of the list that are marked as own and have a focal length of their own. */
export const ownMarks = (relays: readonly { part: Relay; own?: unknown }[]): Mark[] =>
  relays.flatMap(({ part, own }): Mark[] => {
    const { focalLengthMm: f, powerDioptre: power, name } = part;
    const at = f !== undefined ? amount(f) : power !== undefined ? 1000 / amount(power) : undefined;
    return own === undefined || at === undefined ? [] : [{ at, label: shortName(name ?? `${short(at)} mm`), kind: 'own' }];
  });

const LONGEST_NAME = 26;
const shortName = (name: string): string => (name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1).trimEnd()}…` : name);

/** Which of the relays that are commonly made, and of one's own, the window leaves; nothing where it leaves nothing or all. */
export function lyingWithin(answer: WindowAnswer, own: readonly Mark[]): string {
  if (answer.vary !== '/relay/focalLengthMm' || answer.window.length === 0 || answer.ends.length === 0) return '';
  const within = ({ at }: Mark): boolean => answer.window.some(([low, high]) => at >= low && at <= high);
  const of = (kind: Mark['kind']): string[] => COMMON_RELAYS.filter((mark) => mark.kind === kind && within(mark)).map(({ label }) => label);
  const [powers, lengths, yours] = [of('close-up'), of('lens'), own.filter(within).map(({ label }) => label)];
  const common = [
    ...(powers.length > 0 ? [`close-up lenses of ${listed(powers)} D`] : []),
    ...(lengths.length > 0 ? [`camera lenses of ${listed(lengths)} mm`] : []),
  ];
  const made = common.length > 0 ? `Of what is commonly made ${listed(common)} lie there.` : 'Nothing that is commonly made lies there.';
  return own.length === 0 ? made : `${made} Of your own: ${yours.length > 0 ? listed(yours) : 'none'}.`;
}
