import { Gap, type Step } from './figure.ts';

/** How the nodes of a graph are worked out from where their needs stand: all that is worked out passes here. */
export interface Call {
  readonly of: (...values: unknown[]) => unknown;
  readonly count: number;
  /** True where `of` wants to see gaps itself. */
  readonly open: boolean;
  readonly same: ((a: unknown, b: unknown) => boolean) | undefined;
}

export const callOf = ({ of, needs, open, same }: Step<unknown>): Call => ({
  of: of as Call['of'],
  count: needs.length,
  open,
  same,
});

/**
 * A node's value by its `Call`, its needs picked from `cells`: those at `places[from]` and the ones after it. Written out
 * by number, which is several times faster than a spread, the most frequent number first.
 */
export function called(
  of: Call['of'],
  count: number,
  open: boolean,
  places: ArrayLike<number>,
  from: number,
  cells: readonly unknown[],
): unknown {
  const a = cells[places[from] as number];
  if (count === 2) {
    const b = cells[places[from + 1] as number];
    return open || !(isGap(a) || isGap(b)) ? of(a, b) : gapAmong(count, places, from, cells);
  }
  if (count === 1) return open || !isGap(a) ? of(a) : a;
  const b = cells[places[from + 1] as number];
  const c = cells[places[from + 2] as number];
  if (count === 3) return open || !(isGap(a) || isGap(b) || isGap(c)) ? of(a, b, c) : gapAmong(count, places, from, cells);
  return calledWithMore(of, count, open, places, from, cells);
}

/** The same for the few that need more. */
function calledWithMore(
  of: Call['of'],
  count: number,
  open: boolean,
  places: ArrayLike<number>,
  from: number,
  cells: readonly unknown[],
): unknown {
  const gap = open ? undefined : gapAmong(count, places, from, cells);
  if (gap) return gap;
  const a = cells[places[from] as number];
  const b = cells[places[from + 1] as number];
  const c = cells[places[from + 2] as number];
  const d = cells[places[from + 3] as number];
  if (count === 4) return of(a, b, c, d);
  const e = cells[places[from + 4] as number];
  if (count === 5) return of(a, b, c, d, e);
  const f = cells[places[from + 5] as number];
  if (count === 6) return of(a, b, c, d, e, f);
  const g = cells[places[from + 6] as number];
  if (count === 7) return of(a, b, c, d, e, f, g);
  const h = cells[places[from + 7] as number];
  return count === 8 ? of(a, b, c, d, e, f, g, h) : of(...picked(count, places, from, cells));
}

/** Numbers, which most values are, are told by their type alone. */
const isGap = (value: unknown): boolean => typeof value !== 'number' && value instanceof Gap;

const picked = (count: number, places: ArrayLike<number>, from: number, cells: readonly unknown[]): unknown[] => {
  const values = new Array<unknown>(count);
  for (let k = 0; k < count; k++) values[k] = cells[places[from + k] as number];
  return values;
};

/** What the gaps among needs come to, undefined where there are none: most often there is but one, and no list is made. */
function gapAmong(count: number, places: ArrayLike<number>, from: number, cells: readonly unknown[]): unknown {
  let only: unknown;
  for (let k = 0; k < count; k++) {
    const value = cells[places[from + k] as number];
    if (!isGap(value)) continue;
    if (only) return Gap.among(picked(count, places, from, cells));
    only = value;
  }
  return only;
}

/** Whether what follows cannot tell `a` from `b`. */
export function alike({ same }: Call, a: unknown, b: unknown): boolean {
  if (typeof a === 'number') return a === b && (a !== 0 || Object.is(a, b));
  if (a === b) return true;
  return same !== undefined && !isGap(a) && !isGap(b) && same(a, b);
}
