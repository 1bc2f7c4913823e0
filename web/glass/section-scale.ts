import type { Section } from './section-geometry.ts';

/** From mm to px, along the axis and across it, heights `stretch` times as much. */
export interface SectionScale {
  x(z: number): number;
  /** Half a height in px. */
  h(y: number): number;
  /** px a mm along the axis. */
  k: number;
  stretch: number;
  /** Greatest half-height that is drawn, mm. */
  most: number;
}

const STEPS = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];
/** Half the height that the drawing wants and that it may have, px. */
const LOW = 84;
const HIGH = 172;
const PAD = { left: 22, right: 26 };

/** Fits the section to a width: lengths to scale, heights stretched by a round factor where they need it. */
export function sectionScale(section: Section, shoulder: number, width: number): SectionScale {
  const from = Math.min(section.pupil, shoulder, 0);
  const to = Math.max(section.sensor, section.length);
  const k = (width - PAD.left - PAD.right) / (to - from);
  const glass = Math.max(...section.pieces.map((p) => p.half), 0) + RIM;
  const beams = [...section.middle, ...section.corner].flatMap((ray) => ray.points.map(([, y]) => Math.abs(y)));
  const most = Math.max(section.cornerHeight, section.pupilHalf, glass, Math.min(Math.max(...beams), 1.5 * glass));
  const fit = STEPS.find((s) => most * k * s >= LOW) ?? 10;
  const stretch = most * k * fit > HIGH ? Number((HIGH / (most * k)).toPrecision(2)) : fit;
  return { x: (z) => PAD.left + (z - from) * k, h: (y) => y * k * stretch, k, stretch, most };
}

/** How far the mount reaches beyond its glass, mm. */
export const RIM = 4;
