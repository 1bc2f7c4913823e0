import { describe, expect, it } from 'vitest';
import type { TableEvaluation } from '../../../../core/table/evaluate.ts';
import { type BuildAsk, buildSheet } from '../../../../core/table.ts';

/** Sheets of made-up answers and boxes of which all is known, each choice with its reason. */

const known = (value: number) => ({ state: 'known', unit: 'mm', value, origin: 'marked' });
const UNKNOWN = { state: 'unknown', unit: 'mm', missing: ['/relay/focalLengthMm'] };

interface Case {
  relay?: object;
  sensor?: object;
  space?: number;
  offset?: number;
  answers?: Record<string, object>;
}
function sheetOf({ relay = {}, sensor = {}, space = 20, offset, answers = {} }: Case, ask: BuildAsk) {
  const evaluation = {
    pairing: {
      objective: { magnification: 10, na: 0.25, mountThread: 'M25' },
      relay: { kind: 'supplementary', maleThread: '58', ...relay },
      sensor,
      infinitySpaceMm: space,
      ...(offset === undefined ? {} : { sensorOffsetMm: offset }),
    },
    answers: { focusBehindRelayMm: known(100), tubeLengthMm: known(70), barrelLengthMm: UNKNOWN, ...answers },
    inputs: [],
  };
  return buildSheet(evaluation as unknown as TableEvaluation, ask);
}

type Ring = NonNullable<BuildAsk['adapters']>[number];
const ring = (a: string, sexA: 'male' | 'female', b: string, sexB: 'male' | 'female', lengthMm = 5): Ring => ({
  ends: [
    { thread: a, sex: sexA },
    { thread: b, sex: sexB },
  ],
  lengthMm,
});
const PLATE = ring('M25', 'female', 'M42 x 1', 'male');
/** The relay takes tubes of M42 on either side, and so does the camera. */
const TUBED = { relayFront: { thread: 'M42 x 1', sex: 'female' }, relayRear: { thread: 'M42 x 1', sex: 'female' } } as const;
const CAMERA = { thread: 'M42 x 1', sex: 'male', fromSensorMm: 46 } as const;
const MATING = { thread: 'M25', sex: 'female' } as const;
const DOUBLE = ring('M42 x 1', 'male', 'M42 x 1', 'male', 0);
const tube = (lengthMm: number, reachMm = 0) => ({ thread: 'M42 x 1', lengthMm, reachMm });
const OWN: BuildAsk = { ...TUBED, camera: CAMERA, ownedOnly: true };

describe('the space before the relay', () => {
  it('is built to within 2 mm', () => {
    const box = { ...OWN, adapters: [PLATE], tubes: [tube(10), tube(2.5)] };
    expect(sheetOf({ space: 17 }, box).front).toMatchObject({ parts: 2, lengthMm: 15 });
    expect(sheetOf({ space: 17.5 }, box).front).toMatchObject({ parts: 3, lengthMm: 17.5 });
  });

  it('is of plain tubes, but before a camera lens that carries its own of a focusing one that is owned', () => {
    const box = { ...OWN, adapters: [PLATE], tubes: [tube(12, 10)] };
    expect(sheetOf({ space: 22 }, box).front).toMatchObject({ lengthMm: 5 });
    const { relayRear: _, ...bare } = box;
    expect(sheetOf({ space: 22, relay: { kind: 'camera-lens' } }, bare).front).toMatchObject({ lengthMm: 22, mostMm: 27 });
    // One that would have to be bought is not: 36 to 90 mm of it would do.
    const bought = sheetOf({ space: 61, relay: { kind: 'camera-lens' } }, { ...bare, ownedOnly: false, tubes: [] });
    expect(bought.parts.filter(({ remark }) => remark?.startsWith('turns'))).toEqual([]);
    expect(bought.front).toMatchObject({ lengthMm: 61, toBuy: 2 });
  });
});

