import { describe, expect, it } from 'vitest';
import { amount, pairingSchema } from '../../../../core/index.ts';
import { type BuildAsk, buildSheet, KNOWN_THREADS, readThread, type SheetPart } from '../../../../core/table.ts';
import { random } from '../../../support/random.ts';
import { fullPairing } from '../../support/full-pairing.ts';
import { OPENING, says, sheetOf, withRelay, worked } from './on-the-table.ts';

/** Every neighbour in the list goes into the next: read again from the words of the list. */
function expectScrewed(parts: readonly SheetPart[]): number {
  let joints = 0;
  parts.slice(1).forEach(({ front }, i) => {
    const rear = parts[i]?.rear;
    if (rear === undefined || front === undefined) return;
    const [a, b] = [rear, front].map((text) => readThread(text));
    if (!a || !b || 'fault' in a || 'fault' in b) throw new Error(`${rear}, ${front}`);
    expect([a.sex, b.sex].sort()).toEqual(['female', 'male']);
    expect([b.thread.diameterMm, b.thread.pitchMm, b.thread.angleDeg]).toEqual([a.thread.diameterMm, a.thread.pitchMm, a.thread.angleDeg]);
    joints++;
  });
  return joints;
}

describe('the parts list', () => {
  it('joins every part to the next, and is as long as it says, over whatever threads parts have', () => {
    const r = random(74_001);
    const texts = KNOWN_THREADS.map(({ label }) => label);
    let joints = 0;
    const states = new Set<string>();
    for (let i = 0; i < 14; i++) {
      const { objective, relay, ...rest } = fullPairing(r);
      const pairing = pairingSchema.parse({
        ...rest,
        objective: { ...objective, mountThread: r.oneOf(['RMS', 'M25', 'M26 x 36 TPI', 'M27', 'M32', r.oneOf(texts)]) },
        relay: {
          ...relay,
          maleThread: r.oneOf(['49', '52', '58', '67', r.oneOf(texts)]),
          ...(r.chance(0.2) ? { femaleThread: r.oneOf(texts) } : {}),
          reversed: r.chance(0.5),
          ...(r.chance(0.2) ? { maleThread: undefined, femaleThread: undefined } : {}),
        },
      });
      const { parts, front, back } = sheetOf(
        pairing,
        r.chance(0.5) ? { camera: { thread: r.oneOf(['C', 'M42 x 1', '58']), sex: r.oneOf(['male', 'female'] as const) } } : {},
      );
      const at = parts.findIndex(({ role }) => role === 'relay');
      const ring = parts.findLastIndex(({ role }) => role === 'mount');
      const long = (some: readonly SheetPart[]): number => some.reduce((sum, { lengthMm = 0 }) => sum + lengthMm, 0);
      states.add(front.state).add(back.state);
      if (front.state === 'joined') {
        joints += expectScrewed(parts.slice(0, at + 1));
        expect(long(parts.slice(1, at))).toBeCloseTo(front.lengthMm, 5);
        expect(front.differsMm).toBeCloseTo(front.lengthMm - amount(pairing.infinitySpaceMm), 5);
      }
      if (back.state === 'joined') {
        joints += expectScrewed(parts.slice(at, ring + 1));
        expect(long(parts.slice(at + 1, ring))).toBeCloseTo(back.lengthMm, 5);
        expect(back.lengthMm).toBeGreaterThanOrEqual(back.leastMm - 1e-6);
        expect(back.lengthMm).toBeLessThanOrEqual(back.mostMm + 1e-6);
      }
    }
    expect(joints).toBeGreaterThan(30);
    expect([...states].sort()).toEqual(['joined', 'none', 'nothing', 'unknown']);
  });

  it('leads from the objective to the camera, each piece as long as it is set', () => {
    const { parts, front, back, tubeMm } = sheetOf(OPENING);
    expect(parts.map(({ role }) => role)).toEqual([
      'objective',
      'ring',
      'tube',
      'tube',
      'tube',
      'ring',
      'ring',
      'relay',
      'ring',
      'tube',
      'tube',
      'tube',
      'ring',
      'mount',
      'camera',
    ]);
    // 200 mm of focal length less 15 of mount, and the seat of a T ring 55 mm before the sensor.
    expect(front).toMatchObject({ state: 'joined', wantedMm: 60, differsMm: -2, toBuy: 6 });
    // The infinity space is nothing to focus with.
    expect(parts.slice(1, 7).every(({ remark }) => remark === undefined)).toBe(true);
    expect(back).toMatchObject({ state: 'joined', wantedMm: 130, differsMm: 0, toBuy: 5 });
    expect(parts.at(-2)).toMatchObject({ what: 'ring on the camera, its mount to female M42 x 0.75', lengthMm: 55 - 31.5 });
    expect(tubeMm?.value).toBeCloseTo(200 - 15 - 31.5, 9);
  });

  it('has the rings end where the sensor would be, whatever the camera ends in', () => {
    for (const [thread, seat] of [
      ['T', 55],
      ['C', 17.526],
      ['M42 x 1', 45.46],
    ] as const) {
      const { back } = sheetOf(OPENING, { camera: { thread } });
      expect(back).toMatchObject({ state: 'joined', wantedMm: 185 - seat });
    }
    const own = sheetOf(OPENING, { camera: { thread: '58', fromSensorMm: 40 } });
    expect(own.back).toMatchObject({ wantedMm: 145 });
    // A seat that nobody knows: the rings are told, their length is not judged.
    const unknown = sheetOf(OPENING, { camera: { thread: '58' } }).back;
    expect(unknown).toMatchObject({ state: 'joined' });
    expect(unknown).not.toHaveProperty('wantedMm');
  });

  it('puts the narrowest ring where it stands, as a stop that the pairing takes', () => {
    const wide = {
      ends: [
        { thread: 'M25', sex: 'female' },
        { thread: 'M42 x 1', sex: 'male' },
      ],
      lengthMm: 5,
      clearMm: 21,
    } as const;
    const { front, back } = sheetOf(OPENING, { adapters: [{ ...wide, ends: [...wide.ends] }], preferOwned: true });
    if (front.state !== 'joined' || back.state !== 'joined') throw new Error('not joined');
    expect(front.narrowest).toMatchObject({ diameterMm: 21, fromShoulderMm: 2.5 });
    // The reversing ring on the relay: 185 mm before the sensor in focus, and half its length nearer.
    expect(back.narrowest?.fromSensorMm).toBeCloseTo(185 - 1.5, 6);
    const stops = [front.narrowest, back.narrowest];
    expect(pairingSchema.safeParse({ ...OPENING, stops }).error).toBeUndefined();
  });

  it('tells which side faces the objective by the thread, as the advice on glass does', () => {
    expect(sheetOf(OPENING).side).toBe('male thread toward the objective');
    const turned = sheetOf(withRelay({ reversed: true }));
    expect(turned.side).toBe('male thread toward the camera');
    const relay = (parts: readonly SheetPart[]) => parts.find(({ role }) => role === 'relay');
    expect(relay(turned.parts)).toMatchObject({ front: 'female M58 x 0.75', rear: 'male M58 x 0.75' });
    expect(relay(sheetOf(withRelay({ femaleThread: '62' })).parts)).toMatchObject({ front: 'male M58 x 0.75', rear: 'female M62 x 0.75' });
    // The straight way takes a coupling ring more.
    expect(sheetOf(OPENING).piecesTurned).toBe(9);
    expect(turned.piecesTurned).toBeUndefined();
  });

  it('builds nothing behind a camera lens, and asks for a thread that is missing or means two', () => {
    const lens = pairingSchema.parse({ ...OPENING, relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, femaleThread: '58' } });
    const { parts, front, back } = sheetOf(lens);
    expect(back.state).toBe('nothing');
    expect(front.state).toBe('joined');
    expect(parts.at(-1)?.role).toBe('camera');
    expect(sheetOf({ ...OPENING, objective: { ...OPENING.objective, mountThread: 'M26' } }).front).toMatchObject({
      state: 'unknown',
      path: '/objective/mountThread',
      why: expect.stringMatching(/M26 x 36 TPI or M26 x 0.75, which do not screw together/),
    });
    const { maleThread: _, ...bare } = OPENING.relay;
    expect(sheetOf({ ...OPENING, relay: bare }).back).toMatchObject({ state: 'unknown', path: '/relay/femaleThread' });
  });

  it('uses a tube that is owned once on one side of the relay only', () => {
    // In front two rings of 3 mm and a tube of 51, behind one ring and a tube of 51.
    const pairing = withRelay({ powerDioptre: { value: 5, origin: 'measured' }, backFocalLengthMm: 187, reversed: true });
    const sheet = (count: number) =>
      buildSheet(worked({ ...pairing, infinitySpaceMm: 57 }, { seatBehindGlassMm: 2 }), {
        tubes: Array.from({ length: count }, () => ({ thread: 'M42 x 1', lengthMm: 51 })),
        camera: { thread: 'M42 x 1', fromSensorMm: 131 },
        preferOwned: true,
      });
    const owned = (count: number) => sheet(count).parts.filter(({ role, standing }) => role === 'tube' && standing === 'owned').length;
    expect(sheet(2)).toMatchObject({ front: { lengthMm: 57, differsMm: 0 }, back: { lengthMm: 54, differsMm: 0 } });
    expect([owned(0), owned(1), owned(2), owned(3)]).toEqual([0, 1, 2, 2]);
  });

  it('keeps to what is owned where it has to, and tells by how much that is too short', () => {
    const adapters: BuildAsk['adapters'] = [
      {
        ends: [
          { thread: 'M25', sex: 'female' },
          { thread: '58', sex: 'female' },
        ],
        lengthMm: 4,
      },
    ];
    const { front, back } = sheetOf(OPENING, { adapters, ownedOnly: true });
    expect(front).toMatchObject({ state: 'joined', toBuy: 0, lengthMm: 4, differsMm: -56 });
    expect(back).toMatchObject({ state: 'none', wouldDo: 'a ring with male M58 x 0.75 on one side and male M42 x 0.75 on the other' });
  });
});

