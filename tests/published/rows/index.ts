import type { Row } from '../row.ts';
import { APERTURE } from './aperture.ts';
import { CLOSE_UPS } from './close-up.ts';
import { CONJUGATES } from './conjugates.ts';
import { DEPTH } from './depth.ts';
import { DIFFRACTION } from './diffraction.ts';
import { FIELD } from './field.ts';
import { GLASS } from './glass.ts';
import { OFF_INFINITY } from './off-infinity.ts';
import { RESOLUTION } from './resolution.ts';
import { SAMPLING } from './sampling.ts';
import { SIGHTINGS } from './sightings.ts';
import { TABLE_LIGHT } from './table-light.ts';
import { THREADS } from './threads.ts';

export const TOPICS: Readonly<Record<string, readonly Row[]>> = {
  'infinity space, vignetting and field': FIELD,
  'pixel sampling': SAMPLING,
  resolution: RESOLUTION,
  'effective aperture': APERTURE,
  'diffraction and contrast': DIFFRACTION,
  'depth of field': DEPTH,
  'close-up lenses': CLOSE_UPS,
  'glass, its colour and the eye': GLASS,
  'conjugates, on and off infinity': CONJUGATES,
  'spherical aberration off infinity': OFF_INFINITY,
  'light beside other lenses': TABLE_LIGHT,
  'threads, and the tube behind the relay': THREADS,
  'what was seen': SIGHTINGS,
};

export const ROWS: readonly Row[] = Object.values(TOPICS).flat();
