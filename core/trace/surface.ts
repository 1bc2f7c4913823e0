/** How far a sphere of radius `r` has left its vertex plane at height `h`, mm; signed like `r`, 0 for a plane (`r` infinite). */
export function sag(r: number, h: number): number {
  if (!Number.isFinite(r)) return 0;
  // r - √(r² - h²), written so that a weak surface loses no digits.
  return (h * h) / (r + Math.sign(r) * Math.sqrt(r * r - h * h));
}

/**
 * The height to which two surfaces `thickness` apart leave something between them, mm: where they cross,
 * or where the steeper of them ends. 0 where they pass through each other from the middle on; Infinity
 * between two planes.
 */
export function heightBetween(before: number, after: number, thickness: number): number {
  const ends = Math.min(Math.abs(before), Math.abs(after));
  const left = (h: number): number => thickness + sag(after, h) - sag(before, h);
  if (left(ends) >= 0) return ends;
  // The steeper surface is the steeper one at every height: so what is left only grows or only shrinks.
  let [good, bad] = [0, ends];
  for (let k = 0; k < 60; k++) {
    const middle = (good + bad) / 2;
    if (left(middle) >= 0) good = middle;
    else bad = middle;
  }
  return good;
}
