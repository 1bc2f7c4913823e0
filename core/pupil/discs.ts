/**
 * Discs with their centres on one line, as stops are seen in the pupil, and the area they share.
 *
 * For an object point of slope `t` disc `i` has its centre at `walk[i] · t` and the radius
 * `radius[i]`. The shared region is `|y| <= √(min over i of rᵢ² - (x - cᵢ)²)`. All those parabolas
 * have the same `-x²`, so the lowest of them changes where straight lines `rᵢ² - cᵢ² + 2 cᵢ x` cross:
 * the region's border is the lower envelope of lines, its arcs follow each other from the greatest
 * centre to the smallest, and the area is a sum of arcs in closed form.
 */
export interface Discs {
  readonly walk: readonly number[];
  readonly radius: readonly number[];
}

/** A piece of the border: disc `of`, from `from` to `to` along the line of centres. */
export interface Arc {
  readonly of: number;
  readonly from: number;
  readonly to: number;
}

/** Calls `visit` for each arc of the shared region's upper border, left to right; never where nothing is shared. */
function eachArc({ walk, radius }: Discs, slope: number, visit: (of: number, from: number, to: number) => void): void {
  const count = walk.length;
  let left = Number.NEGATIVE_INFINITY;
  let right = Number.POSITIVE_INFINITY;
  let at = 0;
  for (let i = 0; i < count; i++) {
    const c = (walk[i] as number) * slope;
    const r = radius[i] as number;
    // Of discs that begin together any will do: the lower one's crossing is at the beginning.
    if (c - r > left) {
      left = c - r;
      at = i;
    }
    if (c + r < right) right = c + r;
  }
  let x = left;
  while (x < right) {
    const c = (walk[at] as number) * slope;
    const r = radius[at] as number;
    const q = r * r - c * c;
    let to = right;
    let next = at;
    for (let j = 0; j < count; j++) {
      const cj = (walk[j] as number) * slope;
      if (cj >= c) continue;
      const rj = radius[j] as number;
      const crossing = (rj * rj - cj * cj - q) / (2 * (c - cj));
      if (crossing < to) {
        to = crossing;
        next = j;
      }
    }
    if (to > x) {
      visit(at, x, to);
      x = to;
    }
    at = next;
  }
}

/** The arcs of the shared region's upper border from left to right; none where nothing is shared. */
export function arcs(discs: Discs, slope: number): Arc[] {
  const found: Arc[] = [];
  eachArc(discs, slope, (of, from, to) => found.push({ of, from, to }));
  return found;
}

/** Half the height of a disc at `u` from its centre. */
const halfHeight = (r: number, u: number): number => Math.sqrt(Math.max(0, r * r - u * u));

/**
 * Area to the left of `u` from the centre, less half the disc: `u h + r² asin(u/r)`, `h = √(r² - u²)`.
 * With `atan2(u, h)` for the arcsine an error of `h`, large where discs barely touch, falls out.
 */
const swept = (r: number, u: number): number => {
  const inside = Math.min(r, Math.max(-r, u));
  const h = halfHeight(r, inside);
  return inside * h + r * r * Math.atan2(inside, h);
};

/** The shared area (radius units squared) and its rate with the slope. An empty one is exactly 0. */
export function sharedArea(discs: Discs, slope: number): readonly [area: number, rate: number] {
  let area = 0;
  let rate = 0;
  eachArc(discs, slope, (of, from, to) => {
    const k = discs.walk[of] as number;
    const r = discs.radius[of] as number;
    const c = k * slope;
    area += swept(r, to - c) - swept(r, from - c);
    // Only the border's own motion counts: where two arcs meet they meet at equal height.
    rate += 2 * k * (halfHeight(r, from - c) - halfHeight(r, to - c));
  });
  // Where discs barely touch rounding may leave less than nothing.
  return [Math.max(0, area), rate];
}

/** The area that the shared region has in common with itself shifted by `shift` along the line of centres. */
export function overlapAlong({ walk, radius }: Discs, slope: number, shift: number): number {
  const centres = walk.map((k) => k * slope);
  return sharedArea({ walk: [...centres, ...centres.map((c) => c + shift)], radius: [...radius, ...radius] }, 1)[0];
}

/** The same for a shift at right angles to that line: what of each height is left beyond the shift. */
export function overlapAcross(discs: Discs, slope: number, shift: number): number {
  const half = Math.abs(shift) / 2;
  let area = 0;
  eachArc(discs, slope, (of, from, to) => {
    const r = discs.radius[of] as number;
    const c = (discs.walk[of] as number) * slope;
    const reach = halfHeight(r, half);
    const a = Math.max(from - c, -reach);
    const b = Math.min(to - c, reach);
    if (b > a) area += swept(r, b) - swept(r, a) - 2 * half * (b - a);
  });
  return Math.max(0, area);
}
