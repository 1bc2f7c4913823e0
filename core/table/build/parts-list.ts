import type { Input } from '../../pairing/input.ts';
import type { Objective } from '../../parts/objective.ts';
import { amount } from '../../parts/quantity.ts';
import type { Relay } from '../../parts/relay.ts';
import { short } from '../../words.ts';
import type { Link } from '../threads/chain.ts';
import { type End, endWords, minorDiameter } from '../threads/thread.ts';
import type { cameraEnd, EndFound } from './ends.ts';
import type { Run } from './run.ts';

/** A line of the parts list, in the order from the objective to the camera. */
export interface SheetPart {
  readonly what: string;
  readonly role: 'objective' | 'ring' | 'tube' | 'relay' | 'mount' | 'camera' | 'missing';
  /** Its ends toward the objective and toward the camera: `male M25 x 0.75`. */
  readonly front?: string;
  readonly rear?: string;
  readonly lengthMm?: number;
  readonly clearMm?: number;
  /** How wide it is outside, by its threads. */
  readonly acrossMm?: number;
  /** Which of its numbers are taken as usual, for want of its own. */
  readonly supposed?: readonly ('lengthMm' | 'clearMm')[];
  readonly standing: 'in the pairing' | 'owned' | 'to buy' | 'missing';
  readonly remark?: string;
}

export const tidy = (x: number): number => Number(x.toFixed(6));

export function objectivePart({ name, magnification, na }: Objective, shoulder: EndFound, lengthMm: number | undefined): SheetPart {
  return {
    what: name ?? `objective ${short(amount(magnification))}x/${short(amount(na))}`,
    role: 'objective',
    ...('end' in shoulder ? { rear: endWords(shoulder.end) } : {}),
    ...(lengthMm === undefined ? {} : { lengthMm }),
    standing: 'in the pairing',
  };
}

export function relayPart({ name, kind, clearApertureMm }: Relay, front: EndFound, rear: EndFound, side: string | undefined): SheetPart {
  const remarks = [...new Set([side, ...[front, rear].map((end) => ('end' in end ? end.remark : undefined))])].filter(Boolean);
  return {
    what: name ?? KINDS[kind],
    role: 'relay',
    ...('end' in front ? { front: endWords(front.end) } : {}),
    ...('end' in rear ? { rear: endWords(rear.end) } : {}),
    ...(clearApertureMm === undefined ? {} : { clearMm: amount(clearApertureMm) }),
    standing: 'in the pairing',
    ...(remarks.length > 0 ? { remark: remarks.join('; ') } : {}),
  };
}

/** The ring that turns the camera's mount into a thread. */
export function cameraRing(
  { end, fromSensorMm, remark }: ReturnType<typeof cameraEnd>,
  register: Input | undefined,
  told: boolean,
): SheetPart {
  const lengthMm = fromSensorMm === undefined || register === undefined ? undefined : fromSensorMm - register.value;
  return {
    what: `ring on the camera, its mount to ${endWords(end)}`,
    role: 'mount',
    front: endWords(end),
    clearMm: tidy(minorDiameter(end.thread)),
    acrossMm: tidy(acrossOf(end)),
    supposed: register?.origin === 'assumed' ? ['clearMm', 'lengthMm'] : ['clearMm'],
    ...(lengthMm !== undefined && lengthMm >= 0 ? { lengthMm: tidy(lengthMm) } : {}),
    standing: told ? 'owned' : 'to buy',
    ...(lengthMm !== undefined && lengthMm < 0
      ? { remark: 'its seat would lie inside this camera: another ring is needed' }
      : remark
        ? { remark }
        : {}),
  };
}

export const KINDS = { supplementary: 'close-up lens', 'camera-lens': 'camera lens', 'tube-lens': 'tube lens' } as const;

/** As long as each piece is set: a focusing tube takes up what the others leave. */
export const set = (run: Run): readonly number[] =>
  run.links.map(({ piece }) => piece.lengthMm + ('reachMm' in piece && piece.reachMm !== 0 ? run.lengthMm - run.least : 0));

/** A female thread's wall stands so much outside of it, mm. */
const OUTER_WALL = 1.5;
const acrossOf = ({ thread, sex }: End): number => thread.diameterMm + (sex === 'female' ? 2 * OUTER_WALL : 0);

export function partsOf(run: Run): SheetPart[] {
  const lengths = set(run);
  return run.links.map((link, i) => ({ ...asListed(link), lengthMm: tidy(lengths[i] as number) }));
}

/** A piece as it is listed, as short as it can be set. */
export function asListed({ piece, front, rear }: Link): SheetPart {
  const reach = 'reachMm' in piece ? (piece.reachMm as number) : 0;
  const supposed = [...(piece.lengthKnown ? [] : ['lengthMm' as const]), ...(piece.clearKnown ? [] : ['clearMm' as const])];
  return {
    what: piece.name,
    role: 'reachMm' in piece ? 'tube' : 'ring',
    front: endWords(front),
    rear: endWords(rear),
    lengthMm: tidy(piece.lengthMm),
    clearMm: tidy(piece.clearMm),
    acrossMm: tidy(Math.max(...piece.ends.map(acrossOf))),
    standing: piece.owned ? 'owned' : 'to buy',
    ...(supposed.length > 0 ? { supposed } : {}),
    ...(reach > 0 ? { remark: `turns from ${short(piece.lengthMm)} to ${short(piece.lengthMm + reach)} mm` } : {}),
  };
}
