import { gaussLegendre, type Rule } from '../gauss.ts';
import type { Discs } from '../pupil/discs.ts';

/**
 * The part of the pupil that a field point's beam fills: what discs with centres on the field axis share,
 * as chords along that axis. `x` is across the field axis, `y` along it, mm.
 */
export interface Region {
  /** Lower and upper end of the chord at `x`; the upper below the lower where there is none. */
  low(x: number): number;
  high(x: number): number;
  /** Chords grow toward x = 0; none is left beyond this. */
  readonly halfWidth: number;
}

/** What the discs share at a field slope; undefined where they share nothing. */
export function regionOf({ walk, radius }: Discs, slope: number): Region | undefined {
  const high = (x: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < walk.length; i++) {
      const r = radius[i] as number;
      const end = (walk[i] as number) * slope + Math.sqrt(Math.max(0, r * r - x * x));
      if (end < least) least = end;
    }
    return least;
  };
  const low = (x: number): number => {
    let greatest = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < walk.length; i++) {
      const r = radius[i] as number;
      const end = (walk[i] as number) * slope - Math.sqrt(Math.max(0, r * r - x * x));
      if (end > greatest) greatest = end;
    }
    return greatest;
  };
  const narrowest = Math.min(...radius);
  const halfWidth = widthAt({ low, high }, 0, narrowest);
  return halfWidth > 0 ? { low, high, halfWidth } : undefined;
}

/** The greatest |x| whose chord is at least `length` long: chords shrink evenly, so a bisection finds it; 0 where none is. */
function widthAt({ low, high }: Pick<Region, 'low' | 'high'>, length: number, most: number): number {
  const left = (x: number): number => high(x) - low(x) - length;
  if (left(most) >= 0) return most;
  let [good, bad] = [0, most];
  for (let i = 0; i < 40; i++) {
    const middle = (good + bad) / 2;
    if (left(middle) > 0) good = middle;
    else bad = middle;
  }
  return good;
}

/** Which way a pattern's lines are crossed: along the field axis (tangential) or across it (sagittal). */
export type Direction = 'sagittal' | 'tangential';

/** Midpoints of the pairs of pupil points `shear` apart that both lie in the region, with the area each stands for. */
export interface Overlap {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** mm²; both sides of the field axis counted, of which only x >= 0 is listed. */
  readonly area: Float64Array;
}

/** Nodes along and across an overlap that can be had: the fewest keep its area to 1e-4, and a contrast of 0.8 to 1e-3. */
export const NODES = [7, 11, 15] as const;
export type Nodes = (typeof NODES)[number];

const RULES: ReadonlyMap<Nodes, { readonly angles: Rule; readonly along: Rule }> = new Map(
  NODES.map((nodes) => [nodes, { angles: gaussLegendre(nodes, 0, Math.PI / 2), along: gaussLegendre(nodes, -1, 1) }]),
);

/**
 * Gauss's rule along each chord and, in the angle whose sine is x over the half-width, across: chords end
 * like a root, and so does the sine.
 */
export function overlapOf(region: Region, shear: number, direction: Direction, nodes: Nodes = NODES[0]): Overlap {
  const { angles, along: chord } = RULES.get(nodes) as { angles: Rule; along: Rule };
  const along = direction === 'tangential' ? shear : 0;
  const across = direction === 'sagittal' ? shear / 2 : 0;
  const half = direction === 'tangential' ? widthAt(region, shear, region.halfWidth) : region.halfWidth - across;
  const count = half > 0 ? nodes * nodes : 0;
  const [x, y, area] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < nodes; i++) {
    const angle = angles.nodes[i] as number;
    const at = half * Math.sin(angle);
    // Of two chords as far apart as the shear the one farther from the axis is the shorter at both ends.
    const low = region.low(at + across) + along / 2;
    const high = region.high(at + across) - along / 2;
    const middle = (low + high) / 2;
    const reach = Math.max(0, high - low) / 2;
    const width = 2 * half * Math.cos(angle) * (angles.weights[i] as number) * reach;
    for (let j = 0; j < nodes; j++) {
      const k = i * nodes + j;
      x[k] = at;
      y[k] = middle + reach * (chord.nodes[j] as number);
      area[k] = width * (chord.weights[j] as number);
    }
  }
  return { count, x, y, area };
}
