import type { Scene, StandingStop } from './path-geometry.ts';

/** From mm to px: `x` along the axis, `y` across it; both to scale, heights `stretch` times as much. */
export interface PathScale {
  x(z: number): number;
  /** Half a height in px. */
  h(y: number): number;
  stretch: number;
  /** Greatest half-height that is drawn, mm. */
  most: number;
  left: number;
  right: number;
}

const STEPS = [1, 1.5, 2, 3, 4, 5, 6, 8, 10, 15, 20];
const LOW = 74;
const HIGH = 128;

/** Fits a scene to a width: lengths to scale, heights stretched by a round factor only where they need it. */
export function scaleFor(scene: Scene, width: number): PathScale {
  const from = Math.min(scene.subject, scene.pupilBetween[0]);
  const to = Math.max(scene.sensor, ...scene.stops.map((s) => s.z));
  const pad = { left: 14, right: 26 };
  const k = (width - pad.left - pad.right) / (to - from);
  const beam = Math.max(
    scene.cornerHeight,
    scene.pupilHalf,
    scene.noseHalf,
    ...[...scene.middle, ...scene.corner].flatMap((ray) => [...ray.points, ...ray.seen].map(([, y]) => Math.abs(y))),
  );
  const most = Math.min(2 * beam, Math.max(beam, ...scene.stops.map((s) => s.half)));
  const fit = STEPS.find((s) => most * k * s >= LOW) ?? 20;
  const stretch = most * k * fit > HIGH ? Number((HIGH / (most * k)).toPrecision(2)) : fit;
  return {
    x: (z) => pad.left + (z - from) * k,
    h: (y) => Math.max(-most * 1.08, Math.min(most * 1.08, y)) * k * stretch,
    stretch,
    most,
    left: pad.left,
    right: width - 4,
  };
}

/** Whether a stop is too wide for the drawing. */
export const offPlate = (stop: StandingStop, { most }: PathScale): boolean => stop.half > most * 1.0001;
