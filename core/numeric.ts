/** Small numerical tools: pure, without state, bounded in work. */

export const hypot2 = (a: number, b: number): number => Math.sqrt(a * a + b * b);

/**
 * The root of a falling function in `[low, high]` by Newton's method, kept inside a bracket that
 * shrinks at each step, so that a bad rate costs a bisection and never an escape.
 *
 * @param at value and rate at x; the value must be >= 0 at `low` and <= 0 at `high`.
 * @returns x to a relative 1e-13 of the bracket's scale, after at most 80 steps.
 */
export function fallingRoot(at: (x: number) => readonly [value: number, rate: number], low: number, high: number): number {
  let a = low;
  let b = high;
  let x = (a + b) / 2;
  const enough = 1e-13 * Math.max(Math.abs(low), Math.abs(high));
  for (let i = 0; i < 80 && b - a > enough; i++) {
    const [value, rate] = at(x);
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

/** The border, to a relative 1e-12, between `low` where `holds` is false and `high` where it is true. */
export function border(holds: (x: number) => boolean, low: number, high: number): number {
  let no = low;
  let yes = high;
  for (let i = 0; i < 60 && Math.abs(yes - no) > 1e-12 * Math.abs(yes); i++) {
    const middle = (no + yes) / 2;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}
