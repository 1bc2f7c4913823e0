import { cardinal, lengthOf, prescription, reversed } from '../../core/glassworks.ts';
import { amount, DEFAULTS, type Evaluation } from '../../core/index.ts';
import type { Course } from '../plates/path-rays.ts';
import { coursesThrough } from './courses.ts';
import { listedFor } from './listed-for.ts';
import { type Outline, outlineOf } from './section-geometry.ts';

/** The relay's real glass for the light path: its outline and the course of rays through it, z from the objective's shoulder. */
export interface LensOnPath {
  outline: Outline;
  /** Which way the male thread looks; undefined where there is none. */
  thread: 'objective' | 'camera' | undefined;
  course: Course;
  /** Where light from infinity comes to its focus: behind the last vertex, not a focal length behind the first principal plane. */
  focusMm: number;
}

/** Glass whose surfaces are clear to any height is drawn so wide where the rim is not known either, mm. */
const USUAL_HALF = 20;

/** Of a pairing whose relay has glass; undefined where no lens can be made of it. */
export function lensOnPath({ pairing, inputs }: Evaluation, pupilMm: number): LensOnPath | undefined {
  const { relay } = pairing;
  const listed = listedFor(relay);
  if (!listed) return undefined;
  const lens = relay.reversed ? reversed(listed) : listed;
  const space = amount(pairing.infinitySpaceMm);
  const prescribed = prescription(lens, pairing.wavelengthNm ?? DEFAULTS.wavelengthNm);
  const rim = inputs.find((input) => input.path === '/relay/clearApertureMm')?.value;
  const outline = outlineOf(lens, prescribed, rim === undefined ? USUAL_HALF : rim / 2);
  const hasThread = relay.kind === 'supplementary' || relay.maleThread !== undefined;
  return {
    outline: { ...outline, vertices: outline.vertices.map((z) => z + space) },
    focusMm: space + lengthOf(lens) + cardinal(prescribed).backFocalLengthMm,
    thread: hasThread ? (relay.reversed ? 'camera' : 'objective') : undefined,
    course: (heights, slope) => {
      const most = Math.max(...heights.map(Math.abs), 1e-9);
      const of = { pupilRadiusMm: most, pupilDistanceMm: space - pupilMm, slope };
      const at = heights.map((p) => p / most);
      return coursesThrough(prescribed, outline.vertices, at, of).map(({ points, slope: behind }) =>
        behind === undefined ? [] : points.map(([z, y]) => [z + space, y] as const),
      );
    },
  };
}

export { Glass } from './section-glass.tsx';
