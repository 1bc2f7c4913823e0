import { type Answer, numberIn } from '../../pairing/answer.ts';
import { DEFAULTS } from '../../pairing/schema.ts';
import { amount } from '../../parts/quantity.ts';
import type { Relay } from '../../parts/relay.ts';
import type { TableEvaluation } from '../evaluate.ts';
import { adapterOf, COMMON_RINGS, COMMON_TUBES, tubeOf } from '../threads/adapter.ts';
import { stockOf } from '../threads/stock.ts';
import type { BuildAsk } from './ask.ts';
import { cameraEnd, objectiveEnd, relayFront, relayRear, sideWords } from './ends.ts';
import { CARRIES_ITS_OWN } from './figures.ts';
import { type Built, built, type SheetRun } from './joined.ts';
import { cameraRing, objectivePart, relayPart, type SheetPart, tidy } from './parts-list.ts';
import type { Box } from './run.ts';
import type { Wanted } from './wanted.ts';

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

/** The infinity space is built of plain tubes, as nearly as this, mm: a focusing tube serves behind the relay. */
const SPACE_WITHIN = 2;
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
  rings: stockOf([...(ask.adapters ?? []).map(adapterOf), ...COMMON_RINGS].filter((p) => p.owned || !ask.ownedOnly)),
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