describe('what is wanted behind the relay', () => {
  /** Nothing is needed before the relay. */
  const box = { ...OWN, relayFront: MATING, adapters: [DOUBLE] } satisfies BuildAsk;
  it('is what the focus leaves to the seat on the camera, less a sensor that stands nearer', () => {
    expect(sheetOf({}, box).back).toMatchObject({ wantedMm: 54, wantedLowMm: 54, wantedHighMm: 54 });
    expect(sheetOf({ offset: 1.5 }, box).back).toMatchObject({ wantedMm: 55.5 });
    const wide = { ...known(100), low: 97, high: 104 };
    expect(sheetOf({ answers: { focusBehindRelayMm: wide } }, box).back).toMatchObject({ wantedLowMm: 51, wantedHighMm: 58 });
  });
  it('is not told where the focus or the seat is not known, nor where a ring of it would stand', () => {
    expect(sheetOf({ answers: { focusBehindRelayMm: UNKNOWN } }, box).back).not.toHaveProperty('wantedMm');
    const { back } = sheetOf({}, { ...box, adapters: [ring('M42 x 1', 'male', '58', 'male')], camera: { thread: '58' } });
    expect(back).toMatchObject({ state: 'joined', parts: 1 });
    expect(back).not.toHaveProperty('wantedMm');
    expect(back).not.toHaveProperty('narrowest');
  });
  it('may stand on the sensor itself', () => {
    const at = (fromSensorMm: number) => {
      const { back } = sheetOf({}, { ...box, camera: { ...CAMERA, sex: 'female', fromSensorMm } });
      return back.state === 'joined' ? back.narrowest?.fromSensorMm : undefined;
    };
    expect([at(0), at(0.5)]).toEqual([0, 0.5]);
  });
});

describe('the parts', () => {
  const roles = (one: Case, ask: BuildAsk) => sheetOf(one, ask).parts.map(({ role }) => role);
  it('end with the ring on the camera, owned where it was told, and the camera by its name', () => {
    const box = { ...OWN, adapters: [PLATE, DOUBLE] };
    const { parts } = sheetOf({ sensor: { name: 'mine' } }, box);
    expect(parts.slice(-2)).toMatchObject([
      { role: 'mount', standing: 'owned' },
      { what: 'mine', role: 'camera' },
    ]);
    const { camera: _, ...untold } = box;
    expect(sheetOf({}, untold).parts.slice(-2)).toMatchObject([{ role: 'mount', standing: 'to buy' }, { what: 'camera' }]);
  });
  it('have no ring on the camera behind a camera lens, unless its rear is told', () => {
    const lens = { relay: { kind: 'camera-lens', femaleThread: '58', maleThread: undefined } };
    expect(roles(lens, { ownedOnly: true })).toEqual(['objective', 'missing', 'relay', 'camera']);
    expect(sheetOf(lens, { ownedOnly: true }).back.state).toBe('nothing');
    const told = sheetOf(lens, { ...OWN, relayFront: MATING, adapters: [DOUBLE], camera: { ...CAMERA, sex: 'female' } });
    expect([told.back.state, told.parts.at(-2)?.role]).toEqual(['joined', 'mount']);
  });
  it('are what is owned, where nothing is to be bought; and that before fewer where it is preferred', () => {
    expect(sheetOf({}, { ...OWN, adapters: [{ ...PLATE, owned: false }] }).front.state).toBe('none');
    expect(sheetOf({}, { ...OWN, ownedOnly: false, adapters: [{ ...PLATE, owned: false }] }).front.state).toBe('joined');
    const many = { ...TUBED, camera: CAMERA, adapters: [ring('M25', 'female', 'M32', 'male'), ring('M32', 'female', 'M42 x 1', 'male')] };
    const front = (more: object) => sheetOf({ space: 5 }, { ...many, ...more }).front;
    expect(front({})).toMatchObject({ parts: 1, toBuy: 1 });
    expect(front({ preferOwned: false })).toMatchObject({ parts: 1, toBuy: 1 });
    expect(front({ preferOwned: true })).toMatchObject({ toBuy: 0 });
  });
  it('tell side and tube where they are known', () => {
    const told = sheetOf({}, {});
    expect(told).toMatchObject({ side: 'male thread toward the objective', tubeMm: { value: 70, low: 70, high: 70 } });
    const bare = sheetOf({ relay: { maleThread: undefined }, answers: { tubeLengthMm: UNKNOWN } }, {});
    expect(bare).not.toHaveProperty('side');
    expect(bare).not.toHaveProperty('tubeMm');
  });
});

