import { type Answer, numberIn } from '../../pairing/answer.ts';
import type { Input } from '../../pairing/inputs.ts';
import { DEFAULTS } from '../../pairing/schema.ts';
import type { Objective } from '../../parts/objective.ts';
import { amount, type QuantityInput } from '../../parts/quantity.ts';
import type { Relay } from '../../parts/relay.ts';
import { short } from '../../words.ts';
import type { TableEvaluation } from '../evaluate.ts';
import { adapterOf, COMMON_RINGS, COMMON_TUBES, type Piece, tubeOf } from '../threads/adapter.ts';
import { type Link, stockOf } from '../threads/chain.ts';
import { type End, endWords, minorDiameter } from '../threads/thread.ts';
import type { BuildAsk } from './ask.ts';
import { cameraEnd, type EndFound, objectiveEnd, relayFront, relayRear, sideWords } from './ends.ts';
import { CARRIES_ITS_OWN } from './figures.ts';
import { type Box, gapped, ownedIn, type Run, runBetween } from './run.ts';
import type { Wanted } from './wanted.ts';

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
      /** The least and the greatest that may be wanted. */
      readonly wantedLowMm?: number;
      readonly wantedHighMm?: number;
      /** How much longer it is than wanted; negative where it is too short. */
      readonly differsMm?: number;
      readonly toBuy: number;
      /** The narrowest of its openings, as a stop. */
      readonly narrowest?: SheetStop;
    }
  /** Nothing joins the ends; so many pieces go on all the same. */
  | { readonly state: 'none'; readonly why: string; readonly wouldDo: string; readonly kept: number }
  | { readonly state: 'unknown'; readonly why: string; readonly path: string }
  | { readonly state: 'nothing'; readonly why: string };

export interface BuildSheet {
  readonly parts: readonly SheetPart[];
  readonly front: SheetRun;
  readonly back: SheetRun;
  /** Which side of the relay faces the objective, by its thread. */
  readonly side?: string;
  /** How many pieces it would take with the relay turned round, where that is fewer. */
  readonly piecesTurned?: number;
  /** The tube between the least and the greatest that the inputs leave possible. */
  readonly tubeMm?: { readonly value: number; readonly low: number; readonly high: number };
}

type Built = { readonly run: SheetRun; readonly parts: readonly SheetPart[]; readonly owned: readonly Piece[] };

const HALF_WALL = 1;
/** The infinity space is built of plain tubes, as nearly as this, mm: a focusing tube serves behind the relay. */
const SPACE_WITHIN = 2;
const tidy = (x: number): number => Number(x.toFixed(6));

const intervalOf = (answer: Answer, by: number): Wanted | undefined =>
  answer.state === 'known'
    ? { value: answer.value + by, low: (answer.low ?? answer.value) + by, high: (answer.high ?? answer.value) + by }
    : undefined;

/** The parts list of a pairing on the table, with the rings that join its parts. */
export function buildSheet({ pairing, answers, inputs }: TableEvaluation, ask: BuildAsk = {}): BuildSheet {
  const { objective, relay } = pairing;
  const box = boxOf(ask);
  const space = amount(pairing.infinitySpaceMm);
  const camera = cameraEnd(ask);
  const shoulder = objectiveEnd(objective);
  const seat = camera.fromSensorMm;
  const offset = amount(pairing.sensorOffsetMm ?? DEFAULTS.sensorOffsetMm);
  const wanted = seat === undefined ? undefined : intervalOf(answers.focusBehindRelayMm, offset - seat);
  const bare = relay.kind === 'camera-lens' && !ask.relayRear;

  const both = (standing: Relay): { front: Built; back: Built } => {
    const inFront = { ...box, tubes: box.tubes.filter(({ reachMm, owned }) => reachMm === 0 || (owned && bare)) };
    const front = built(
      shoulder,
      relayFront(standing, ask),
      { value: space, low: space, high: space, within: SPACE_WITHIN },
      inFront,
      (from, to) => ({
        fromShoulderMm: tidy((from + to) / 2),
      }),
    );
    if (bare) return { front, back: { run: { state: 'nothing', why: CARRIES_ITS_OWN }, parts: [], owned: [] } };
    const left = { ...box, taken: new Set(front.owned) };
    const back = built(relayRear(standing, ask), { end: camera.end }, wanted, left, (from, to, length) => {
      const fromSensorMm = (seat ?? Number.NaN) + length - (from + to) / 2;
      return fromSensorMm >= 0 ? { fromSensorMm: tidy(fromSensorMm) } : undefined;
    });
    return { front, back };
  };

  const { front, back } = both(relay);
  const [own, other] = [piecesOf(front, back), bare ? undefined : turnedRound(both, relay, ask)];
  const side = sideWords(relay);
  const tube = intervalOf(answers.tubeLengthMm, 0);
  const register = inputs.find(({ path }) => path === '/sensor/registerMm');
  return {
    parts: [
      objectivePart(objective, shoulder, numberIn(answers.barrelLengthMm)),
      ...front.parts,
      relayPart(relay, relayFront(relay, ask), relayRear(relay, ask), side),
      ...back.parts,
      ...(bare ? [] : [cameraRing(camera, register, ask.camera !== undefined)]),
      { what: pairing.sensor.name ?? 'camera', role: 'camera', standing: 'in the pairing' },
    ],
    front: front.run,
    back: back.run,
    ...(side ? { side } : {}),
    ...(other !== undefined && own !== undefined && other < own ? { piecesTurned: other } : {}),
    ...(tube ? { tubeMm: tube } : {}),
  };
}

