import { beam, type Lens, lengthOf, type Prescription, THROUGH, trace, widestSemiApertures } from '../../core/glassworks.ts';
import type { Point } from '../plates/path-rays.ts';
import { coursesThrough } from './courses.ts';

/** One piece of glass between two surfaces. */
export interface Piece {
  /** The surfaces before and behind it, in the order in which light meets them. */
  front: number;
  back: number;
  glass: string;
  index: number;
  /** How high it is drawn, mm: pieces that are cemented together are as high as each other. */
  half: number;
}

/** A traced ray in the plane of the field. */
export interface TracedRay {
  /** Where it leaves the exit pupil, as a part of its radius, -1 to 1. */
  at: number;
  points: Point[];
  /** The surface that stops it; undefined where it comes through. */
  endsAt: number | undefined;
}

/** A lens as it is cut through its axis, mm. */
export interface Outline {
  /** In the order in which light meets them. */
  vertices: number[];
  radii: readonly number[];
  pieces: Piece[];
}

/** The relay in section; lengths in mm from its first vertex toward the sensor. */
export interface Section extends Outline {
  length: number;
  pupil: number;
  pupilHalf: number;
  sensor: number;
  cornerHeight: number;
  middle: TracedRay[];
  corner: TracedRay[];
}

export interface SectionOf {
  /** As it stands in the light. */
  lens: Lens;
  prescription: Prescription;
  pupilDistanceMm: number;
  pupilRadiusMm: number;
  /** From the last vertex to the sensor. */
  sensorMm: number;
  cornerHeightMm: number;
  /** Slope of the beam that goes to the corner. */
  cornerSlope: number;
  /** How high glass is drawn whose surfaces are clear to any height, mm. */
  usualHalfMm: number;
}

/** Rays of a beam, the middle one among them. */
const RAYS = 9;
/** Glass reaches a little beyond what it lets through, mm. */
const BEYOND = 1;

/** The section of a lens and two beams through it, the middle's and the corner's. */
export function sectionOf(of: SectionOf): Section {
  const { lens } = of;
  const outline = outlineOf(lens, of.prescription, of.usualHalfMm);
  const { vertices } = outline;
  return {
    ...outline,
    length: lengthOf(lens),
    pupil: -of.pupilDistanceMm,
    pupilHalf: of.pupilRadiusMm,
    sensor: lengthOf(lens) + of.sensorMm,
    cornerHeight: of.cornerHeightMm,
    middle: fan(of, vertices, 0),
    corner: fan(of, vertices, of.cornerSlope),
  };
}

/** @param usualHalfMm how high glass is drawn whose surfaces are clear to any height */
export function outlineOf(lens: Lens, prescription: Prescription, usualHalfMm: number): Outline {
  const vertices = lens.radiiMm.map((_, i) => lens.thicknessesMm.slice(0, i).reduce((sum, t) => sum + t, 0));
  return { vertices, radii: lens.radiiMm, pieces: piecesOf(lens, prescription, usualHalfMm) };
}

function piecesOf(lens: Lens, prescription: Prescription, usualHalfMm: number): Piece[] {
  const pieces = lens.media.flatMap((medium, i): Piece[] =>
    medium.name === 'air' ? [] : [{ front: i, back: i + 1, glass: medium.name, index: prescription.index[i + 1] as number, half: 0 }],
  );
  const widest = widestSemiApertures(lens.radiiMm, lens.thicknessesMm);
  for (const group of cemented(pieces)) {
    const surfaces = [...new Set(group.flatMap((p) => [p.front, p.back]))];
    const clear = Math.max(...surfaces.map((i) => lens.semiAperturesMm[i] as number));
    const half = Math.min((Number.isFinite(clear) ? clear : usualHalfMm) + BEYOND, ...surfaces.map((i) => widest[i] as number));
    for (const piece of group) piece.half = half;
  }
  return pieces;
}

/** Pieces that touch, together. */
function cemented(pieces: readonly Piece[]): Piece[][] {
  const groups: Piece[][] = [];
  for (const piece of pieces) {
    const last = groups.at(-1);
    if (last?.at(-1)?.back === piece.front) last.push(piece);
    else groups.push([piece]);
  }
  return groups;
}

/** A fan of rays from the pupil, surface by surface, to the sensor or to where each ends. */
function fan(
  { prescription, pupilDistanceMm, pupilRadiusMm, sensorMm }: SectionOf,
  vertices: readonly number[],
  slope: number,
): TracedRay[] {
  const at = Array.from({ length: RAYS }, (_, i) => (2 * i) / (RAYS - 1) - 1);
  const points = { count: RAYS, x: new Float64Array(RAYS), y: Float64Array.from(at), share: new Float64Array(RAYS).fill(1 / RAYS) };
  const launched = { pupilRadiusMm, pupilDistanceMm, slope };
  const through = beam(points, launched);
  trace(prescription, through);
  // Where a rim stops a ray is seen by tracing it as if there were none.
  return coursesThrough(prescription, vertices, at, launched).map((course, i): TracedRay => {
    const start: Point = [-pupilDistanceMm, (at[i] as number) * pupilRadiusMm];
    if (through.status[i] !== THROUGH) {
      const endsAt = through.surface[i] as number;
      return { at: at[i] as number, points: [start, ...course.points.slice(0, endsAt + 1)], endsAt };
    }
    const [z, y] = course.points.at(-1) as Point;
    const sensor = (vertices.at(-1) as number) + sensorMm;
    const landed: Point = [sensor, y + (sensor - z) * (course.slope as number)];
    return { at: at[i] as number, points: [start, ...course.points, landed], endsAt: undefined };
  });
}
