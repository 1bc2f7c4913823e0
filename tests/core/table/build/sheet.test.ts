import { describe, expect, it } from 'vitest';
import { amount, evaluate, numberIn, type Pairing, pairingSchema } from '../../../../core/index.ts';
import { lensOfRelay } from '../../../../core/lens/relay-lens.ts';
import {
  type BuildAsk,
  buildAskSchema,
  buildEffects,
  buildSentence,
  buildSheet,
  darkens,
  evaluateTable,
  KNOWN_THREADS,
  planOf,
  readThread,
  type Settings,
  type SheetPart,
} from '../../../../core/table.ts';
import { cardinal } from '../../../../core/trace/cardinal.ts';
import { prescription } from '../../../../core/trace/prescription.ts';
import opening from '../../../../data/opening.json';
import { random } from '../../../support/random.ts';
import { pairingWith, works } from '../../lens/rigs.ts';
import { fullPairing } from '../../support/full-pairing.ts';
import { fullSettings } from '../full-settings.ts';

/** The group alone: the rest of the table takes many times as long. */
const worked = (pairing: Pairing, settings: Settings, glass?: typeof works) => evaluateTable(pairing, settings, glass, planOf('build'));

const OPENING = pairingSchema.parse(opening.pairing);
const withRelay = (more: object): Pairing => pairingSchema.parse({ ...OPENING, relay: { ...OPENING.relay, ...more } });
const sheetOf = (pairing: Pairing, ask: BuildAsk = {}) => buildSheet(worked(pairing, {}), buildAskSchema.parse(ask));
const says = (pairing: Pairing, ask: BuildAsk = {}, settings: Settings = {}): string => {
  const evaluation = worked(pairing, settings);
  const sheet = buildSheet(evaluation, ask);
  return buildSentence(evaluation, sheet, buildEffects(evaluation, sheet));
};

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

describe('the lengths', () => {
  it('add up along the rig, counted from the subject, the sensor or the flange', () => {
    const r = random(74_002);
    let checked = 0;
    for (let i = 0; i < 60; i++) {
      const pairing = fullPairing(r);
      const settings = fullSettings(r);
      const { answers } = worked(pairing, settings);
      const of = (id: keyof typeof answers): number => numberIn(answers[id]) as number;
      const register = amount(pairing.sensor.registerMm as number);
      expect(of('subjectToSensorMm') - of('subjectFromFlangeMm')).toBeCloseTo(register, 8);
      if (answers.tubeLengthMm.state !== 'known') continue;
      checked++;
      const mount = amount(settings.relayLengthMm as number);
      expect(of('shoulderFromFlangeMm')).toBeCloseTo(amount(pairing.infinitySpaceMm) + mount + of('tubeLengthMm'), 8);
      // A pairing whose sensor stands where the tube as built puts it wants just that tube.
      const builtTubeMm = of('tubeLengthMm') + r.between(0, 4);
      const error = numberIn(worked(pairing, { ...settings, builtTubeMm }).answers.builtTooLongMm) as number;
      const moved = { ...pairing, stops: [], sensorOffsetMm: amount(pairing.sensorOffsetMm ?? 0) + error };
      const again = worked(moved, { ...settings, builtTubeMm }).answers;
      expect(numberIn(again.builtTooLongMm)).toBeCloseTo(0, 8);
      expect(numberIn(again.tubeLengthMm)).toBeCloseTo(builtTubeMm, 8);
    }
    expect(checked).toBeGreaterThan(20);
  });

  it("come from the relay's own glass where that is known, and from a back focal length given before that", () => {
    const pairing = pairingWith();
    const { answers } = worked(pairing, { seatBehindGlassMm: 0 }, works);
    const { lens } = lensOfRelay(pairing.relay);
    if (!lens) throw new Error('no lens');
    expect(numberIn(answers.focusBehindRelayMm)).toBeCloseTo(cardinal(prescription(lens, 587.5618)).backFocalLengthMm, 9);
    const told = worked({ ...pairing, relay: { ...pairing.relay, backFocalLengthMm: 150 } }, { seatBehindGlassMm: 4 }, works);
    expect(numberIn(told.answers.focusBehindRelayMm)).toBe(146);
  });

  it('are none behind a camera lens, and none where the camera cannot come near enough', () => {
    const lens = worked(pairingSchema.parse({ ...OPENING, relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 } }), {});
    expect(lens.answers.tubeLengthMm).toMatchObject({ state: 'none', why: expect.stringMatching(/carries its own tube/) });
    const short = worked(withRelay({ powerDioptre: 25 }), { relayLengthMm: 10 });
    expect(short.answers.tubeLengthMm).toMatchObject({ state: 'none', why: expect.stringMatching(/register is too long/) });
  });
});

