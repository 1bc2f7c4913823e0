import { type LimitAnswer, nameOfLimit, toldIn, type Want } from '../../core/choosing.ts';
import { atLeast, atMost, listed } from '../../core/index.ts';
import { textsFrom, wantFrom } from './blanks.ts';
import type { Miss } from './choose-task.ts';
import { BLANK_OF, BLANKS, OF_THE_SUBJECT } from './clauses.ts';
import type { Entry } from './entries.ts';

type Name = LimitAnswer['name'];

/** One wish that, let out so far, would be given: by the miss that needs the least. */
export interface Looser {
  readonly limit: LimitAnswer;
  readonly entry: Entry<Miss>;
  /** Rounded to where it is surely enough. */
  readonly to: number;
}

/** A wish that nothing gives: what to loosen first. Of each limit that alone stands in the way the least that would do, the least first. */
export function loosers(misses: readonly Entry<Miss>[]): Looser[] {
  const found = new Map<Name, Looser>();
  for (const entry of misses)
    for (const { missing } of entry.members) {
      const [limit, ...more] = missing;
      if (!limit || more.length > 0 || limit.value === undefined || limit.margin === undefined) continue;
      const known = found.get(limit.name);
      if (known && (known.limit.margin as number) >= limit.margin) continue;
      found.set(limit.name, { limit, entry, to: outTo(limit.name, limit.value, limit.value > limit.limit) });
    }
  return [...found.values()].toSorted((a, b) => (b.limit.margin as number) - (a.limit.margin as number));
}

/** Rounded up where more is needed, down where less: a share to a whole per cent. */
function outTo(name: Name, value: number, up: boolean): number {
  if (blankOf(name)?.percent && value >= 0.01) return (up ? Math.ceil(100 * value) : Math.floor(100 * value)) / 100;
  return value === 0 ? 0 : Number((up ? atLeast(value) : atMost(value)).replace('−', '-'));
}

const blankOf = (name: Name) => BLANKS.find(({ path }) => path === BLANK_OF[name]);

/** What stands in the way: two limits that no near miss meets together, or those of which to let out one would do. */
export function excluding(misses: readonly Entry<Miss>[]): string {
  const names = loosers(misses).map(({ limit }) => limit.name);
  if (names.length >= 2) {
    const all = listed(names.map(quoted));
    const missesOne = ({ missing }: Miss): boolean => missing.some(({ name }) => names.includes(name));
    // With a third, what misses that alone gives the other two.
    return names.length === 2 && misses.every(({ members }) => members.every(missesOne))
      ? `${all} stand in each other’s way: none of these gives both with all the rest.`
      : `One of ${all} is to be loosened.`;
  }
  if (names.length === 1) return `Of all that is asked only ${quoted(names[0] as Name)} stands in the way of the nearest.`;
  const nearest = misses[0]?.head.missing ?? [];
  return nearest.length < 2
    ? ''
    : `Even the nearest misses ${nearest.length} at once: ${listed(nearest.map(({ name }) => quoted(name)))}. Each may be the one to loosen.`;
}

const quoted = (name: Name): string => `‘${nameOfLimit(name)}’`;

/** `Ask for 2.4 µm in the place of 2 µm`. */
export const looserSaid = ({ limit, to }: Looser): string => `${toldIn(limit, to)} in the place of ${toldIn(limit, limit.limit)}`;

/** The wish let out so far, where a blank of its own sets the limit. */
export function loosened(want: Want, { limit: { name }, to }: Looser): Want | undefined {
  const blank = blankOf(name);
  if (OF_THE_SUBJECT.has(name) || !blank) return undefined;
  return wantFrom({ ...textsFrom(want), [blank.path]: String(blank.percent ? 100 * to : to) }).want;
}
