import { type Answer, numberIn } from '../../pairing/answer.ts';
import { DEFAULTS } from '../../pairing/schema.ts';
import { amount, type QuantityInput } from '../../parts/quantity.ts';
import { short } from '../../words.ts';
import type { TableEvaluation } from '../evaluate.ts';
import { adapterOf, COMMON_RINGS, COMMON_TUBES, tubeOf } from '../threads/adapter.ts';
import { type End, endWords } from '../threads/thread.ts';
import type { BuildAsk } from './ask.ts';
import { cameraEnd, type EndFound, objectiveEnd, relayFront, relayRear, sideWords } from './ends.ts';
import { CARRIES_ITS_OWN } from './figures.ts';
import { type Box, type Run, runBetween, type Wanted } from './run.ts';

/** A line of the parts list, in the order from the objective to the camera. */
export interface SheetPart {
  readonly what: string;
  readonly role: 'objective' | 'ring' | 'tube' | 'relay' | 'camera';
  /** Its ends toward the objective and toward the camera: `male M25 x 0.75`. */
  readonly front?: string;
  readonly rear?: string;
  readonly lengthMm?: number;
  readonly clearMm?: number;
  /** How wide it is outside, by its threads. */
  readonly acrossMm?: number;
  readonly standing: 'in the pairing' | 'owned' | 'to buy';
  readonly remark?: string;
}

/** A ring as one of the pairing's stops. */
export interface SheetStop {
  readonly label: string;
  readonly diameterMm: QuantityInput;
  readonly fromShoulderMm?: number;
  readonly fromSensorMm?: number;
}

/** What stands between objective and relay, or between relay and camera. */
export type SheetRun =
  | {
      readonly state: 'joined';
      /** How many pieces. */
      readonly parts: number;
      readonly lengthMm: number;
      /** What a focusing tube reaches. */
      readonly leastMm: number;
      readonly mostMm: number;
      readonly wantedMm?: number;
      /** How much longer it is than wanted; negative where it is too short. */
      readonly differsMm?: number;
      readonly toBuy: number;
      /** The narrowest of its openings, as a stop. */
      readonly narrowest?: SheetStop;
    }
  | { readonly state: 'none'; readonly why: string; readonly wouldDo: string }
  | { readonly state: 'unknown'; readonly why: string; readonly path: string }
  | { readonly state: 'nothing'; readonly why: string };

export interface BuildSheet {
  readonly parts: readonly SheetPart[];
  readonly front: SheetRun;
  readonly back: SheetRun;
  /** Which side of the relay faces the objective, by its thread. */
  readonly side?: string;
  /** The tube between the least and the greatest that the inputs leave possible. */
  readonly tubeMm?: { readonly value: number; readonly low: number; readonly high: number };
}

type Built = { readonly run: SheetRun; readonly parts: readonly SheetPart[] };

const HALF_WALL = 1;
const tidy = (x: number): number => Number(x.toFixed(6));

const intervalOf = (answer: Answer, by: number): Wanted | undefined =>
  answer.state === 'known'
    ? { value: answer.value + by, low: (answer.low ?? answer.value) + by, high: (answer.high ?? answer.value) + by }
    : undefined;

/** The parts list of a pairing on the table, with the rings that join its parts. */
export function buildSheet({ pairing, answers }: TableEvaluation, ask: BuildAsk = {}): BuildSheet {
  const { objective, relay } = pairing;
  const box: Box = {
    rings: [...(ask.adapters ?? []).map(adapterOf), ...(ask.ownedOnly ? [] : COMMON_RINGS)].filter((p) => p.owned || !ask.ownedOnly),
    tubes: [...(ask.tubes ?? []).map(tubeOf), ...(ask.ownedOnly ? [] : COMMON_TUBES)],
    preferOwned: ask.preferOwned ?? false,
  };
  const space = amount(pairing.infinitySpaceMm);
  const camera = cameraEnd(ask);
  const [shoulder, front, rear] = [objectiveEnd(objective), relayFront(relay, ask), relayRear(relay, ask)];
  const between = built(shoulder, front, { value: space, low: space, high: space }, box, (from, to) => ({
    fromShoulderMm: tidy((from + to) / 2),
  }));
  const offset = amount(pairing.sensorOffsetMm ?? DEFAULTS.sensorOffsetMm);
  const seat = camera.fromSensorMm;
  const wanted = seat === undefined ? undefined : intervalOf(answers.focusBehindRelayMm, offset - seat);
  const behind: Built =
    relay.kind === 'camera-lens' && !ask.relayRear
      ? { run: { state: 'nothing', why: CARRIES_ITS_OWN }, parts: [] }
      : built(rear, { end: camera.end }, wanted, box, (from, to, length) => {
          const fromSensorMm = (seat ?? Number.NaN) + length - (from + to) / 2;
          return fromSensorMm >= 0 ? { fromSensorMm: tidy(fromSensorMm) } : undefined;
        });
  const barrel = numberIn(answers.barrelLengthMm);
  const side = sideWords(relay);
  const tube = intervalOf(answers.tubeLengthMm, 0);
  const remarks = [...new Set([side, ...[front, rear].flatMap((e) => ('end' in e && e.remark ? [e.remark] : []))].filter(Boolean))];
  const parts: SheetPart[] = [
    {
      what: objective.name ?? `objective ${short(amount(objective.magnification))}x/${short(amount(objective.na))}`,
      role: 'objective',
      ...('end' in shoulder ? { rear: endWords(shoulder.end) } : {}),
      ...(barrel === undefined ? {} : { lengthMm: barrel }),
      standing: 'in the pairing',
    },
    ...between.parts,
    {
      what: relay.name ?? { supplementary: 'close-up lens', 'camera-lens': 'camera lens', 'tube-lens': 'tube lens' }[relay.kind],
      role: 'relay',
      ...('end' in front ? { front: endWords(front.end) } : {}),
      ...('end' in rear ? { rear: endWords(rear.end) } : {}),
      ...(relay.clearApertureMm === undefined ? {} : { clearMm: amount(relay.clearApertureMm) }),
      standing: 'in the pairing',
      ...(remarks.length > 0 ? { remark: remarks.join('; ') } : {}),
    },
    ...behind.parts,
    {
      what: pairing.sensor.name ?? 'camera',
      role: 'camera',
      ...(behind.run.state === 'nothing' ? {} : { front: endWords(camera.end) }),
      standing: 'in the pairing',
      ...(camera.remark && behind.run.state !== 'nothing' ? { remark: camera.remark } : {}),
    },
  ];
  return { parts, front: between.run, back: behind.run, ...(side ? { side } : {}), ...(tube ? { tubeMm: tube } : {}) };
}

