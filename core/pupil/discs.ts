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

/** The disc with which the border begins: the one whose left end lies farthest right. */
function firstOf({ walk, radius }: Discs, slope: number): number {
  let first = 0;
  let centre = (walk[0] as number) * slope;
  let left = centre - (radius[0] as number);
  for (let i = 1; i < walk.length; i++) {
    const c = (walk[i] as number) * slope;
    const end = c - (radius[i] as number);
    // Of two discs that begin together the one with the smaller centre is the lower from there on.
    if (end < left || (end === left && c >= centre)) continue;
    first = i;
    centre = c;
    left = end;
  }
  return first;
}

/** Where the border ends at the latest: the right end that lies farthest left. */
function rightEnd({ walk, radius }: Discs, slope: number): number {
  let right = Number.POSITIVE_INFINITY;
  for (let i = 0; i < walk.length; i++) right = Math.min(right, (walk[i] as number) * slope + (radius[i] as number));
  return right;
}

/** Where the borders of discs `i` and `j` meet, whose centres differ. */
function meeting({ walk, radius }: Discs, slope: number, i: number, j: number): number {
  const ci = (walk[i] as number) * slope;
  const cj = (walk[j] as number) * slope;
  const ri = radius[i] as number;
  const rj = radius[j] as number;
  return (rj * rj - cj * cj - (ri * ri - ci * ci)) / (2 * (ci - cj));
}

/** The disc whose arc follows that of disc `at`; `at` itself where its arc is the last. */
function nextAfter(discs: Discs, slope: number, at: number, right: number): number {
  const { walk } = discs;
  const c = (walk[at] as number) * slope;
  let to = right;
  let next = at;
  for (let j = 0; j < walk.length; j++) {
    const cj = (walk[j] as number) * slope;
    if (cj >= c) continue;
    const x = meeting(discs, slope, at, j);
    if (x < to || (x === to && next !== at && cj < (walk[next] as number) * slope)) {
      to = x;
      next = j;
    }
  }
  return next;
}

/** Calls `visit` for each arc of the shared region's upper border, left to right; never where nothing is shared. */
function eachArc(discs: Discs, slope: number, visit: (of: number, from: number, to: number) => void): void {
  const right = rightEnd(discs, slope);
  let at = firstOf(discs, slope);
  let x = (discs.walk[at] as number) * slope - (discs.radius[at] as number);
  while (x < right) {
    const next = nextAfter(discs, slope, at, right);
    const to = next === at ? right : meeting(discs, slope, at, next);
    if (to > x) {
      visit(at, x, to);
      x = to;
    }
    if (next === at) break;
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
 * @param u from -r to r, @param h the half height there
 */
const sweptTo = (r: number, u: number, h: number): number => u * h + r * r * Math.atan2(u, h);

const within = (r: number, u: number): number => Math.min(r, Math.max(-r, u));

/** The same for any `u`: beyond the disc there is no more of it. */
const swept = (r: number, u: number): number => sweptTo(r, within(r, u), halfHeight(r, u));

/** What `measure` found last: an area and its rate with the slope. */
export interface Measured {
  area: number;
  rate: number;
}

/** The shared area (radius units squared) and its rate with the slope. An empty one is exactly 0. */
export function sharedArea(discs: Discs, slope: number): readonly [area: number, rate: number] {
  const found: Measured = { area: 0, rate: 0 };
  measure(discs, slope, found);
  return [found.area, found.rate];
}

/** The same written into `into`, for those who ask many times over. */
export function measure(discs: Discs, slope: number, into: Measured): void {
  let area = 0;
  let rate = 0;
  // The loop of `eachArc`, written out: this is what searches and ± spend their time on.
  const right = rightEnd(discs, slope);
  let at = firstOf(discs, slope);
  let x = (discs.walk[at] as number) * slope - (discs.radius[at] as number);
  while (x < right) {
    const next = nextAfter(discs, slope, at, right);
    const to = next === at ? right : meeting(discs, slope, at, next);
    if (to > x) {
      const k = discs.walk[at] as number;
      const r = discs.radius[at] as number;
      const c = k * slope;
      const before = halfHeight(r, x - c);
      const behind = halfHeight(r, to - c);
      area += sweptTo(r, within(r, to - c), behind) - sweptTo(r, within(r, x - c), before);
      // Only the border's own motion counts: where two arcs meet they meet at equal height.
      rate += 2 * k * (before - behind);
      x = to;
    }
    if (next === at) break;
    at = next;
  }
  // Where discs barely touch rounding may leave less than nothing.
  into.area = Math.max(0, area);
  into.rate = rate;
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
    if (r <= half) return;
    const c = (discs.walk[of] as number) * slope;
    const reach = halfHeight(r, half);
    const a = Math.max(from - c, -reach);
    const b = Math.min(to - c, reach);
    if (b > a) area += swept(r, b) - swept(r, a) - 2 * half * (b - a);
  });
  return Math.max(0, area);
}
