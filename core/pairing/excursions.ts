/** All figures with one input at `x`. */
type At = (x: number) => readonly number[];

/** How far a figure rises and falls while one input moves over its interval; both at least 0. */
export interface Excursions {
  readonly up: readonly number[];
  readonly down: readonly number[];
  /** Signed, at the ends of the interval. */
  readonly atLeast: readonly number[];
  readonly atGreatest: readonly number[];
}

/**
 * How far `a` is from `b`. From Infinity distance is counted in the reciprocal, so that falls from an
 * unlimited value combine too. A figure unknown at one point counts as unmoved there.
 */
function difference(a: number, b: number): number {
  if (a === b) return 0;
  const d = b === Number.POSITIVE_INFINITY ? -1 / a : a - b;
  return Number.isNaN(d) ? 0 : d;
}

/** Where a sample within is no more than an end (a figure in steps, one that is cut), the end has it: there is no peak to look for. */
const ENDS_FIRST = [0, 4, 1, 3] as const;

/**
 * Extremes of many figures at once over `[least, greatest]`, from their values `base` at `middle`. Five
 * samples find them where a figure is monotone; where the best sample is not at an end the peak is
 * looked for between its neighbours.
 */
export function excursions(at: At, least: number, middle: number, greatest: number, base: readonly number[]): Excursions {
  const xs = [least, (least + middle) / 2, middle, (middle + greatest) / 2, greatest] as const;
  const rows = xs.map((x) => (x === middle ? base : at(x)));
  const extreme = (j: number, sign: 1 | -1): number => {
    const b = base[j] as number;
    let best = 0;
    let where = 2;
    for (const k of ENDS_FIRST) {
      const gain = sign * difference((rows[k] as number[])[j] as number, b);
      if (gain > best) [best, where] = [gain, k];
    }
    if (where === 0 || where === 4 || (where === 2 && !fallsOff(j, sign))) return best;
    return Math.max(
      best,
      peak((x) => sign * difference(at(x)[j] as number, b), xs[where - 1] as number, xs[where + 1] as number),
    );
  };
  /** A peak at the middle itself may lie a little to one side of it. */
  const fallsOff = (j: number, sign: 1 | -1): boolean =>
    sign * difference((rows[1] as number[])[j] as number, base[j] as number) < 0 &&
    sign * difference((rows[3] as number[])[j] as number, base[j] as number) < 0;
  const still = (j: number): boolean => Number.isNaN(base[j]) || rows.every((row) => row[j] === base[j]);
  const up = base.map(() => 0);
  const down = base.map(() => 0);
  for (let j = 0; j < base.length; j++) {
    if (still(j)) continue;
    up[j] = extreme(j, 1);
    down[j] = extreme(j, -1);
  }
  const ends = [0, 4].map((k) => base.map((b, j) => difference((rows[k] as number[])[j] as number, b)));
  return { up, down, atLeast: ends[0] as number[], atGreatest: ends[1] as number[] };
}

/** The same for an input that moves every figure one way only: the ends are the extremes. */
export function ends(at: At, least: number, greatest: number, base: readonly number[]): Excursions {
  const from = (row: readonly number[]): number[] => base.map((b, j) => difference(row[j] as number, b));
  const atLeast = from(at(least));
  const atGreatest = from(at(greatest));
  return {
    up: base.map((_, j) => Math.max(0, atLeast[j] as number, atGreatest[j] as number)),
    down: base.map((_, j) => Math.max(0, -(atLeast[j] as number), -(atGreatest[j] as number))),
    atLeast,
    atGreatest,
  };
}

/** The greatest value that eight golden-section steps find between two samples. */
function peak(f: (x: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let a = low;
  let b = high;
  let x1 = b - golden * (b - a);
  let x2 = a + golden * (b - a);
  let y1 = f(x1);
  let y2 = f(x2);
  for (let i = 0; i < 8; i++) {
    if (y1 > y2) {
      [b, x2, y2] = [x2, x1, y1];
      x1 = b - golden * (b - a);
      y1 = f(x1);
    } else {
      [a, x1, y1] = [x1, x2, y2];
      x2 = a + golden * (b - a);
      y2 = f(x2);
    }
  }
  return Math.max(y1, y2);
}

/** All figures with all inputs moved at once, each by a part of its interval (`movedTogether`). */
export interface Row {
  readonly parts: readonly number[];
  readonly figures: readonly number[];
}

/** A row shows something new where this much of its excursion is not the sum of what each input does alone. */
const NOT_A_SUM = 0.1;

/**
 * Rises and falls of many inputs as one: each combined by root of squares, and, where inputs do together
 * what none does alone, no less than what the rows show.
 */
export function combined(
  moves: readonly Excursions[],
  rows: readonly Row[],
  base: readonly number[],
): readonly [rise: number[], fall: number[]] {
  const rise = base.map((_, j) => Math.sqrt(moves.reduce((sum, { up }) => sum + (up[j] as number) ** 2, 0)));
  const fall = base.map((_, j) => Math.sqrt(moves.reduce((sum, { down }) => sum + (down[j] as number) ** 2, 0)));
  for (const { parts, figures } of rows)
    for (let j = 0; j < figures.length; j++) {
      const d = difference(figures[j] as number, base[j] as number);
      if (d <= (rise[j] as number) && -d <= (fall[j] as number)) continue;
      let sum = 0;
      for (let i = 0; i < moves.length; i++) {
        const { atLeast, atGreatest } = moves[i] as Excursions;
        const part = parts[i] as number;
        sum += part > 0 ? part * (atGreatest[j] as number) : -part * (atLeast[j] as number);
      }
      if (Math.abs(d - sum) <= NOT_A_SUM * Math.abs(d)) continue;
      if (d > 0) rise[j] = d;
      else fall[j] = -d;
    }
  return [rise, fall];
}
