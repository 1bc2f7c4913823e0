import { divergence, imageScale } from '../paraxial/conjugates.ts';
import type { Discs } from './discs.ts';

/** A round stop where it stands: `fromPupil` in the infinity space, `fromSensor` behind the relay. */
export interface PlacedStop {
  readonly label: string;
  /** JSON Pointer of the input that sets its opening; '' for the objective's own pupil. */
  readonly path: string;
  readonly diameterMm: number;
  readonly place: 'pupil' | 'shoulder' | 'relay' | 'sensor';
  /** From the shoulder, from the relay's rim, or from the sensor, as `place` says; 0 for the pupil. */
  readonly atMm: number;
}

/** Where everything stands, in mm: what the stops are seen through. */
export interface Rig {
  readonly stops: readonly PlacedStop[];
  readonly infinitySpaceMm: number;
  readonly exitPupilFromShoulderMm: number;
  readonly principalPlaneFromRimMm: number;
  readonly relayFocalLengthMm: number;
  readonly sensorOffsetMm: number;
}

/**
 * The stops as seen in the objective's exit pupil. A ray at pupil height `p` of slope `t` meets a stop
 * at `A p + B t`, so a stop of radius `b` passes the disc of radius `b / |A|` with its centre at
 * `-(B/A) t`. With `c` and `F` of `conjugates.ts`: in the infinity space at `z` from the pupil
 * `A = 1 + c z`, `B = z`; behind the relay at `l` before the sensor `A = l / F`,
 * `B = F - l (1 - z_H / f)`. Where `A` is 0 the stop is a field stop and passes `|t| <= b / |B|`.
 */
export interface SeenStops extends Discs {
  /** The greatest slope that the field stops pass. */
  readonly fieldSlope: number;
  /** Index of the disc that limits the axial beam: the smallest. */
  readonly limiting: number;
  /** For each disc its stop in `Rig.stops`; field stops have none. */
  readonly stopOf: readonly number[];
  readonly fieldStop: number | undefined;
}

export const toPrincipalPlane = (rig: Rig): number => rig.infinitySpaceMm - rig.exitPupilFromShoulderMm + rig.principalPlaneFromRimMm;

export const scaleOf = (rig: Rig): number => imageScale(rig.relayFocalLengthMm, rig.sensorOffsetMm, toPrincipalPlane(rig));

/** Distance from the exit pupil of a stop in the infinity space. */
export function fromPupil(rig: Rig, stop: PlacedStop, space = rig.infinitySpaceMm): number {
  if (stop.place === 'pupil') return 0;
  const shoulder = -rig.exitPupilFromShoulderMm;
  return stop.place === 'shoulder' ? shoulder + stop.atMm : shoulder + space + stop.atMm;
}

/** What rays go through at an infinity space: `z` to the principal plane, `F` height on the sensor per slope, `c` divergence. */
export interface Course {
  readonly space: number;
  readonly z: number;
  readonly F: number;
  readonly c: number;
}

/** @param space the infinity space; the rig's own unless another is asked for */
export function courseOf(rig: Rig, space = rig.infinitySpaceMm): Course {
  const z = space - rig.exitPupilFromShoulderMm + rig.principalPlaneFromRimMm;
  const { relayFocalLengthMm: f, sensorOffsetMm: s } = rig;
  return { space, z, F: imageScale(f, s, z), c: divergence(f, s, z) };
}

/** Where rays of pupil height `p` and slope `t` meet a stop: `A p + B t`. */
export const reachA = (rig: Rig, { space, F, c }: Course, stop: PlacedStop): number =>
  stop.place === 'sensor' ? stop.atMm / F : 1 + c * fromPupil(rig, stop, space);
export const reachB = (rig: Rig, { space, z, F }: Course, stop: PlacedStop): number =>
  stop.place === 'sensor' ? F - stop.atMm * (1 - z / rig.relayFocalLengthMm) : fromPupil(rig, stop, space);

export function seenStops(rig: Rig): SeenStops {
  const course = courseOf(rig);
  const count = rig.stops.length;
  const walk = new Array<number>(count);
  const radius = new Array<number>(count);
  const stopOf = new Array<number>(count);
  let discs = 0;
  let fieldSlope = Number.POSITIVE_INFINITY;
  let fieldStop: number | undefined;
  let limiting = 0;
  for (let i = 0; i < count; i++) {
    const stop = rig.stops[i] as PlacedStop;
    const A = reachA(rig, course, stop);
    const B = reachB(rig, course, stop);
    const b = stop.diameterMm / 2;
    if (Math.abs(A) < 1e-12) {
      const passes = b / Math.abs(B);
      if (passes < fieldSlope) {
        fieldSlope = passes;
        fieldStop = i;
      }
      continue;
    }
    walk[discs] = -B / A;
    radius[discs] = b / Math.abs(A);
    stopOf[discs] = i;
    if ((radius[discs] as number) < (radius[limiting] as number)) limiting = discs;
    discs++;
  }
  if (discs < count) for (const list of [walk, radius, stopOf]) list.length = discs;
  return { walk, radius, fieldSlope, limiting, stopOf, fieldStop };
}

/** Whether two rigs' stops look alike from the exit pupil, to the last digit. */
export const seenAlike = (a: SeenStops, b: SeenStops): boolean =>
  a.fieldSlope === b.fieldSlope &&
  a.fieldStop === b.fieldStop &&
  a.limiting === b.limiting &&
  a.radius.length === b.radius.length &&
  a.radius.every((r, i) => r === b.radius[i] && a.walk[i] === b.walk[i] && a.stopOf[i] === b.stopOf[i]);