type Place = (from: number, to: number, length: number) => Pick<SheetStop, 'fromShoulderMm' | 'fromSensorMm'> | undefined;

function built(from: EndFound, to: EndFound, wanted: Wanted | undefined, box: Box, place: Place): Built {
  for (const end of [from, to]) if ('unknown' in end) return { run: { state: 'unknown', why: end.unknown, path: end.path }, parts: [] };
  const run = runBetween((from as { end: End }).end, (to as { end: End }).end, wanted, box);
  if ('miss' in run) return { run: { state: 'none', why: run.miss, wouldDo: run.wouldDo }, parts: [] };
  const narrowest = narrowestOf(run, place);
  return {
    run: {
      state: 'joined',
      parts: run.links.length,
      lengthMm: tidy(run.lengthMm),
      leastMm: tidy(run.least),
      mostMm: tidy(run.most),
      ...(wanted ? { wantedMm: tidy(wanted.value), differsMm: tidy(run.lengthMm - wanted.value) } : {}),
      toBuy: run.toBuy,
      ...(narrowest ? { narrowest } : {}),
    },
    parts: partsOf(run),
  };
}

/** As long as each piece is set: a focusing tube takes up what the others leave. */
const set = (run: Run): readonly number[] =>
  run.links.map(({ piece }) => piece.lengthMm + ('reachMm' in piece && piece.reachMm !== 0 ? run.lengthMm - run.least : 0));

/** A female thread's wall stands so much outside of it, mm. */
const OUTER_WALL = 1.5;
const acrossOf = ({ thread, sex }: End): number => thread.diameterMm + (sex === 'female' ? 2 * OUTER_WALL : 0);

function partsOf(run: Run): SheetPart[] {
  const lengths = set(run);
  return run.links.map(({ piece, front, rear }, i) => {
    const reach = 'reachMm' in piece ? (piece.reachMm as number) : 0;
    const remarks = [
      reach > 0 ? `turns from ${short(piece.lengthMm)} to ${short(piece.lengthMm + reach)} mm` : '',
      piece.lengthKnown ? '' : 'length taken as usual: measure it',
      piece.clearKnown ? '' : 'opening taken from its threads',
    ].filter(Boolean);
    return {
      what: piece.name,
      role: 'reachMm' in piece ? 'tube' : 'ring',
      front: endWords(front),
      rear: endWords(rear),
      lengthMm: tidy(lengths[i] as number),
      clearMm: tidy(piece.clearMm),
      acrossMm: tidy(Math.max(...piece.ends.map(acrossOf))),
      standing: piece.owned ? 'owned' : 'to buy',
      ...(remarks.length > 0 ? { remark: remarks.join('; ') } : {}),
    };
  });
}

function narrowestOf(run: Run, place: Place): SheetStop | undefined {
  const lengths = set(run);
  let at = 0;
  let found: { clear: number; stop: SheetStop } | undefined;
  run.links.forEach(({ piece }, i) => {
    const to = at + (lengths[i] as number);
    const stands = place(at, to, run.lengthMm);
    if (stands && (!found || piece.clearMm < found.clear)) {
      const value = tidy(piece.clearMm);
      const diameterMm = piece.clearKnown ? value : { value, plusMinus: HALF_WALL, origin: 'assumed' as const };
      found = { clear: piece.clearMm, stop: { label: piece.name.slice(0, 120), diameterMm, ...stands } };
    }
    at = to;
  });
  return found?.stop;
}
