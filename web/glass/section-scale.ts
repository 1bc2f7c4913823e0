import { NARROW } from '../plates/path-scale.ts';
import type { Section } from './section-geometry.ts';

/** From mm to px, along the axis and across it, heights `stretch` times as much. */
export interface SectionScale {
  x(z: number): number;
  /** The place on the axis at so many px. */
  z(x: number): number;
  /** Half a height in px. */
  h(y: number): number;
  /** px a mm along the axis. */
  k: number;
  stretch: number;
  /** Half the height of the drawing, px: the same whatever is drawn. */
  half: number;
  left: number;
}

const STEPS = [10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1];
const HALF = 172;
const HALF_NARROW = 100;
const PAD = { left: 22, right: 26 };

/** Fits the section to a width: lengths to scale, heights stretched by a round factor, the largest that fits, or the one before where that still does. */
export function sectionScale(section: Section, shoulder: number, width: number, before?: number): SectionScale {
  const from = Math.min(section.pupil, shoulder, 0);
  const to = Math.max(section.sensor, section.length);
  const k = (width - PAD.left - PAD.right) / (to - from);
  const half = width < NARROW ? HALF_NARROW : HALF;
  const glass = Math.max(...section.pieces.map((p) => p.half), 0) + RIM;
  const beams = [...section.middle, ...section.corner].flatMap((ray) => ray.points.map(([, y]) => Math.abs(y)));
  const most = Math.max(section.cornerHeight, section.pupilHalf, glass, Math.min(Math.max(...beams), 1.5 * glass));
  const fits = (s: number): boolean => most * k * s <= half;
  const stretch = before !== undefined && fits(before) ? before : (STEPS.find(fits) ?? Number((half / (most * k)).toPrecision(2)));
  return {
    x: (z) => PAD.left + (z - from) * k,
    z: (x) => (x - PAD.left) / k + from,
    h: (y) => y * k * stretch,
    k,
    stretch,
    half,
    left: PAD.left,
  };
}

/**
 * The infinity space that brings the relay's first vertex to `x` px, while the whole shrinks with it: with
 * `S` from the first thing drawn to the vertex and `T` from there to the last, `x - left = W S / (S + T)`.
 * Infinity beyond all reach.
 */
export function spaceUnder(x: number, section: Section, shoulder: number, width: number): number {
  const before = Math.max(0, shoulder - section.pupil);
  const X = (x - PAD.left) / (width - PAD.left - PAD.right);
  return X >= 1 ? Number.POSITIVE_INFINITY : (X * Math.max(section.sensor, section.length)) / (1 - X) - before;
}

/** How far the mount reaches beyond its glass, mm. */
export const RIM = 4;
