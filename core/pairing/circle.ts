/**
 * Area that a centred circle of radius `r` shares with a centred rectangle `w` × `h`, exact.
 *
 * In one quarter: under the arc up to the corner of the rectangle. With `a = w/2`, `b = h/2` the arc
 * is above `b` until `x = √(r² - b²)`, then it falls to `x = min(r, a)`.
 */
export function circleInRectangle(r: number, w: number, h: number): number {
  if (r <= 0) return 0;
  const a = w / 2;
  const b = h / 2;
  if (r * r >= a * a + b * b) return w * h;
  const flat = r > b ? Math.sqrt(r * r - b * b) : 0;
  const end = Math.min(r, a);
  const under = (x: number): number => (x * Math.sqrt(r * r - x * x) + r * r * Math.asin(x / r)) / 2;
  return 4 * (flat * b + under(end) - under(flat));
}
