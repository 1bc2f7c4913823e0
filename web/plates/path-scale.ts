import type { Scene } from './path-geometry.ts';
import type { StandingStop } from './path-rays.ts';

/** From mm to px: `x` along the axis, `y` across it; both to scale, heights `stretch` times as much. */
export interface PathScale {
  x(z: number): number;
  /** The place on the axis at so many px. */
  z(x: number): number;
  /** Half a height in px. */
  h(y: number): number;
  /** px a mm, along the axis. */
  k: number;
  stretch: number;
  /** Greatest half-height that is drawn, mm. */
  most: number;
  /** Half the height of the drawing, px: the same whatever is drawn, so that nothing below it moves. */
  half: number;
  left: number;
  right: number;
}

const STEPS = [20, 15, 10, 8, 6, 5, 4, 3, 2, 1.5, 1];
const PAD = { left: 16, right: 18 };
/** Room behind the sensor for a longer relay to be pulled into, as a part of the whole. */
const ROOM = 0.14;
const ROOM_NARROW = 0.1;
export const NARROW = 620;

const halfHeight = (width: number): number => (width < NARROW ? 84 : 112);

/** Along the axis what is drawn, mm; behind the sensor there is room to pull it into. */
export function extent({ subject, pupilBetween, sensor, stops }: Scene, width: number): readonly [from: number, to: number] {
  const from = Math.min(subject, pupilBetween[0]);
  const to = Math.max(sensor, ...stops.map((s) => s.z));
  return [from, Math.max(to, sensor + (width < NARROW ? ROOM_NARROW : ROOM) * (sensor - from))];
}

/** What of a scale is kept while a handle is held: all that would move the paper under the hand. */
export type Kept = Pick<PathScale, 'stretch'> & Partial<Pick<PathScale, 'k'>>;

/**
 * Fits a scene to a width: lengths to scale, heights stretched by a round factor, the largest that fits.
 * @param kept of the scale before, as long as the drawing still fits
 */
export function scaleFor(scene: Scene, width: number, kept?: Kept): PathScale {
  const [from, to] = extent(scene, width);
  const k = kept?.k ?? (width - PAD.left - PAD.right) / (to - from);
  const half = halfHeight(width);
  const beam = Math.max(
    scene.cornerHeight,
    scene.pupilHalf,
    scene.noseHalf,
    ...[...scene.middle, ...scene.field].flatMap((ray) => [...ray.points, ...ray.seen].map(([, y]) => Math.abs(y))),
  );
  const most = Math.min(2 * beam, Math.max(beam, ...scene.stops.map((s) => s.half))) * 1.08;
  const fits = (s: number): boolean => most * k * s <= half;
  const round = STEPS.find(fits) ?? Number((half / (most * k)).toPrecision(2));
  const stretch = kept && fits(kept.stretch) ? kept.stretch : round;
  return {
    x: (z) => PAD.left + (z - from) * k,
    z: (x) => (x - PAD.left) / k + from,
    h: (y) => Math.max(-half, Math.min(half, y * k * stretch)),
    k,
    stretch,
    most: half / (k * stretch),
    half,
    left: PAD.left,
    right: width - 4,
  };
}

/** Whether a stop is too wide for the drawing. */
export const offPlate = (stop: StandingStop, { most }: PathScale): boolean => stop.half > most * 1.0001;

/**
 * The infinity space that brings the relay to `x` px. The whole drawing shrinks as the space grows, and with
 * the scale `k(v) = W / ((1 + room) (v + S - from))` of a sensor `S` behind the rim this solves
 * `(v - from) k(v) = x - left` for `v`: so the relay stays under the hand. Infinity beyond all reach.
 */
export function spaceAt(x: number, scene: Scene, width: number): number {
  const [from] = extent(scene, width);
  const behind = scene.sensor - scene.rim - from;
  const room = 1 + (width < NARROW ? ROOM_NARROW : ROOM);
  const X = ((x - PAD.left) * room) / (width - PAD.left - PAD.right);
  return X >= 1 ? Number.POSITIVE_INFINITY : (X * behind + from) / (1 - X);
}
