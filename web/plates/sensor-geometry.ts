import {
  amount,
  CIRCLE_FIGURE,
  CIRCLES,
  type Circle,
  type Evaluation,
  interval,
  numberIn,
  type Report,
  relativeIllumination,
  scaleOf,
  slopeAtShare,
  stopsOf,
} from '../../core/index.ts';

export interface DrawnCircle {
  circle: Circle;
  /** Radius in mm; Infinity where it is not limited. */
  radius: number;
  bites: boolean;
}

export interface SensorScene {
  width: number;
  height: number;
  circles: DrawnCircle[];
  /** Radii at which the light has fallen by so many stops, mm: those that lie on the sensor. */
  contours: { ev: number; radius: number }[];
  /** Light at a radius in mm, 0 to 1; undefined where an opening is not known. */
  light: ((radius: number) => number) | undefined;
  /** The subject's box on the sensor, mm; a side that is not given is taken as the other. */
  subject: { width: number; height: number } | undefined;
}

const CONTOURS = [0.5, 1, 2, 3, 4];

/** What lies on the sensor, in mm from its middle. */
export function sensorScene({ pairing, answers, sheet }: Evaluation, { coverage }: Report): SensorScene {
  const width = amount(pairing.sensor.widthMm);
  const height = amount(pairing.sensor.heightMm);
  const corner = Math.hypot(width, height) / 2;
  const stops = stopsOf(sheet);
  const F = stops ? scaleOf(stops.rig) : 0;
  const m = numberIn(answers.systemMagnification) ?? 0;
  const side = pairing.subject?.widthMm ?? pairing.subject?.heightMm;
  return {
    width,
    height,
    circles: CIRCLES.flatMap((circle) => {
      const span = interval(answers[CIRCLE_FIGURE[circle]]);
      return span ? [{ circle, radius: span[1] / 2, bites: coverage.bites === circle }] : [];
    }),
    contours: stops
      ? CONTOURS.map((ev) => ({ ev, radius: slopeAtShare(stops.seen, 2 ** -ev) * F })).filter(({ radius }) => radius < corner)
      : [],
    light: stops ? (radius) => relativeIllumination(stops.seen, radius / F) : undefined,
    subject: side === undefined ? undefined : laidOn(m * side, m * (pairing.subject?.heightMm ?? side), width >= height),
  };
}

/** The subject turned so that its longer side lies along the sensor's, as the verdict on it takes it. */
function laidOn(a: number, b: number, wide: boolean): { width: number; height: number } {
  const [long, short] = [Math.max(a, b), Math.min(a, b)];
  return wide ? { width: long, height: short } : { width: short, height: long };
}