describe('a gap', () => {
  it('keeps the owned pieces that go on from either side, and names the ring between them', () => {
    const ask: BuildAsk = {
      adapters: [
        {
          ends: [
            { thread: 'M25', sex: 'female' },
            { thread: 'M42 x 1', sex: 'male' },
          ],
        },
        {
          ends: [
            { thread: '58', sex: 'female' },
            { thread: '52', sex: 'male' },
          ],
        },
      ],
      tubes: [{ thread: 'M42 x 1', lengthMm: 28 }],
      ownedOnly: true,
    };
    const { parts, front } = sheetOf(OPENING, ask);
    const wouldDo = 'a ring with female M42 x 1 on one side and female M52 x 0.75 on the other';
    expect(front).toMatchObject({ state: 'none', wouldDo, kept: 3 });
    expect(parts.slice(0, 6).map(({ role }) => role)).toEqual(['objective', 'ring', 'tube', 'missing', 'ring', 'relay']);
    // Either side of it is screwed, and the ring told would close it.
    const at = parts.findIndex(({ role }) => role === 'missing');
    const between = { what: wouldDo, role: 'ring', standing: 'to buy', front: 'female M42 x 1', rear: 'female M52 x 0.75' } as const;
    expect(expectScrewed([...parts.slice(0, at), between, ...parts.slice(at + 1, 6)])).toBe(5);
    expect(says(OPENING, ask)).toMatch(/3 pieces go on, and a ring with female M42 x 1 .* is missing/);
  });

  it('takes a lone male thread of a camera lens for its filter thread', () => {
    const lens = pairingSchema.parse({ ...OPENING, relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, maleThread: '58' } });
    const { parts, front } = sheetOf(lens);
    expect(front.state).toBe('joined');
    expect(parts.find(({ role }) => role === 'relay')).toMatchObject({
      front: 'female M58 x 0.75',
      remark: expect.stringMatching(/filter thread/),
    });
  });
});
