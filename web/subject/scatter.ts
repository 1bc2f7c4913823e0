import type { Choice } from '../../core/choosing.ts';
import { BETTER, type FigureId, numberIn } from '../../core/index.ts';
import { type Entry, placeOf } from './entries.ts';
import { type Axis, axisOver } from './scatter-axis.ts';
import { type Box, type Label, labelsOf, type Point, type Spot, type Ways } from './scatter-labels.ts';

/** Choices as points over two figures, and the line through those that none beats in both. All in px. */
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
