import type { Circle } from '../pairing/image-circles.ts';
import { CIRCLES } from '../pairing/image-circles.ts';
import { CIRCLE_FIGURE } from '../pairing/verdict.ts';
import { asksForCovering, type LimitWindow, type Reader } from './limit-windows.ts';
import type { LimitName } from './limits.ts';
import { nearest, type Span } from './spans.ts';
import { ENDS, LIMIT_WORDS } from './words.ts';

/** What closes a window on one side. */
export interface End {
  side: 'below' | 'above';
  at: number;
  /** None where there is no such rig beyond. */
  limits: LimitName[];
  /** Of a limit that asks for covering: the circle that ends there. */
  circle?: Circle;
  /** What happens beyond it, a clause. */
  says: string;
}

/** Two limits that no value meets both. */
export interface Conflict {
  limits: [LimitName, LimitName];
  /** The two ends that come nearest to each other, mm. */
  between: Span;
}

interface Closing {
  readonly from: number;
  readonly to: number;
  readonly window: readonly Span[];
  readonly limits: readonly LimitWindow[];
  readonly stands: readonly Span[];
}

/** As far beyond an end, as a part of it, as makes sure that it is beyond. */
const BEYOND = 1e-6;
const SAME = 1e-9;
const same = (a: number, b: number): boolean => Math.abs(a - b) <= SAME * Math.abs(a);

/** What closes the window below and above all of its spans. */
export function endsOf({ from, to, window, limits, stands }: Closing, read: Reader, whyNot: (x: number) => string | undefined): End[] {
  const [first, last] = [window[0], window.at(-1)];
  if (!first || !last) return [];
  const end = (side: End['side'], at: number, mostOut: number): End[] => {
    if (same(at, mostOut)) return [];
    const i = side === 'below' ? 0 : 1;
    const beyond = at + (side === 'below' ? -1 : 1) * BEYOND * Math.max(1, at);
    if (stands.some((span) => same(span[i], at))) return [{ side, at, limits: [], says: `there is no such rig: ${whyNot(beyond) ?? ''}` }];
    const closing = limits.filter(({ intervals }) => intervals.some((span) => same(span[i], at)));
    const covering = closing.find(asksForCovering);
    const circle = covering && smallestCircle(read, beyond);
    const says = closing.map((limit) => (limit === covering && circle ? ENDS[circle] : LIMIT_WORDS[limit.name].fails));
    return [{ side, at, limits: closing.map(({ name }) => name), ...(circle ? { circle } : {}), says: says.join(' and ') }];
  };
  return [...end('below', first[0], from), ...end('above', last[1], to)];
}

/** The smallest of the circles that are known at a place. */
export function smallestCircle(read: Reader, x: number): Circle | undefined {
  const values = read(CIRCLES.map((c) => CIRCLE_FIGURE[c]))(x);
  const known = CIRCLES.flatMap((circle, i) => (typeof values[i] === 'number' ? [{ circle, d: values[i] }] : []));
  return known.toSorted((a, b) => a.d - b.d)[0]?.circle;
}

/** Of limits that each can be met, but no two of them by one value, the two farthest from each other. */
export function conflictOf(limits: readonly LimitWindow[]): Conflict | undefined {
  let worst: Conflict | undefined;
  for (const [i, a] of limits.entries())
    for (const b of limits.slice(0, i)) {
      const between = nearest(a.intervals, b.intervals);
      if (!between || between[0] >= between[1]) continue;
      const pair: [LimitName, LimitName] = a.intervals.some(([, high]) => high === between[0]) ? [a.name, b.name] : [b.name, a.name];
      if (!worst || between[1] - between[0] > worst.between[1] - worst.between[0]) worst = { limits: pair, between };
    }
  return worst;
}
