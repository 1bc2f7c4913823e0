import {
  amount,
  CIRCLE_FIGURE,
  CIRCLES,
  type Circle,
  diagonalOf,
  type Evaluation,
  interval,
  laidOn,
  numberIn,
  type Report,
  relativeIllumination,
  scaleOf,
  slopeAtShare,
  stopsOf,
  subjectSize,
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
  /** Whether the sharp circle comes from the relay's glass; else it is its rating. */
  traced: boolean;
  /** Radii at which the light has fallen by so many stops, mm: those that lie on the sensor. */
  contours: { ev: number; radius: number }[];
  /** Light at a radius in mm, 0 to 1; undefined where an opening is not known. */
  light: ((radius: number) => number) | undefined;
  /** The subject's box on the sensor, mm, laid along it as the verdict takes it. */
  subject: { width: number; height: number } | undefined;
}

const CONTOURS = [0.5, 1, 2, 3, 4];

/** What lies on the sensor, in mm from its middle. */
export function sensorScene({ pairing, answers, sheet }: Evaluation, { coverage }: Report): SensorScene {
  const width = amount(pairing.sensor.widthMm);
  const height = amount(pairing.sensor.heightMm);
  const corner = diagonalOf(pairing.sensor) / 2;
  const stops = stopsOf(sheet);
  const F = stops ? scaleOf(stops.rig) : 0;
  const box = subjectSize(pairing.subject, numberIn(answers.systemMagnification) ?? 0);
  const laid = box && laidOn(pairing.sensor, box);
  return {
    width,
    height,
    traced: pairing.relay.glass !== undefined,
    circles: CIRCLES.flatMap((circle) => {
      const span = interval(answers[CIRCLE_FIGURE[circle]]);
      return span ? [{ circle, radius: span[1] / 2, bites: coverage.bites === circle }] : [];
    }),
    contours: stops
      ? CONTOURS.map((ev) => ({ ev, radius: slopeAtShare(stops.seen, 2 ** -ev) * F })).filter(({ radius }) => radius < corner)
      : [],
    light: stops ? (radius) => relativeIllumination(stops.seen, radius / F) : undefined,
    subject: laid && { width: laid[0], height: laid[1] },
  };
}