const boxOf = (ask: BuildAsk): Box => ({
  rings: stockOf([...(ask.adapters ?? []).map(adapterOf), ...(ask.ownedOnly ? [] : COMMON_RINGS)].filter((p) => p.owned || !ask.ownedOnly)),
  tubes: [...(ask.tubes ?? []).map(tubeOf), ...(ask.ownedOnly ? [] : COMMON_TUBES)],
  taken: new Set(),
  preferOwned: ask.preferOwned ?? false,
});

const piecesOf = ({ run: a }: Built, { run: b }: Built): number | undefined =>
  a.state === 'joined' && b.state === 'joined' ? a.parts + b.parts : undefined;

/** How many pieces it takes with the relay turned round; undefined where its ends are told, or it cannot be joined so. */
function turnedRound(both: (relay: Relay) => { front: Built; back: Built }, relay: Relay, ask: BuildAsk): number | undefined {
  if (ask.relayFront || ask.relayRear) return undefined;
  const { front, back } = both({ ...relay, reversed: !(relay.reversed ?? false) });
  return piecesOf(front, back);
}

function objectivePart({ name, magnification, na }: Objective, shoulder: EndFound, lengthMm: number | undefined): SheetPart {
  return {
    what: name ?? `objective ${short(amount(magnification))}x/${short(amount(na))}`,
    role: 'objective',
    ...('end' in shoulder ? { rear: endWords(shoulder.end) } : {}),
    ...(lengthMm === undefined ? {} : { lengthMm }),
    standing: 'in the pairing',
  };
}

function relayPart({ name, kind, clearApertureMm }: Relay, front: EndFound, rear: EndFound, side: string | undefined): SheetPart {
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
function cameraRing({ end, fromSensorMm, remark }: ReturnType<typeof cameraEnd>, register: Input | undefined, told: boolean): SheetPart {
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

type Place = (from: number, to: number, length: number) => Pick<SheetStop, 'fromShoulderMm' | 'fromSensorMm'> | undefined;

function built(from: EndFound, to: EndFound, wanted: Wanted | undefined, box: Box, place: Place): Built {
  for (const end of [from, to])
    if ('unknown' in end) return { run: { state: 'unknown', why: end.unknown, path: end.path }, parts: [], owned: [] };
  const [a, b] = [(from as { end: End }).end, (to as { end: End }).end];
  const run = runBetween(a, b, wanted, box);
  if ('miss' in run) {
    const { before, after, wouldDo } = gapped(a, b, run, wanted, box);
    return {
      run: { state: 'none', why: run.miss, wouldDo, kept: before.length + after.length },
      parts: [...before.map(asListed), { what: `missing: ${wouldDo}`, role: 'missing', standing: 'missing' }, ...after.map(asListed)],
      owned: ownedIn([...before, ...after]),
    };
  }
  const narrowest = narrowestOf(run, place);
  return {
    run: {
      state: 'joined',
      parts: run.links.length,
      lengthMm: tidy(run.lengthMm),
      leastMm: tidy(run.least),
      mostMm: tidy(run.most),
      ...(wanted
        ? {
            wantedMm: tidy(wanted.value),
            differsMm: tidy(run.lengthMm - wanted.value),
            wantedLowMm: tidy(wanted.low),
            wantedHighMm: tidy(wanted.high),
          }
        : {}),
      toBuy: run.toBuy,
      ...(narrowest ? { narrowest } : {}),
    },
    parts: partsOf(run),
    owned: ownedIn(run.links),
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
  return run.links.map((link, i) => ({ ...asListed(link), lengthMm: tidy(lengths[i] as number) }));
}

/** A piece as it is listed, as short as it can be set. */
function asListed({ piece, front, rear }: Link): SheetPart {
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
