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

const zeros = (count: number): number[] => new Array<number>(count).fill(0);

/** What an input does that moves none of the figures. */
export const unmoved = (count: number): Excursions => {
  const nothing = zeros(count);
  return { up: nothing, down: nothing, atLeast: nothing, atGreatest: nothing };
};

/** Where an input is looked at: five samples find the extremes of a figure that is monotone, or falls off on both sides. */
export const samplesOver = (least: number, middle: number, greatest: number): readonly number[] => [
  least,
  (least + middle) / 2,
  middle,
  (middle + greatest) / 2,
  greatest,
];

/**
 * Extremes of many figures at once from the five samples of `samplesOver`; where the best sample is not at an end
 * the peak is looked for between its neighbours.
 *
 * @param rows all figures at each of the samples `xs`
 * @param base their values, which are also those at the middle sample
 * @param reached the places of those figures that the input can move
 * @param alone one figure as a function of the input
 */
export function excursions(
  xs: readonly number[],
  rows: readonly (readonly number[])[],
  base: readonly number[],
  reached: readonly number[],
  alone: (j: number) => (x: number) => number,
): Excursions {
  const [up, down, atLeast, atGreatest] = [zeros(base.length), zeros(base.length), zeros(base.length), zeros(base.length)];
  const gains = [0, 0, 0, 0, 0];
  for (const j of reached) {
    const b = base[j] as number;
    if (Number.isNaN(b)) continue;
    let still = true;
    for (let k = 0; k < 5; k++) {
      const value = (rows[k] as readonly number[])[j] as number;
      if (value === b) gains[k] = 0;
      else {
        still = false;
        gains[k] = difference(value, b);
      }
    }
    if (still) continue;
    atLeast[j] = gains[0] as number;
    atGreatest[j] = gains[4] as number;
    up[j] = extreme(xs, gains, 1, b, j, alone);
    down[j] = extreme(xs, gains, -1, b, j, alone);
  }
  return { up, down, atLeast, atGreatest };
}

/** How far figure `j` goes to one side of `b`, by what it gains at the five samples `xs`. */
function extreme(
  xs: readonly number[],
  gains: readonly number[],
  sign: 1 | -1,
  b: number,
  j: number,
  alone: (j: number) => (x: number) => number,
): number {
  const first = sign * (gains[0] as number);
  const last = sign * (gains[4] as number);
  let best = Math.max(0, first, last);
  let where = 2;
  // Where a sample within is no more than an end (a figure in steps, one that is cut), the end has it: there is no peak to look for.
  for (const k of WITHIN) {
    const gain = sign * (gains[k] as number);
    if (gain > best) {
      best = gain;
      where = k;
    }
  }
  // A peak at the middle itself may lie a little to one side of it.
  const fallsOff = best === 0 && sign * (gains[1] as number) < 0 && sign * (gains[3] as number) < 0;
  if (where === 2 && !fallsOff) return best;
  // What only rounding moves has no peak.
  const swing = Math.max(...gains.map(Math.abs));
  if (swing <= ROUNDING * Math.abs(b)) return best;
  const of = alone(j);
  return Math.max(
    best,
    peak((x) => sign * difference(of(x), b), xs[where - 1] as number, xs[where + 1] as number),
  );
}

const WITHIN = [1, 3] as const;

/** Less than this, relative to a figure, is no move. */
const ROUNDING = 1e-14;

/** The same for an input that moves every figure one way only, from the rows at its two ends. */
export function ends(rows: readonly (readonly number[])[], base: readonly number[], reached: readonly number[]): Excursions {
  const [up, down, atLeast, atGreatest] = [zeros(base.length), zeros(base.length), zeros(base.length), zeros(base.length)];
  const [first, last] = rows as readonly [readonly number[], readonly number[]];
  for (const j of reached) {
    const a = difference(first[j] as number, base[j] as number);
    const z = difference(last[j] as number, base[j] as number);
    atLeast[j] = a;
    atGreatest[j] = z;
    up[j] = Math.max(0, a, z);
    down[j] = Math.max(0, -a, -z);
  }
  return { up, down, atLeast, atGreatest };
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
  const rise = zeros(base.length);
  const fall = zeros(base.length);
  for (const { up, down } of moves)
    for (let j = 0; j < base.length; j++) {
      (rise[j] as number) += (up[j] as number) ** 2;
      (fall[j] as number) += (down[j] as number) ** 2;
    }
  for (let j = 0; j < base.length; j++) {
    rise[j] = Math.sqrt(rise[j] as number);
    fall[j] = Math.sqrt(fall[j] as number);
  }
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
