import { Gap } from '../figure.ts';
import type { Circle } from '../pairing/image-circles.ts';
import type { FigureId } from '../pairing/registry.ts';
import type { Pairing } from '../pairing/schema.ts';
import { CIRCLE_FIGURE } from '../pairing/verdict.ts';
import { amount } from '../parts/quantity.ts';
import { diagonalOf } from '../parts/sensor.ts';
import type { Limit } from './limits.ts';
import type { Variable } from './quantities.ts';
import { common, type Span } from './spans.ts';
import type { Value } from './values.ts';

/**
 * How a figure follows a quantity, the sensor in the relay's focus: not at all, in proportion, in inverse
 * proportion, or as long as it. Then where a limit is met follows from the figure at one place.
 */
type Law = 'same' | 'grows' | 'falls' | 'shifts';

/** A figure by its law, and what is asked of it. A limit on the smallest or largest of several is one on each. */
interface Part {
  readonly figure: FigureId;
  readonly law: Law;
  readonly sense: Limit['sense'];
  readonly limit: number;
  /** Of a circle: one that is not known does not count. */
  readonly ifKnown?: true;
  /** Of a circle: as large as it is at the subject. */
  readonly atSubject?: true;
}

/** What the laws hang on besides the quantity. */
interface Circumstance {
  /** Whether the stops, as seen in the objective's pupil, are the same at every value. */
  readonly discsStand: boolean;
  readonly ownLength: boolean;
  readonly traced: boolean;
  readonly diagonalMm: number;
}

const OF_FOCAL_LENGTH: Readonly<Partial<Record<FigureId, Law>>> = {
  systemMagnification: 'grows',
  objectFieldWidthMm: 'falls',
  subjectFill: 'grows',
  clearWorkingDistanceMm: 'same',
  // As long as the narrowest stop is the same one: `holdsAtBothEnds` sees whether it is.
  samplingRatio: 'grows',
};
const OF_SPACE: Readonly<Partial<Record<FigureId, Law>>> = {
  systemMagnification: 'same',
  objectFieldWidthMm: 'same',
  subjectFill: 'same',
  clearWorkingDistanceMm: 'same',
  samplingRatio: 'same',
  resolvedDetailUm: 'same',
  totalLengthMm: 'shifts',
};
const OF_OPENING: Readonly<Partial<Record<FigureId, Law>>> = {
  systemMagnification: 'same',
  objectFieldWidthMm: 'same',
  subjectFill: 'same',
  clearWorkingDistanceMm: 'same',
  totalLengthMm: 'same',
};
const LAWS = { '/relay/focalLengthMm': OF_FOCAL_LENGTH, '/infinitySpaceMm': OF_SPACE, '/relay/clearApertureMm': OF_OPENING } as const;

function circumstanceOf({ relay, sensor, stops = [] }: Pairing): Circumstance {
  const behind = stops.some((stop) => stop.fromSensorMm !== undefined) || sensor.throatDiameterMm !== undefined;
  const ownOpenings =
    relay.kind !== 'camera-lens' ||
    (relay.clearApertureMm !== undefined && relay.entrancePupilDiameterMm !== undefined && relay.entrancePupilDepthMm !== undefined);
  return {
    discsStand: !behind && ownOpenings,
    ownLength: relay.rimToSensorMm !== undefined,
    traced: relay.glass !== undefined,
    diagonalMm: diagonalOf(sensor),
  };
}

/** A limit as limits on figures whose law is known; undefined where there is none. */
function partsOf({ figure, sense, limit }: Limit, vary: Variable, pairing: Pairing): Part[] | undefined {
  if (amount(pairing.sensorOffsetMm ?? 0) !== 0) return undefined;
  const law = LAWS[vary][figure];
  if (law) return [{ figure, law, sense, limit }];
  if (vary !== '/relay/focalLengthMm') return undefined;
  const { discsStand, ownLength, traced, diagonalMm } = circumstanceOf(pairing);
  const circles = (laws: Record<Circle, Law>, of: number): Part[] | undefined =>
    discsStand && !traced && sense === 'least'
      ? (Object.keys(laws) as Circle[]).map((c) => ({ figure: CIRCLE_FIGURE[c], law: laws[c], sense, limit: of, ifKnown: true }))
      : undefined;
  switch (figure) {
    case 'totalLengthMm':
      // Without a length of its own a camera lens is as long as its class: that is a guess, and not this simple.
      if (ownLength) return [{ figure, law: 'same', sense, limit }];
      return pairing.relay.kind === 'camera-lens' ? undefined : [{ figure, law: 'shifts', sense, limit }];
    case 'resolvedDetailUm':
      // The coarser of the two is at most so much where both are.
      return sense === 'least'
        ? undefined
        : [
            { figure: 'rayleighUm', law: 'same', sense, limit },
            { figure: 'pixelAtSubjectUm', law: 'falls', sense, limit: limit / 2 },
          ];
    case 'coveredShare':
      // All of the frame is covered where each known circle is as large as its diagonal.
      return limit === 1 ? circles({ corrected: 'grows', lit: 'grows', sharp: 'same' }, diagonalMm) : undefined;
    case 'goodFieldMm':
      return circles({ corrected: 'same', lit: 'same', sharp: 'falls' }, limit)?.map((part) => ({ ...part, atSubject: true }));
    default:
      return undefined;
  }
}

