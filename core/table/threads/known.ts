import { MM_PER_INCH } from '../../units.ts';
import type { FlankAngle, Thread } from './thread.ts';

export interface KnownThread extends Thread {
  /** What it is used for. */
  readonly use: string;
  /** Where its measures are from; nothing here was read in a source, and most has none. */
  readonly origin: string;
}

const COMMON_PRACTICE = 'common practice, without source';

const known = (label: string, diameterMm: number, pitchMm: number, use: string, origin = COMMON_PRACTICE, angleDeg: FlankAngle = 60) => ({
  label,
  diameterMm,
  pitchMm,
  angleDeg,
  use,
  origin,
});

const metric = (diameter: number, pitch: number, use: string, origin?: string): KnownThread =>
  known(`M${diameter} x ${pitch}`, diameter, pitch, use, origin);

const perInch = (turns: number): number => MM_PER_INCH / turns;

/** Filter threads by their usual pitch, mm. */
const FILTERS = [
  [0.5, [25.5, 27, 30.5, 34, 35.5, 40.5]],
  [0.75, [37, 39, 43, 46, 49, 52, 55, 58, 62, 67, 72, 77, 82]],
  [1, [86, 95, 105, 112]],
] as const;
/** Sizes that also turn up with a pitch of 0.75, or of 1. */
const FILTERS_TOO = [
  [0.75, [30.5, 40.5, 95]],
  [1, [49, 52, 77, 82]],
] as const;

const filters = (rows: readonly (readonly [number, readonly number[]])[], use: string): KnownThread[] =>
  rows.flatMap(([pitch, sizes]) => sizes.map((size) => metric(size, pitch, use)));

export const RMS = known('RMS', 0.8 * MM_PER_INCH, perInch(36), 'objectives', 'ISO 8038, from memory', 55);
export const C_MOUNT = known('C (1 in x 32 TPI)', MM_PER_INCH, perInch(32), 'cameras', '1-32 UN, from memory');
export const M42_FINE = metric(42, 0.75, 'rings on cameras, known as T');
export const M42 = metric(42, 1, 'tubes and camera lenses');
export const M25 = metric(25, 0.75, 'objectives', 'ISO 8038, from memory');
/** Its flanks are as of RMS threads, from memory and not sure; no thread of the same measures with other flanks is known. */
export const M26 = known('M26 x 36 TPI', 26, perInch(36), 'objectives', COMMON_PRACTICE, 55);
export const M27 = metric(27, 0.75, 'objectives');
export const M32 = metric(32, 0.75, 'objectives');

/** Usual threads: a bare diameter means the one of them that has it, and is asked about where several do. */
export const USUAL_THREADS: readonly KnownThread[] = [
  RMS,
  M25,
  M26,
  metric(26, 0.75, 'objectives and filters'),
  M27,
  M32,
  C_MOUNT,
  M42_FINE,
  M42,
  known('M39 x 26 TPI', 39, perInch(26), 'lenses of rangefinder cameras', COMMON_PRACTICE, 55),
  metric(39, 1, 'enlarger lenses'),
  metric(48, 0.75, 'tubes'),
  ...filters(FILTERS, 'filters').filter(({ diameterMm }) => diameterMm !== 27),
];

/** Those that must be written with their pitch. */
export const KNOWN_THREADS: readonly KnownThread[] = [
  ...USUAL_THREADS,
  ...filters([[0.5, [27]]], 'filters'),
  ...filters(FILTERS_TOO, 'filters, seldom'),
];

/** The filter threads that step rings are made for. */
export const STEP_SIZES: readonly KnownThread[] = USUAL_THREADS.filter(
  ({ use, pitchMm, diameterMm }) => use === 'filters' && pitchMm === 0.75 && diameterMm !== 39,
);
export const filterThread = (size: number): KnownThread => STEP_SIZES.find(({ diameterMm }) => diameterMm === size) as KnownThread;
