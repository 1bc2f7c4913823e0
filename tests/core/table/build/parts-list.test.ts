import { describe, expect, it } from 'vitest';
import { asListed, cameraRing, objectivePart, partsOf, relayPart, tidy } from '../../../../core/table/build/parts-list.ts';
import { adapterOf, type Piece, type Tube, tubeOf } from '../../../../core/table/threads/adapter.ts';
import { filterThread, M25, M42_FINE } from '../../../../core/table/threads/known.ts';
import type { End, Sex, Thread } from '../../../../core/table/threads/thread.ts';

const end = (thread: Thread, sex: Sex): End => ({ thread, sex });
const found = (thread: Thread, sex: Sex, remark?: string) => ({ end: end(thread, sex), ...(remark ? { remark } : {}) });
const UNKNOWN = { unknown: 'its thread is not told', path: '/relay' };
const link = (piece: Piece) => ({ piece, front: piece.ends[0], rear: piece.ends[1] });

it('tells lengths to a millionth', () => {
  expect(tidy(1.2345678)).toBe(1.234568);
  expect(tidy(0.1 + 0.2)).toBe(0.3);
});

describe('the objective in the list', () => {
  const objective = { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 };
  it('goes by its name, or by what is engraved', () => {
    expect(objectivePart(objective, UNKNOWN, undefined)).toStrictEqual({
      what: 'objective 10x/0.25',
      role: 'objective',
      standing: 'in the pairing',
    });
    expect(objectivePart({ ...objective, name: 'mine' }, found(M25, 'male'), 35)).toStrictEqual({
      what: 'mine',
      role: 'objective',
      rear: 'male M25 x 0.75',
      lengthMm: 35,
      standing: 'in the pairing',
    });
  });
});

describe('the relay in the list', () => {
  const [M58, M52] = [filterThread(58), filterThread(52)];
  it('goes by its name or its kind, with what is known of it alone', () => {
    expect(relayPart({ kind: 'supplementary' }, UNKNOWN, UNKNOWN, undefined)).toStrictEqual({
      what: 'close-up lens',
      role: 'relay',
      standing: 'in the pairing',
    });
    expect(
      relayPart({ kind: 'tube-lens', name: 'mine', clearApertureMm: { value: 40 } }, found(M58, 'male'), found(M52, 'female'), 'side'),
    ).toStrictEqual({
      what: 'mine',
      role: 'relay',
      front: 'male M58 x 0.75',
      rear: 'female M52 x 0.75',
      clearMm: 40,
      standing: 'in the pairing',
      remark: 'side',
    });
  });
  it('says what is remarked of either end, the same once', () => {
    const remark = (a: string | undefined, b: string | undefined, side?: string) =>
      relayPart({ kind: 'tube-lens' }, found(M58, 'male', a), found(M52, 'female', b), side).remark;
    expect(remark('one', 'two', 'side')).toBe('side; one; two');
    expect(remark('one', 'one')).toBe('one');
    expect(remark(undefined, 'two')).toBe('two');
    expect(relayPart({ kind: 'tube-lens' }, UNKNOWN, found(M52, 'female', 'two'), undefined).remark).toBe('two');
  });
});

