import type { PartKind } from '../../core/index.ts';
import type { Field } from '../fields/field-lists.ts';
import { FIELDS } from './told.ts';

/** What is usually known of a part; the rest stands behind a fold. */
const USUAL: Record<PartKind, readonly string[]> = {
  objective: [
    'name',
    'magnification',
    'na',
    'referenceFocalLengthMm',
    'fieldNumberMm',
    'workingDistanceMm',
    'coverGlassMm',
    'parfocalDistanceMm',
  ],
  relay: ['name', 'kind', 'focalLengthMm', 'powerDioptre', 'clearApertureMm', 'maleThread'],
  sensor: ['name', 'widthMm', 'heightMm', 'pixelPitchUm', 'columns', 'rows'],
};
const OF_CAMERA_LENS = ['fNumber', 'femaleThread', 'entrancePupilDepthMm'];

/** Which fields come first, and which behind the fold: what the part says when it is laid open is not hidden. */
export function groupsFor(kind: PartKind, base: object): { usual: Field[]; rest: Field[] } {
  const lens = (base as { kind?: unknown }).kind === 'camera-lens';
  const given = (key: string): boolean => Object.hasOwn(base, key.replace(/\/\d$/, ''));
  const first = ({ key }: Field): boolean => USUAL[kind].includes(key) || (lens && OF_CAMERA_LENS.includes(key)) || given(key);
  return { usual: FIELDS[kind].filter(first), rest: FIELDS[kind].filter((field) => !first(field)) };
}

/** What a barrel, a rim or a maker's paper states; of all else the place of a statement shows only where there is one. */
const STATED: ReadonlySet<string> = new Set([
  'magnification',
  'na',
  'referenceFocalLengthMm',
  'fieldNumberMm',
  'workingDistanceMm',
  'coverGlassMm',
  'parfocalDistanceMm',
  'focalLengthMm',
  'powerDioptre',
  'fNumber',
  'imageCircleMm',
  'widthMm',
  'heightMm',
  'pixelPitchUm',
]);

/** Whether what is engraved is asked for beside a number that was measured. */
export const isStated = (key: string, marked: unknown): boolean => STATED.has(key) || marked !== undefined;
