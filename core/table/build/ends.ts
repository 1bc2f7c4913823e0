import { threadOf as sideByThread } from '../../lens/sides.ts';
import type { Objective } from '../../parts/objective.ts';
import type { Relay } from '../../parts/relay.ts';
import { endOf } from '../threads/adapter.ts';
import { C_MOUNT, M42, M42_FINE } from '../threads/known.ts';
import { readThread } from '../threads/read.ts';
import { type End, type Sex, sameThread } from '../threads/thread.ts';
import type { BuildAsk } from './ask.ts';

/** An end that is known, or why it is not and where it would be told. */
export type EndFound = { readonly end: End; readonly remark?: string } | { readonly unknown: string; readonly path: string };

const written = (text: string | undefined, sex: Sex, path: string, what: string): EndFound => {
  if (text === undefined) return { unknown: `${what} is not told`, path };
  const read = readThread(text);
  return 'fault' in read
    ? { unknown: `${what}, ‘${text}’, ${read.fault}: ${read.expected}`, path }
    : { end: { thread: read.thread, sex: read.sex ?? sex } };
};

export const objectiveEnd = ({ mountThread }: Objective): EndFound =>
  written(mountThread, 'male', '/objective/mountThread', "the objective's thread");

/**
 * The relay's end toward the objective or the camera. A close-up lens has its male thread toward the objective where
 * it is not reversed, and mostly a female one as wide on the other side.
 */
function relayEnd(relay: Relay, side: 'front' | 'rear', told: BuildAsk['relayFront']): EndFound {
  if (told) return { end: endOf(told) };
  const path = side === 'front' ? '/relayFront' : '/relayRear';
  if (relay.kind === 'camera-lens') return side === 'front' ? filterEnd(relay) : { unknown: 'a camera lens ends in its mount', path };
  const male = (side === 'front') !== (relay.reversed ?? false);
  const own = male ? relay.maleThread : relay.femaleThread;
  const other = male ? relay.femaleThread : relay.maleThread;
  const sex = male ? 'male' : 'female';
  const found = written(own ?? other, sex, male ? '/relay/maleThread' : '/relay/femaleThread', `the relay's ${sex} thread`);
  if (!('end' in found) || own !== undefined) return found;
  return { end: { ...found.end, sex }, remark: `its ${sex} thread is taken as wide as its other one (common practice)` };
}

/** A camera lens's filter thread is female, whichever of its threads was told. */
function filterEnd({ femaleThread, maleThread }: Relay): EndFound {
  const lone = femaleThread === undefined && maleThread !== undefined;
  const path = lone ? '/relay/maleThread' : '/relay/femaleThread';
  const found = written(femaleThread ?? maleThread, 'female', path, "the camera lens's filter thread");
  if (!lone || !('end' in found)) return found;
  return {
    end: { ...found.end, sex: 'female' },
    remark: 'its male thread is taken for its filter thread, which is female on camera lenses (common practice)',
  };
}

export const relayFront = (relay: Relay, { relayFront: told }: BuildAsk): EndFound => relayEnd(relay, 'front', told);
export const relayRear = (relay: Relay, { relayRear: told }: BuildAsk): EndFound => relayEnd(relay, 'rear', told);

/** Which side faces the objective, in the words of the glass's own advice; undefined where the relay's ends do not tell it. */
export const sideWords = ({ kind, reversed = false, maleThread, femaleThread }: Relay): string | undefined =>
  kind !== 'camera-lens' && (maleThread ?? femaleThread) !== undefined ? sideByThread(reversed) : undefined;

/** Seats before the sensor by thread, mm: T, C (1-32 UN, 0.690 in), and the old screw mount; common practice, from memory. */
const SEATS = [
  [M42_FINE, 55],
  [C_MOUNT, 17.526],
  [M42, 45.46],
] as const;

/** The camera's end and where its seat stands before the sensor; undefined where that is not known. */
export function cameraEnd({ camera }: BuildAsk): { end: End; fromSensorMm: number | undefined; remark?: string } {
  const { thread = 'T', sex = 'female', fromSensorMm } = camera ?? {};
  const end = endOf({ thread, sex });
  const usual = SEATS.find(([known]) => sameThread(known, end.thread))?.[1];
  if (fromSensorMm !== undefined) return { end, fromSensorMm };
  return {
    end,
    fromSensorMm: usual,
    ...(usual === undefined ? {} : { remark: `its seat is taken ${usual} mm before the sensor, as is common practice for this thread` }),
  };
}
