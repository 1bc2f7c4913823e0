import { describe, expect, it } from 'vitest';
import { amount, evaluate, numberIn, pairingSchema } from '../../../../core/index.ts';
import { lensOfRelay } from '../../../../core/lens/relay-lens.ts';
import { type BuildAsk, buildEffects, buildSheet, darkens, type Settings } from '../../../../core/table.ts';
import { cardinal } from '../../../../core/trace/cardinal.ts';
import { prescription } from '../../../../core/trace/prescription.ts';
import { random } from '../../../support/random.ts';
import { pairingWith, works } from '../../lens/rigs.ts';
import { fullPairing } from '../../support/full-pairing.ts';
import { fullSettings } from '../full-settings.ts';
import { OPENING, says, sheetOf, withRelay, worked } from './on-the-table.ts';

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