describe('a relay turned round', () => {
  /** The male end fits the camera's ring by two pieces, the female one the objective by one; the other way it takes three and two. */
  const box: BuildAsk = {
    ownedOnly: true,
    camera: { thread: '58', sex: 'female', fromSensorMm: 100 },
    adapters: [
      ring('M25', 'female', '58', 'male'),
      ring('M25', 'female', '52', 'male'),
      ring('52', 'female', '58', 'female'),
      ring('58', 'male', '58', 'male'),
    ],
  };
  const turned = (relay: object, more: object = {}) => sheetOf({ relay, space: 5 }, { ...box, ...more });

  it('is told where it takes fewer pieces, whichever way it stands', () => {
    // Straight: two rings before it and one behind. Turned: one before it, and none behind.
    const straight = turned({});
    expect([straight.front, straight.back]).toMatchObject([{ parts: 2 }, { parts: 1 }]);
    expect(straight.piecesTurned).toBe(1);
    const reversed = turned({ reversed: true });
    expect([reversed.front, reversed.back]).toMatchObject([{ parts: 1 }, { parts: 0 }]);
    expect(reversed).not.toHaveProperty('piecesTurned');
    expect(turned({ reversed: true }, { camera: { ...box.camera, sex: 'male' } })).not.toHaveProperty('piecesTurned');
  });

  it('is told of a relay that stands turned round, too', () => {
    const other = {
      ...box,
      adapters: [ring('M25', 'female', '58', 'female'), ring('M25', 'female', '52', 'male'), ring('52', 'female', '58', 'male')],
    };
    const camera = { thread: '58', sex: 'male', fromSensorMm: 100 } as const;
    const doubled = { ...other, camera, adapters: [...(other.adapters ?? []), ring('58', 'female', '58', 'female')] };
    const found = turned({ reversed: true }, doubled);
    expect([found.front, found.back]).toMatchObject([{ parts: 2 }, { parts: 1 }]);
    expect(found.piecesTurned).toBe(1);
  });

  it('is not told where it takes as many, where it cannot be joined so, or where the ends are told', () => {
    const even = turned(
      {},
      { adapters: [ring('M25', 'female', '58', 'male'), ring('M25', 'female', '58', 'female')], camera: undefined, relayRear: undefined },
    );
    expect(even).not.toHaveProperty('piecesTurned');
    const alike = turned(
      {},
      {
        adapters: [
          ring('M25', 'female', '58', 'male'),
          ring('M25', 'female', '58', 'female'),
          ring('58', 'male', '52', 'male'),
          ring('58', 'female', '52', 'male'),
        ],
        camera: { thread: '52', sex: 'female', fromSensorMm: 100 },
      },
    );
    expect([alike.front, alike.back]).toMatchObject([{ parts: 1 }, { parts: 1 }]);
    expect(alike).not.toHaveProperty('piecesTurned');
    const end = { thread: '58', sex: 'female' } as const;
    expect(turned({}, { relayFront: { ...end, sex: 'male' } })).not.toHaveProperty('piecesTurned');
    expect(turned({}, { relayRear: end })).not.toHaveProperty('piecesTurned');
    // Nothing behind it fits the way it stands.
    expect(turned({}, { adapters: (box.adapters as Ring[]).slice(0, 3) })).not.toHaveProperty('piecesTurned');
    expect(turned({}, { adapters: (box.adapters as Ring[]).slice(1) })).not.toHaveProperty('piecesTurned');
  });
});