describe('the sentence', () => {
  it('says the lengths, how far they may be off, and how many pieces it takes', () => {
    expect(says(OPENING)).toBe(
      "Leave 60 mm between the objective's shoulder and the close-up lens, and build 154 mm of tube behind it, up to the camera's flange. From the subject to the sensor it is 320 mm. Between the objective and the close-up lens 6 pieces do it, all to buy, 2 mm too short, which does not matter: the corners stay clear up to 292 mm. Between the close-up lens and the camera 5 pieces do it, all to buy. The focus may want anything from 135 to 172 mm; with the camera's ring these turn from 122 to 176 mm. That ring takes up what is not known of the register. It is drawn with its male thread toward the objective. Turned round it would take 9 pieces instead of 11; the view The glass tells which way is sharper.",
    );
  });

  it('says what is missing, and what would join', () => {
    const { mountThread: _, ...objective } = OPENING.objective;
    expect(says({ ...OPENING, objective })).toMatch(
      /The objective's thread is not told, so the rings between the objective and the close-up lens cannot be told\./,
    );
    expect(says(OPENING, { ownedOnly: true })).toMatch(
      /Nothing joins male M25 x 0\.75 and male M58 x 0\.75; a ring with female M25 x 0\.75 on one side and female M58 x 0\.75 on the other would\./,
    );
  });

  it('says by how much the pieces miss what the focus may want, in millimetres that the pieces themselves give', () => {
    const box = {
      adapters: [
        {
          ends: [
            { thread: '58', sex: 'male' },
            { thread: 'M42 x 1', sex: 'male' },
          ],
          lengthMm: 3,
        },
        {
          ends: [
            { thread: 'M42 x 1', sex: 'female' },
            { thread: 'T', sex: 'male' },
          ],
          lengthMm: 3,
        },
      ],
      tubes: [
        { thread: 'M42 x 1', lengthMm: 60 },
        { thread: 'M42 x 1', lengthMm: 50, reachMm: 20 },
      ],
      ownedOnly: true,
    } satisfies BuildAsk;
    const { back } = sheetOf(OPENING, box);
    if (back.state !== 'joined') throw new Error('not joined');
    expect([back.leastMm, back.mostMm]).toEqual([116, 136]);
    // 200 mm (+ 5 D, its ± and the mount's) from 112 to 149 before the T ring of 23.5 mm.
    expect(says(OPENING, box)).toMatch(
      /from 135 to 172 mm; with the camera's ring these turn from 140 to 160 mm: 4\.3 mm too long for the shortest that may be wanted, and 13 mm short of the longest/,
    );
  });

  it('says of a tube as built how far it is off, and what that does', () => {
    const { powerDioptre: _, ...lens } = OPENING.relay;
    const exact = pairingSchema.parse({
      ...OPENING,
      relay: { ...lens, focalLengthMm: { value: 200, plusMinus: 0.1 }, backFocalLengthMm: 182 },
      sensor: { ...OPENING.sensor, registerMm: 18 },
    });
    const settings: Settings = { seatBehindGlassMm: -3, builtTubeMm: 177 };
    // 182 + 3 - 18 = 167 mm are right; 10 more of 200 make the picture 5 % larger, with the relay's plane 100 mm off less.
    expect(says(exact, {}, settings)).toMatch(
      /As you built it the tube is 10 mm too long: focused again with the rail, the picture is [2-5](\.\d)? % larger/,
    );
    expect(says(exact, {}, { ...settings, builtTubeMm: 157 })).toMatch(
      /10 mm too short: focused again with the rail, the picture is [2-5](\.\d)? % smaller/,
    );
    expect(says(exact, {}, { ...settings, builtTubeMm: 167 })).toMatch(/As you built it the tube is right\./);
  });
});

describe('what the rings do to the corners', () => {
  const effects = (clearMm: number) => {
    const evaluation = worked(OPENING, {});
    const adapters: BuildAsk['adapters'] = [
      {
        ends: [
          { thread: 'M25', sex: 'female' },
          { thread: 'M42 x 1', sex: 'male' },
        ],
        lengthMm: 5,
        clearMm,
      },
    ];
    return buildEffects(evaluation, buildSheet(evaluation, { adapters, preferOwned: true }));
  };

  it('is what the pairing tells once they count as its stops, and nothing where they are wide', () => {
    expect(darkens(effects(24))).toBe(false);
    const narrow = effects(9);
    expect(darkens(narrow)).toBe(true);
    const counted = evaluate({ ...OPENING, stops: [...narrow.fresh] });
    expect(narrow.corner?.ringed).toBeCloseTo(numberIn(counted.answers.cornerIllumination) as number, 12);
    expect(narrow.corner?.bare).toBeCloseTo(numberIn(evaluate(OPENING).answers.cornerIllumination) as number, 12);
    const after = worked({ ...OPENING, stops: [...narrow.fresh] }, {});
    expect(buildEffects(after, buildSheet(after)).fresh).not.toContainEqual(narrow.fresh[0]);
  });

  it('cannot be told where the pairing takes no more stops', () => {
    const stops = Array.from({ length: 8 }, (_, i) => ({ label: `ring ${i}`, diameterMm: 60, fromShoulderMm: 5 + i }));
    const evaluation = worked(pairingSchema.parse({ ...OPENING, stops }), {});
    const found = buildEffects(evaluation, buildSheet(evaluation));
    expect(found.fresh.length).toBe(2);
    expect(found.corner).toBeUndefined();
    expect(darkens(found)).toBe(false);
  });
});
