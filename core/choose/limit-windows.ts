import { Gap } from '../figure.ts';
import { CIRCLES, type Circle } from '../pairing/image-circles.ts';
import type { FigureId } from '../pairing/registry.ts';
import type { Pairing } from '../pairing/schema.ts';
import { CIRCLE_FIGURE } from '../pairing/verdict.ts';
import { figuresByLaw, type Known, spansByLaw } from './laws.ts';
import { type Limit, type LimitName, marginOf } from './limits.ts';
import { QUANTITIES, type Variable } from './quantities.ts';
import { meeting, places, type Tried } from './scan.ts';
import { common, type Span } from './spans.ts';
import type { Value } from './values.ts';

/** One limit over the quantity that is varied. */
export interface LimitWindow {
  name: LimitName;
  figure: FigureId;
  sense: Limit['sense'];
  limit: number;
  /** Where it is met, in mm; empty where it is nowhere, or not known. */
  intervals: Span[];
  how: 'closed form' | 'roots' | 'not known';
  /** What is missing, as JSON Pointers: then nobody can say where it is met. */
  unknown?: string[];
  /** Circles that are not known, of a limit that asks for covering: they count neither way. */
  without?: Circle[];
  /** Of one that is met nowhere: where it comes nearest of the places tried, and to what. */
  nearest?: { at: number; value: number };
}

/** Figures of the pairing at a place. */
export type Reader = (ids: readonly FigureId[]) => (x: number) => readonly Value[];

const COVERING: ReadonlySet<FigureId> = new Set(['goodFieldMm', 'coveredShare']);
export const asksForCovering = ({ figure }: Pick<Limit, 'figure'>): boolean => COVERING.has(figure);

/** What does not exist meets nothing. */
const marginAt = (limit: Limit, value: Value): number => (typeof value === 'number' ? marginOf(limit, value) : Number.NEGATIVE_INFINITY);

/** The windows of limits within `stands`, where there is such a rig; pauses after each place that is tried. */
export function* limitWindows(
  pairing: Pairing,
  vary: Variable,
  limits: readonly Limit[],
  stands: readonly Span[],
  read: Reader,
): Generator<undefined, LimitWindow[]> {
  const [first, last] = [stands[0], stands.at(-1)];
  if (!first || !last) return limits.map((limit) => ({ ...limit, intervals: [], how: 'roots' as const }));
  const middle = (first[0] + first[1]) / 2;
  const about = known(read, [...limits.map(({ figure }) => figure), ...CIRCLES.map((c) => CIRCLE_FIGURE[c])], middle);
  yield;
  const ids = figuresByLaw(limits, vary, pairing);
  const ends = [first[0], middle, last[1]].map((x) => known(read, ids, x)) as [Known, Known, Known];
  const windows: LimitWindow[] = [];
  const left: Limit[] = [];
  for (const limit of limits) {
    const value = about.values[limit.figure];
    const without = asksForCovering(limit) ? unknownCircles(about) : [];
    const stated = { ...limit, ...(without.length > 0 ? { without } : {}) };
    if (value instanceof Gap && value.state === 'unknown')
      windows.push({ ...limit, intervals: [], how: 'not known', unknown: [...value.missing] });
    else {
      const spans = spansByLaw(limit, vary, pairing, ends);
      if (!spans) left.push(limit);
      windows.push({ ...stated, intervals: spans ? common(spans, stands) : [], how: spans ? 'closed form' : 'roots' });
    }
  }
  yield* byRoots(windows, left, vary, stands, read);
  for (const window of windows) if (window.intervals.length === 0 && window.how === 'closed form') addNearest(window, ends, read);
  return windows;
}

/** Looks for the windows of what has no law, all in one scan. */
function* byRoots(
  windows: readonly LimitWindow[],
  left: readonly Limit[],
  vary: Variable,
  stands: readonly Span[],
  read: Reader,
): Generator<undefined, void> {
  if (left.length === 0) return;
  const all = read(left.map(({ figure }) => figure));
  const best = new Map<Limit, Tried & { value: Value }>();
  for (const stand of stands) {
    const tried: { at: number; values: readonly Value[] }[] = [];
    for (const at of places(stand, QUANTITIES[vary].steps)) {
      tried.push({ at, values: all(at) });
      yield;
    }
    for (const [i, limit] of left.entries()) {
      const one = read([limit.figure]);
      const margins = tried.map(({ at, values }) => ({ at, margin: marginAt(limit, values[i] as Value), value: values[i] as Value }));
      for (const here of margins) if (here.margin > (best.get(limit)?.margin ?? Number.NEGATIVE_INFINITY)) best.set(limit, here);
      const window = windows.find(({ name }) => name === limit.name) as LimitWindow;
      const search = meeting(margins);
      let step = search.next();
      while (!step.done) {
        const margin = marginAt(limit, one(step.value)[0] as Value);
        yield;
        step = search.next(margin);
      }
      window.intervals.push(...step.value);
    }
  }
  for (const [limit, { at, value }] of best) {
    const window = windows.find(({ name }) => name === limit.name) as LimitWindow;
    if (window.intervals.length === 0) window.nearest = { at, value: value as number };
  }
}

/** What follows a law comes nearest at one of its ends. */
function addNearest(window: LimitWindow, ends: readonly Known[], read: Reader): void {
  const one = read([window.figure]);
  const tried = ends.map(({ at }) => ({ at, value: one(at)[0] as Value }));
  const [best] = tried.toSorted((a, b) => marginAt(window, b.value) - marginAt(window, a.value));
  if (best && typeof best.value === 'number') window.nearest = { at: best.at, value: best.value };
}

function known(read: Reader, ids: readonly FigureId[], at: number): Known {
  const values = read(ids)(at);
  return { at, values: Object.fromEntries(ids.map((id, i) => [id, values[i]])) };
}

const unknownCircles = ({ values }: Known): Circle[] =>
  CIRCLES.filter((circle) => {
    const value = values[CIRCLE_FIGURE[circle]];
    return value instanceof Gap && value.state === 'unknown';
  });
