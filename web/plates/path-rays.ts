import { divergence, type Rig, scaleOf, toPrincipalPlane } from '../../core/index.ts';

/** A point of the drawing: `z` from the objective's shoulder toward the sensor, `y` from the axis, mm. */
export type Point = readonly [z: number, y: number];

export interface StandingStop {
  label: string;
  path: string;
  z: number;
  half: number;
  /** Seen from the front and drawn there: a camera lens's aperture lies behind the glass that shows it. */
  virtual: boolean;
}

export interface Ray {
  /** Where it starts in the exit pupil, mm from the axis. */
  p: number;
  /** From the subject to the exit pupil: inside the objective its course is not known. */
  before: Point[];
  points: Point[];
  /** Beyond the relay's plane to a stop that is only seen there. */
  seen: Point[];
  /** The stop in the scene's list that ends it; undefined where it arrives. */
  endsAt: number | undefined;
}

/** What the rays need to know: where all stands, the stops in the order of the rig's. */
export interface Standing {
  subject: number;
  pupil: number;
  pupilHalf: number;
  plane: number;
  sensor: number;
  stops: StandingStop[];
  rig: Rig;
}

/** The course of rays of one slope through real glass: for each height in the pupil the points on the surfaces, z from the shoulder. */
export type Course = (heights: readonly number[], slope: number) => Point[][];

const RAYS = 9;

/**
 * The fan that would land at `height` on the sensor; its subject point lies at `-below`. Which stop ends a
 * ray is by first-order optics, as the figures have it; between the relay's surfaces the real course is drawn.
 */
export function fanTo(scene: Standing, height: number, below: number, course?: Course): Ray[] {
  const { rig, pupil, plane, sensor, pupilHalf } = scene;
  const f = rig.relayFocalLengthMm;
  const slope = height / scaleOf(rig);
  const spread = divergence(f, rig.sensorOffsetMm, toPrincipalPlane(rig));
  const heights = Array.from({ length: RAYS }, (_, i) => pupilHalf * ((2 * i) / (RAYS - 1) - 1));
  const glass = course?.(heights, slope);
  return heights.map((p, i) => {
    const tilt = slope + spread * p;
    const before = (z: number): number => p + tilt * (z - pupil);
    const behind = (z: number): number => before(plane) + (tilt - before(plane) / f) * (z - plane);
    const bend: Point[] = glass?.[i] && glass[i].length > 0 ? glass[i] : [[plane, before(plane)]];
    return ended(scene, { p, before, behind, bend, below, sensor });
  });
}

interface Open {
  p: number;
  before(z: number): number;
  behind(z: number): number;
  /** Where the relay bends it. */
  bend: Point[];
  below: number;
  sensor: number;
}

/** A ray up to the first stop that it does not pass, or to the sensor. */
function ended(scene: Standing, { p, before, behind, bend, below, sensor }: Open): Ray {
  const { rig, pupil, plane, stops } = scene;
  const start = Math.min(pupil, ...stops.filter((s) => !s.virtual && s.z < plane).map((s) => s.z));
  const lead: Point = [start, before(start)];
  const base = { p, before: [[scene.subject, -below] as Point, lead] };
  for (const i of asMet(scene)) {
    const stop = stops[i] as StandingStop;
    const rear = rig.stops[i]?.place === 'sensor';
    const y = rear ? behind(stop.z) : before(stop.z);
    if (Math.abs(y) <= stop.half * (1 + 1e-9)) continue;
    const end: Point = [stop.z, y];
    if (rear) return { ...base, points: [lead, ...bend, end], seen: [], endsAt: i };
    const through: Point = [plane, before(plane)];
    if (stop.virtual) return { ...base, points: [lead, through], seen: [through, end], endsAt: i };
    return { ...base, points: [lead, end], seen: [], endsAt: i };
  }
  return { ...base, points: [lead, ...bend, [sensor, behind(sensor)]], seen: [], endsAt: undefined };
}

/** The stops in the order in which light meets them: those before the relay, then those behind it. */
function asMet({ stops, rig }: Standing): number[] {
  const rear = (i: number): number => (rig.stops[i]?.place === 'sensor' ? 1 : 0);
  return stops.map((_, i) => i).sort((a, b) => rear(a) - rear(b) || (stops[a] as StandingStop).z - (stops[b] as StandingStop).z);
}
