/** Small numerical tools: pure, without state, bounded in work. */

export const hypot2 = (a: number, b: number): number => Math.sqrt(a * a + b * b);

/** A function's value and rate somewhere. */
export interface ValueAndRate {
  value: number;
  rate: number;
}

/**
 * The root of a falling function in `[low, high]` by Newton's method, kept inside a bracket that
 * shrinks at each step, so that a bad rate costs a bisection and never an escape.
 *
 * @param at writes value and rate at x into what it is handed; the value must be >= 0 at `low` and <= 0 at `high`.
 * @returns x to a relative 1e-13 of the bracket's scale, after at most 80 steps.
 */
export function fallingRoot(at: (x: number, into: ValueAndRate) => void, low: number, high: number): number {
  const found: ValueAndRate = { value: 0, rate: 0 };
  let a = low;
  let b = high;
  let x = (a + b) / 2;
  const enough = 1e-13 * Math.max(Math.abs(low), Math.abs(high));
  for (let i = 0; i < 80 && b - a > enough; i++) {
    at(x, found);
    const { value, rate } = found;
    if (value === 0) return x;
    if (value > 0) a = x;
    else b = x;
    const step = x - value / rate;
    const next = step > a && step < b ? step : (a + b) / 2;
    if (Math.abs(next - x) <= enough) return next;
    x = next;
  }
  return x;
}

/**
 * Where `margin`, negative at `low` and not at `high`, first stops being negative between them, to a
 * relative 1e-12: false position with the stale end's value halved (the Illinois form), and a bisection
 * where that does not shorten the bracket.
 */
export function crossing(margin: (x: number) => number, low: number, high: number, atLow: number, atHigh: number): number {
  return answered(margin, narrowing(low, high, atLow, atHigh));
}

/** A search that asks for a function's value at one place after another, and is told it. */
export type Asking<T> = Generator<number, T, number>;

/** What a search comes to. */
export function answered<T>(of: (x: number) => number, search: Asking<T>): T {
  let step = search.next();
  while (!step.done) step = search.next(of(step.value));
  return step.value;
}

/** `crossing` as a search, for those who have other things to do between. */
export function* narrowing(low: number, high: number, atLow: number, atHigh: number): Asking<number> {
  let [a, b, fa, fb] = [low, high, atLow, atHigh];
  for (let i = 0; i < 100 && Math.abs(b - a) > 1e-12 * Math.abs(b); i++) {
    const guess = b - (fb * (b - a)) / (fb - fa);
    const x = i % 3 === 2 || !(guess > Math.min(a, b) && guess < Math.max(a, b)) ? (a + b) / 2 : guess;
    const f = yield x;
    if (f >= 0) {
      [b, fb] = [x, f];
      fa /= 2;
    } else {
      [a, fa] = [x, f];
      fb /= 2;
    }
  }
  return b;
}