describe('the ring on the camera', () => {
  const register = (value: number, origin = 'marked') => ({ value, origin }) as unknown as Parameters<typeof cameraRing>[1];
  const camera = (fromSensorMm: number | undefined, remark?: string) => ({
    end: end(M42_FINE, 'female' as const),
    fromSensorMm,
    ...(remark ? { remark } : {}),
  });

  it('fills what lies between the flange and the seat of its thread', () => {
    // 42 mm less 2 x 5/8 x 0.866 of the pitch of 0.75 mm are open; a wall of 1.5 mm stands all round.
    expect(cameraRing(camera(55), register(18), true)).toStrictEqual({
      what: 'ring on the camera, its mount to female M42 x 0.75',
      role: 'mount',
      front: 'female M42 x 0.75',
      clearMm: 41.188101,
      acrossMm: 45,
      supposed: ['clearMm'],
      lengthMm: 37,
      standing: 'owned',
    });
    expect(cameraRing(camera(55, 'usual'), register(18, 'assumed'), false)).toMatchObject({
      supposed: ['clearMm', 'lengthMm'],
      lengthMm: 37,
      standing: 'to buy',
      remark: 'usual',
    });
  });

  it('may be of no length, and is another where the seat would lie inside the camera', () => {
    const flush = cameraRing(camera(18, 'usual'), register(18), true);
    expect(flush).toMatchObject({ lengthMm: 0, remark: 'usual' });
    const short = cameraRing(camera(17.5, 'usual'), register(18), true);
    expect(short).not.toHaveProperty('lengthMm');
    expect(short.remark).toMatch(/inside this camera/);
    expect(cameraRing(camera(18.5), register(18), true)).toMatchObject({ lengthMm: 0.5 });
  });

  it('is of unknown length where seat or register is not known', () => {
    for (const ring of [cameraRing(camera(undefined, 'usual'), register(18), true), cameraRing(camera(55, 'usual'), undefined, true)]) {
      expect(ring).not.toHaveProperty('lengthMm');
      expect(ring.remark).toBe('usual');
    }
    expect(cameraRing(camera(undefined), undefined, true)).not.toHaveProperty('remark');
  });
});

describe('a piece in the list', () => {
  const ring = (more: object, sexes: readonly [Sex, Sex] = ['female', 'male']) =>
    asListed(
      link(
        adapterOf({
          ends: [
            { thread: 'M25', sex: sexes[0] },
            { thread: 'M42 x 1', sex: sexes[1] },
          ],
          ...more,
        }),
      ),
    );

  it('tells which of its numbers are taken as usual', () => {
    expect(ring({ name: 'mine', lengthMm: 5, clearMm: 21 })).toStrictEqual({
      what: 'mine',
      role: 'ring',
      front: 'female M25 x 0.75',
      rear: 'male M42 x 1',
      lengthMm: 5,
      clearMm: 21,
      acrossMm: 42,
      standing: 'owned',
    });
    expect(ring({ lengthMm: 5 }).supposed).toEqual(['clearMm']);
    expect(ring({ clearMm: 21 }).supposed).toEqual(['lengthMm']);
    expect(ring({}).supposed).toEqual(['lengthMm', 'clearMm']);
    expect(ring({ owned: false }).standing).toBe('to buy');
  });

  it('is as wide outside as its wider end, a female one with its wall', () => {
    expect(ring({}, ['male', 'male']).acrossMm).toBe(42);
    expect(ring({}, ['male', 'female']).acrossMm).toBe(45);
    const near = adapterOf({
      ends: [
        { thread: 'M25', sex: 'female' },
        { thread: 'M27', sex: 'male' },
      ],
    });
    // 25 + 2 x 1.5 is wider than 27.
    expect(asListed(link(near)).acrossMm).toBe(28);
  });

  it('tells how far a focusing tube turns, and nothing of a plain one', () => {
    expect(asListed(link(tubeOf({ thread: 'M42 x 1', lengthMm: 17, reachMm: 14 })))).toMatchObject({
      role: 'tube',
      lengthMm: 17,
      remark: 'turns from 17 to 31 mm',
    });
    expect(asListed(link(tubeOf({ thread: 'M42 x 1', lengthMm: 17, reachMm: 0.5 }))).remark).toBe('turns from 17 to 17.5 mm');
    expect(asListed(link(tubeOf({ thread: 'M42 x 1', lengthMm: 17 })))).not.toHaveProperty('remark');
  });

  it('gives what is left of the length to the focusing tube', () => {
    const [plain, turning]: Tube[] = [
      tubeOf({ thread: 'M42 x 1', lengthMm: 28 }),
      tubeOf({ thread: 'M42 x 1', lengthMm: 17, reachMm: 14 }),
    ];
    const plate = adapterOf({
      ends: [
        { thread: 'M25', sex: 'female' },
        { thread: 'M42 x 1', sex: 'male' },
      ],
      lengthMm: 5,
    });
    const links = [plate, plain as Tube, turning as Tube].map(link);
    expect(partsOf({ links, lengthMm: 56.5, least: 50, most: 64, toBuy: 0 }).map(({ lengthMm }) => lengthMm)).toEqual([5, 28, 23.5]);
  });
});
