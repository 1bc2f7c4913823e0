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

/** Doubles from the start: a list that begins with whole numbers is made anew when the first fraction comes. */
const ZEROS = new Map<number, readonly number[]>();
function zeros(count: number): number[] {
  let known = ZEROS.get(count);
  if (!known) {
    known = Array.from({ length: count }, () => 0.5).fill(0);
    ZEROS.set(count, known);
  }
  return known.slice();
}

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
 * @param at the n-th of the `reached` figures at the k-th of the samples `xs`
 * @param base their values, which are also those at the middle sample
 * @param reached the places of those figures that the input can move
 * @param alone one figure as a function of the input
 */
export function excursions(
  xs: readonly number[],
  at: (n: number, k: number) => number,
  base: readonly number[],
  reached: readonly number[],
  alone: (j: number) => (x: number) => number,
): Excursions {
  const [up, down, atLeast, atGreatest] = [zeros(base.length), zeros(base.length), zeros(base.length), zeros(base.length)];
  const gains = [0.5, 0.5, 0.5, 0.5, 0.5];
  for (let n = 0; n < reached.length; n++) {
    const j = reached[n] as number;
    const b = base[j] as number;
    if (Number.isNaN(b)) continue;
    let still = true;
    for (let k = 0; k < 5; k++) {
      const value = at(n, k);
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
  for (let k = 1; k < 4; k += 2) {
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

/** Less than this, relative to a figure, is no move. */
const ROUNDING = 1e-14;

/** The same for an input that moves every figure one way only, from its two ends. */
export function ends(at: (n: number, k: number) => number, base: readonly number[], reached: readonly number[]): Excursions {
  const [up, down, atLeast, atGreatest] = [zeros(base.length), zeros(base.length), zeros(base.length), zeros(base.length)];
  for (let n = 0; n < reached.length; n++) {
    const j = reached[n] as number;
    const a = difference(at(n, 0), base[j] as number);
    const z = difference(at(n, 1), base[j] as number);
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

/** A row shows something new where this much of its excursion is not the sum of what each input does alone. */
const NOT_A_SUM = 0.1;

/**
 * Rises and falls of many inputs as one: each combined by root of squares, and, where inputs do together
 * what none does alone, no less than what is seen with all moved at once.
 *
 * @param parts rows of inputs moved at once, each by a part of its interval (`movedTogether`)
 * @param at figure `j` on such a row
 */
export function combined(
  moves: readonly Excursions[],
  parts: readonly (readonly number[])[],
  at: (row: number, j: number) => number,
  base: readonly number[],
): readonly [rise: number[], fall: number[]] {
  const rise = zeros(base.length);
  const fall = zeros(base.length);
  for (let i = 0; i < moves.length; i++) {
    const { up, down } = moves[i] as Excursions;
    for (let j = 0; j < base.length; j++) {
      (rise[j] as number) += (up[j] as number) ** 2;
      (fall[j] as number) += (down[j] as number) ** 2;
    }
  }
  for (let j = 0; j < base.length; j++) {
    const b = base[j] as number;
    let up = Math.sqrt(rise[j] as number);
    let down = Math.sqrt(fall[j] as number);
    for (let row = 0; row < parts.length; row++) {
      const d = difference(at(row, j), b);
      if (d <= up && -d <= down) continue;
      if (Math.abs(d - summed(moves, parts[row] as readonly number[], j)) <= NOT_A_SUM * Math.abs(d)) continue;
      if (d > 0) up = d;
      else down = -d;
    }
    rise[j] = up;
    fall[j] = down;
  }
  return [rise, fall];
}

/** What inputs would do to figure `j`, each moved by a part of its interval, if each did what it does alone. */
function summed(moves: readonly Excursions[], parts: readonly number[], j: number): number {
  let sum = 0;
  for (let i = 0; i < moves.length; i++) {
    const { atLeast, atGreatest } = moves[i] as Excursions;
    const part = parts[i] as number;
    sum += part > 0 ? part * (atGreatest[j] as number) : -part * (atLeast[j] as number);
  }
  return sum;
}
