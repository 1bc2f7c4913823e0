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
  /** The front principal plane, and how far behind it the rear one lies: 0 where it is not known. */
  plane: number;
  hiatus: number;
  sensor: number;
  stops: StandingStop[];
  rig: Rig;
}

/** The course of rays of one slope through real glass: for each height in the pupil the points on the surfaces, z from the shoulder. */
export type Course = (heights: readonly number[], slope: number) => Point[][];

/** A beam: the part of the pupil that gets through and where its rays go, and what is lost at either side. */
export interface Beam {
  /** The edges of what gets through and its middle ray, from below in the pupil; empty where nothing does. */
  through: Ray[];
  /** At either side the outermost ray and the first that is lost, up to the stop that takes them. */
  lost: (readonly [outermost: Ray, first: Ray])[];
}

const RAYS = 9;
/** Between these parts of the pupil's radius a ray that just passes and one that just does not are told apart. */
const HAIR = 1e-6;

/** The beam to `height`, by its edges: every stop is met at heights linear in the pupil, so the edges are exact. */
export function beamTo(scene: Standing, height: number, below: number, course?: Course): Beam {
  const P = scene.pupilHalf;
  const fan = (heights: readonly number[]): Ray[] => fanTo(scene, height, below, course, heights);
  const [low, high] = gap(scene, height);
  if (high - low <= 2 * HAIR * P) {
    const [bottom, top] = fan([-P, P]) as [Ray, Ray];
    return { through: [], lost: [[bottom, top]] };
  }
  const through = fan([low, (low + high) / 2, high]);
  const lost: Beam['lost'] = [];
  if (low > -P * (1 - HAIR)) lost.push(fan([-P, low - HAIR * P]) as [Ray, Ray]);
  if (high < P * (1 - HAIR)) lost.push(fan([P, high + HAIR * P]) as [Ray, Ray]);
  return { through, lost };
}

/** Where in the pupil the rays of one slope pass every stop, from below, mm; the first after the second where none does. */
function gap(scene: Standing, height: number): readonly [low: number, high: number] {
  const P = scene.pupilHalf;
  const [a, b] = [-P, P].map((p) => line(scene, height, p)) as [Line, Line];
  let [low, high] = [-P, P];
  scene.stops.forEach((stop, i) => {
    const rear = scene.rig.stops[i]?.place === 'sensor';
    const [ya, yb] = rear ? [a.behind(stop.z), b.behind(stop.z)] : [a.before(stop.z), b.before(stop.z)];
    const at = (y: number): number => -P + (2 * P * (y - ya)) / (yb - ya);
    if (Math.abs(yb - ya) < 1e-12) {
      if (Math.abs(ya) > stop.half) [low, high] = [P, -P];
      return;
    }
    const [from, to] = [at(-stop.half), at(stop.half)].sort((x, y) => x - y) as [number, number];
    [low, high] = [Math.max(low, from), Math.min(high, to)];
  });
  return [low, high];
}

/** A ray of first order that leaves the pupil at `p` and would land at `height`. */
interface Line {
  slope: number;
  before(z: number): number;
  behind(z: number): number;
}

function line({ rig, pupil, plane, hiatus }: Standing, height: number, p: number): Line {
  const f = rig.relayFocalLengthMm;
  const slope = height / scaleOf(rig);
  const tilt = slope + divergence(f, rig.sensorOffsetMm, toPrincipalPlane(rig)) * p;
  const before = (z: number): number => p + tilt * (z - pupil);
  return { slope, before, behind: (z) => before(plane) + (tilt - before(plane) / f) * (z - plane - hiatus) };
}

/**
 * The fan that would land at `height` on the sensor; its subject point lies at `-below`. Which stop ends a
 * ray is by first-order optics, as the figures have it; between the relay's surfaces the real course is drawn.
 */
export function fanTo(
  scene: Standing,
  height: number,
  below: number,
  course?: Course,
  heights: readonly number[] = evenly(scene.pupilHalf),
): Ray[] {
  const { plane, sensor } = scene;
  const glass = course?.(heights, line(scene, height, 0).slope);
  return heights.map((p, i) => {
    const { before, behind } = line(scene, height, p);
    const bend: Point[] = glass?.[i] && glass[i].length > 0 ? glass[i] : [[plane, before(plane)]];
    return ended(scene, { p, before, behind, bend, below, sensor });
  });
}

const evenly = (half: number): number[] => Array.from({ length: RAYS }, (_, i) => half * ((2 * i) / (RAYS - 1) - 1));

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