const MAGNIFICATION = 'systemMagnification';

/** Figures that `spansByLaw` wants at three places, for these limits. */
export function figuresByLaw(limits: readonly Limit[], vary: Variable, pairing: Pairing): FigureId[] {
  const ids = new Set<FigureId>();
  for (const { figure, atSubject } of limits.flatMap((limit) => partsOf(limit, vary, pairing) ?? [])) {
    ids.add(figure);
    if (atSubject) ids.add(MAGNIFICATION);
  }
  return [...ids];
}

/** Figures worked out at a place. */
export interface Known {
  readonly at: number;
  readonly values: Readonly<Partial<Record<FigureId, Value>>>;
}

/**
 * Where a limit is met, in closed form; undefined where it has none or what it rests on is not known.
 *
 * @param known both ends of what is looked at, and a place between them: a law is taken from there, and only
 *   where it holds at both ends
 */
export function spansByLaw(limit: Limit, vary: Variable, pairing: Pairing, known: readonly [Known, Known, Known]): Span[] | undefined {
  const parts = partsOf(limit, vary, pairing);
  const [first, middle, last] = known;
  let spans: Span[] = [[first.at, last.at]];
  let counted = 0;
  for (const part of parts ?? []) {
    const values = known.map((at) => partAt(part, at));
    if (part.ifKnown && values.every((v) => v instanceof Gap && v.state === 'unknown')) continue;
    if (!values.every((v) => typeof v === 'number')) return undefined;
    const [low, here, high] = values as [number, number, number];
    const by = follow(part.law, middle.at, here);
    if (!agree(by.value(first.at), low) || !agree(by.value(last.at), high)) return undefined;
    counted++;
    spans = common(spans, by.met(part, first.at, last.at));
  }
  return counted > 0 ? spans : undefined;
}

/** A part's value at a place: of a circle at the subject, over the magnification. */
function partAt({ figure, atSubject }: Part, { values }: Known): Value | undefined {
  const [value, m] = [values[figure], values[MAGNIFICATION]];
  return atSubject && typeof value === 'number' && typeof m === 'number' ? value / m : value;
}

/** Two roads to one number differ by rounding alone. */
const agree = (a: number, b: number): boolean => a === b || Math.abs(a - b) < 1e-9 * Math.abs(a);

interface Following {
  value(x: number): number;
  met(part: Part, low: number, high: number): Span[];
}

/** A figure that is `v` at `x0`, by its law. */
function follow(law: Law, x0: number, v: number): Following {
  // What ends before it begins has nothing in common with any other.
  const from = (edge: number, low: number, high: number): Span[] => [[Math.max(low, edge), high]];
  const upTo = (edge: number, low: number, high: number): Span[] => [[low, Math.min(high, edge)]];
  switch (law) {
    case 'same':
      return { value: () => v, met: ({ sense, limit }, low, high) => ((sense === 'least' ? v >= limit : v <= limit) ? [[low, high]] : []) };
    case 'grows':
      return {
        value: (x) => (v * x) / x0,
        met: ({ sense, limit }, low, high) => (sense === 'least' ? from : upTo)((x0 * limit) / v, low, high),
      };
    case 'falls':
      return {
        value: (x) => (v * x0) / x,
        met: ({ sense, limit }, low, high) => (sense === 'least' ? upTo : from)((x0 * v) / limit, low, high),
      };
    case 'shifts':
      return {
        value: (x) => v + (x - x0),
        met: ({ sense, limit }, low, high) => (sense === 'least' ? from : upTo)(x0 + limit - v, low, high),
      };
  }
}
