import type { Check, Law } from './check.ts';
import { GLASS_TABLE } from './glass-table.ts';
import { BUILD_LAWS } from './laws/build.ts';
import { CLOSE_UP_LAWS } from './laws/close-up.ts';
import { DETAIL_LAWS } from './laws/detail.ts';
import { INFINITY_LAWS } from './laws/infinity.ts';
import { LIGHT_LAWS } from './laws/light.ts';
import { PICTURE_LAWS } from './laws/picture.ts';
import { STACK_LAWS } from './laws/stack.ts';
import { STILLNESS_LAWS } from './laws/stillness.ts';
import { DOUBLE_GAUSS } from './lenses/double-gauss.ts';
import { DOUBLETS } from './lenses/doublets.ts';
import { RAY_TABLES } from './lenses/ray-tables.ts';
import { THIN } from './lenses/thin.ts';
import { APERTURE } from './rows/aperture.ts';
import { CLOSE_UPS } from './rows/close-up.ts';
import { COLOUR } from './rows/colour.ts';
import { CONJUGATES } from './rows/conjugates.ts';
import { CONVENTIONS } from './rows/conventions.ts';
import { DEPTH } from './rows/depth.ts';
import { DIFFRACTION } from './rows/diffraction.ts';
import { FIELD } from './rows/field.ts';
import { GLASS } from './rows/glass.ts';
import { OFF_INFINITY } from './rows/off-infinity.ts';
import { RESOLUTION } from './rows/resolution.ts';
import { SAMPLING } from './rows/sampling.ts';
import { SIGHTINGS } from './rows/sightings.ts';
import { TABLE_LIGHT } from './rows/table-light.ts';
import { THREADS } from './rows/threads.ts';

/** Checks that belong together, under the title by which people know them. */
export interface Subject {
  readonly title: string;
  readonly checks: readonly Check[];
}

/** Every number that a source prints and core must give. */
export const SUBJECTS: readonly Subject[] = [
  { title: 'The field and its edges', checks: FIELD },
  { title: 'Aperture', checks: APERTURE },
  { title: 'Resolution', checks: RESOLUTION },
  { title: 'Pixels', checks: SAMPLING },
  { title: 'Diffraction and contrast', checks: DIFFRACTION },
  { title: 'Depth of field', checks: DEPTH },
  { title: 'Where sources disagree', checks: CONVENTIONS },
  { title: 'Close-up lenses', checks: CLOSE_UPS },
  { title: 'Conjugates', checks: CONJUGATES },
  { title: 'Away from infinity', checks: OFF_INFINITY },
  { title: 'Light beside other lenses', checks: TABLE_LIGHT },
  { title: 'Threads and tubes', checks: THREADS },
  { title: 'What was seen', checks: SIGHTINGS },
  { title: 'Glass, its colour, the eye', checks: [...GLASS, ...GLASS_TABLE, ...COLOUR] },
  { title: 'Rays through lenses', checks: RAY_TABLES },
  { title: 'A double Gauss', checks: DOUBLE_GAUSS },
  { title: 'Doublets', checks: DOUBLETS },
  { title: 'Thin lenses', checks: THIN },
];

/** Statements that no source needs to print. */
export const LAWS: readonly Law[] = [
  ...PICTURE_LAWS,
  ...DETAIL_LAWS,
  ...BUILD_LAWS,
  ...INFINITY_LAWS,
  ...LIGHT_LAWS,
  ...STACK_LAWS,
  ...STILLNESS_LAWS,
  ...CLOSE_UP_LAWS,
];
