import type { Choice } from '../../core/choosing.ts';
import { BETTER, type FigureId, numberIn, short } from '../../core/index.ts';
import { type Entry, placeOf } from './entries.ts';

/** Choices as points over two figures, and the line through those that none beats in both. All in px. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly onFrontier: boolean;
  /** The entries whose pairings stand here, by their places in the list, once each. */
  readonly places: readonly number[];
}

export interface Label {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: 'start' | 'end';
  readonly places: readonly number[];
}

interface Tick {
  readonly at: number;
  readonly text: string;
}

export interface Axis {
  readonly ticks: readonly Tick[];
  readonly stepped: 'evenly' | 'by ratio';
  at(value: number): number;
}

export interface Scatter {
  readonly x: Axis;
  readonly y: Axis;
  readonly points: readonly Point[];
  readonly labels: readonly Label[];
  /** The border of what those on the line beat: an SVG path, '' with fewer than two of them. */
  readonly line: string;
  /** Choices of which one of the figures is not known, or has no end. */
  readonly left: number;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** From so many times on an axis is stepped by ratio. */
const WIDE = 12;
const PADDING = 0.06;

/** An axis over values, from one end in px to the other. */
export function axisOver(values: readonly number[], from: number, to: number): Axis {
  const [least, greatest] = [Math.min(...values), Math.max(...values)];
  const ratio = least > 0 && greatest / least >= WIDE;
  const along = ratio ? Math.log10 : (x: number): number => x;
  const spread = along(greatest) - along(least) || Math.abs(along(greatest)) * 0.2 || 1;
  const [low, high] = [along(least) - PADDING * spread, along(greatest) + PADDING * spread];
  const at = (value: number): number => from + ((along(value) - low) / (high - low)) * (to - from);
  const inside = (value: number): boolean => along(value) >= low && along(value) <= high;
  const ticks = (ratio ? byRatio(least, greatest) : evenly(low, high)).filter(inside);
  return { at, ticks: ticks.map((value) => ({ at: at(value), text: short(value, 3) })), stepped: ratio ? 'by ratio' : 'evenly' };
}

function evenly(low: number, high: number): number[] {
  const rough = (high - low) / 7;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = ten * ([1, 2, 5, 10].find((n) => n * ten >= rough) ?? 10);
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

function byRatio(least: number, greatest: number): number[] {
  const first = Math.floor(Math.log10(least));
  const decades = Array.from({ length: Math.ceil(Math.log10(greatest)) - first + 1 }, (_, i) => 10 ** (first + i));
  return decades.flatMap((ten) => [1, 2, 5].map((n) => Number((n * ten).toPrecision(6))));
}

/** Points nearer to each other than this are one. */
const SAME_PX = 1.5;

/**
 * @param box the drawing's inside
 * @param beside what is written after the numbers of a dot
 */
export function scatterOf(
  choices: readonly Choice[],
  entries: readonly Entry<Choice>[],
  [xId, yId]: readonly [FigureId, FigureId],
  box: Box,
  beside: (places: readonly number[]) => string = () => '',
): Scatter | undefined {
  const valued = choices.flatMap((choice) => {
    const [x, y] = [numberIn(choice.figures[xId]), numberIn(choice.figures[yId])];
    return x === undefined || y === undefined || !Number.isFinite(x) || !Number.isFinite(y) ? [] : [{ choice, x, y }];
  });
  if (valued.length === 0) return undefined;
  const axes = {
    x: axisOver(
      valued.map(({ x }) => x),
      box.left,
      box.right,
    ),
    y: axisOver(
      valued.map(({ y }) => y),
      box.bottom,
      box.top,
    ),
  };
  const points: { x: number; y: number; onFrontier: boolean; places: number[] }[] = [];
  for (const { choice, ...value } of valued) {
    const [x, y] = [axes.x.at(value.x), axes.y.at(value.y)];
    const place = placeOf(entries, choice);
    const there = points.find((point) => Math.hypot(point.x - x, point.y - y) < SAME_PX);
    if (there) {
      if (!there.places.includes(place)) there.places.push(place);
      there.onFrontier ||= choice.onFrontier === true;
    } else points.push({ x, y, onFrontier: choice.onFrontier === true, places: [place] });
  }
  const ways = { lessX: BETTER[xId] === 'less', lessY: BETTER[yId] === 'less' };
  const corners = cornersOf(
    points.filter(({ onFrontier }) => onFrontier),
    ways,
  );
  return {
    ...axes,
    points,
    labels: labelsOf(points, corners, ways, box, beside),
    line: lineThrough(corners),
    left: choices.length - valued.length,
  };
}

interface Ways {
  readonly lessX: boolean;
  readonly lessY: boolean;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The corners of the stepped line, the best in the first figure first. */
function cornersOf(points: readonly Point[], { lessX, lessY }: Ways): Spot[] {
  // Px of the second figure fall as it rises.
  const sorted = points.toSorted((a, b) => (lessX ? a.x - b.x : b.x - a.x) || (lessY ? b.y - a.y : a.y - b.y));
  const corners: Spot[] = [];
  for (const point of sorted) {
    const last = corners.at(-1);
    // Equal in one of them, or behind in a third figure: no corner of the line.
    if (last && (lessY ? point.y <= last.y : point.y >= last.y)) continue;
    corners.push(point);
  }
  return corners;
}

/** Stepped: beyond it, the way in which both figures are better, nothing of what was found stands. */
function lineThrough([first, ...rest]: readonly Spot[]): string {
  if (!first || rest.length === 0) return '';
  return `M${first.x.toFixed(1)} ${first.y.toFixed(1)}${rest.map(({ x, y }) => `H${x.toFixed(1)}V${y.toFixed(1)}`).join('')}`;
}

const MOST_NUMBERS = 3;
/** Numbers of about this size, px. */
const DIGIT = 7;
const LINE = 14;

/** The numbers beside the points: first those on the line, then what has room; none over a dot, the line or another. */
function labelsOf(
  points: readonly Point[],
  corners: readonly Spot[],
  { lessX, lessY }: Ways,
  box: Box,
  beside: (places: readonly number[]) => string,
): Label[] {
  const set: { left: number; right: number; y: number }[] = [];
  const steps = corners.slice(1).map((to, i) => ({ from: corners[i] as Spot, to }));
  const onLine = (left: number, right: number, y: number): boolean =>
    steps.some(({ from, to }) => {
      const level = Math.abs(from.y - y) < LINE / 2 && left < Math.max(from.x, to.x) && right > Math.min(from.x, to.x);
      const upright = to.x > left - 2 && to.x < right + 2 && y + LINE / 2 > Math.min(from.y, to.y) && y - LINE / 2 < Math.max(from.y, to.y);
      return level || upright;
    });
  const free = (left: number, right: number, y: number): boolean =>
    left >= box.left + 4 &&
    right <= box.right + 36 &&
    y >= box.top - 8 &&
    y <= box.bottom - 6 &&
    set.every((other) => right < other.left || left > other.right || Math.abs(other.y - y) >= LINE) &&
    points.every((p) => p.x < left - 4 || p.x > right + 4 || Math.abs(p.y - y) > LINE / 2) &&
    !onLine(left, right, y);
  const labels: Label[] = [];
  const ordered = points.toSorted(
    (a, b) => Number(b.onFrontier) - Number(a.onFrontier) || (a.places[0] as number) - (b.places[0] as number),
  );
  for (const { x, y, places } of ordered) {
    const numbers = places.toSorted((a, b) => a - b).map((place) => String(place + 1));
    const some = numbers.length > MOST_NUMBERS ? `${numbers.slice(0, MOST_NUMBERS).join(', ')} …` : numbers.join(', ');
    const text = `${some}${beside(places)}`;
    const width = DIGIT * text.length;
    const left = { left: x - 7 - width, anchor: 'end' } as const;
    const right = { left: x + 7, anchor: 'start' } as const;
    // The way in which both are better the paper is empty.
    const [out, inward] = lessX ? [left, right] : [right, left];
    const [away, back] = lessY ? [9, -9] : [-9, 9];
    const spots = [
      { ...out, y: y + away },
      { ...out, y },
      { ...inward, y },
      { ...inward, y: y + back },
      { ...inward, y: y + away },
      { ...out, y: y + back },
    ];
    const spot = spots.find((one) => free(one.left, one.left + width, one.y));
    if (!spot) continue;
    set.push({ left: spot.left, right: spot.left + width, y: spot.y });
    labels.push({ x: spot.anchor === 'start' ? spot.left : spot.left + width, y: spot.y, text, anchor: spot.anchor, places });
  }
  return labels;
}
