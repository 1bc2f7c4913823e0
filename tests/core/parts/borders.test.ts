import { describe, expect, it } from 'vitest';
import { ownPartSchema, pairingSchema, problemsOf, quantity, resolveParts, type Shelf } from '../../../core/index.ts';
import { MOST_ABREAST } from '../../../core/pairing/compare.ts';
import { MOST_STEPS } from '../../../core/pairing/sweep.ts';
import { MOST_OWN } from '../../../core/parts/own.ts';
import * as typical from '../../../core/parts/typical.ts';

const fits = (schema: { safeParse(x: unknown): { success: boolean } }, x: unknown): boolean => schema.safeParse(x).success;

describe('what may be told', () => {
  const pairing = (more: object, sensor: object = {}) =>
    fits(pairingSchema, {
      objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 },
      relay: { kind: 'tube-lens', focalLengthMm: 200 },
      sensor: { widthMm: 36, heightMm: 24, ...sensor },
      infinitySpaceMm: 60,
      ...more,
    });
  const many = <T>(count: number, of: T): T[] => Array.from({ length: count }, () => of);
  it('is eight rings at most, and one to 512 radii', () => {
    const ring = { diameterMm: 20, fromShoulderMm: 5 };
    expect([pairing({ stops: [] }), pairing({ stops: many(8, ring) }), pairing({ stops: many(9, ring) })]).toEqual([true, true, false]);
    expect([0, 1, 512, 513].map((count) => pairing({ radiiMm: many(count, 5) }))).toEqual([false, true, true, false]);
  });
  it('is a sensor of up to 300 mm, pitches of up to a millimetre, two to a million pixels a side', () => {
    expect([300, 300.1].map((mm) => pairing({}, { widthMm: mm, heightMm: mm }))).toEqual([true, false]);
    expect([1000, 1001].map((pixelPitchUm) => pairing({}, { pixelPitchUm }))).toEqual([true, false]);
    expect([1, 2, 1_000_000, 1_000_001].map((columns) => pairing({}, { columns }))).toEqual([false, true, true, false]);
    expect([0, -1].map((mm) => pairing({ radiiMm: [mm] }))).toEqual([true, false]);
  });
  it('is of a part of one’s own a price and notes that a drawer can hold', () => {
    const own = (more: object) =>
      fits(ownPartSchema, { kind: 'sensor', owned: true, part: { name: 'x', widthMm: 36, heightMm: 24, pixelPitchUm: 4 }, ...more });
    expect([-0.01, 0, 0.5, 1e7, 1e7 + 1].map((price) => own({ price }))).toEqual([false, true, true, true, false]);
    expect([2000, 2001].map((length) => own({ notes: 'x'.repeat(length) }))).toEqual([true, false]);
    expect([MOST_OWN, MOST_STEPS, MOST_ABREAST]).toEqual([2000, 400, 12]);
  });
  it('has a ± that keeps it within its bounds on either side', () => {
    // A focal length lives between 5 and 5000 mm.
    const q = quantity('focalLengthMm');
    const widest = (value: number, plusMinus: number) => {
      const { error } = q.safeParse({ value, plusMinus });
      return error && problemsOf(error, { value, plusMinus }).map(({ path, expected }) => `${path} ${expected}`);
    };
    expect([widest(10, 5), widest(10, 6), widest(4990, 10), widest(4990, 11)]).toEqual([
      undefined,
      ['/plusMinus at most 5'],
      undefined,
      ['/plusMinus at most 10'],
    ]);
    expect([widest(4, 3), widest(5001, 3)]).toEqual([['/value at least 5'], ['/value at most 5000']]);
    expect(widest(100, 0)).toBeUndefined();
    expect(fits(q, { value: 5 })).toBe(true);
  });
});

describe('what is typical', () => {
  const span = ({ value, plusMinus }: typical.Guess) => [value - plusMinus, value + plusMinus];
  const ends = (...all: number[]) => all.map((x) => expect.closeTo(x, 9));
  const objective = { magnification: 10, na: 0.6, referenceFocalLengthMm: 200 };

  it('of an exit pupil lies in the barrel or 10 mm outside', () => {
    expect(span(typical.exitPupil({ ...objective, parfocalDistanceMm: 45, workingDistanceMm: 5 }))).toEqual(ends(-40, 10));
    expect(span(typical.exitPupil({ ...objective, parfocalDistanceMm: 45 }))).toEqual(ends(-45, 10));
    expect(span(typical.exitPupil({ ...objective, parfocalDistanceMm: 45, workingDistanceMm: 45.5 }))).toEqual(ends(0, 10));
    expect(span(typical.exitPupil(objective))).toEqual(ends(-30, 30));
  });
  it('of a nose is wider than its light, and no wider than a barrel or half as much again', () => {
    // sin 0.6 has the tangent 0.75: 2 · 8 · 0.75 = 12, and 22 / 10 of field.
    expect(span(typical.nose({ ...objective, workingDistanceMm: 8, fieldNumberMm: 22 }))).toEqual(ends(14.2, 34));
    expect(span(typical.nose({ ...objective, workingDistanceMm: 8 }))).toEqual(ends(12, 34));
    expect(span(typical.nose({ ...objective, workingDistanceMm: 20 }))).toEqual(ends(30, 45));
    expect(span(typical.nose(objective))).toEqual(ends(0, 34));
    // Never above a sine of 0.99, whose tangent is 0.99 / √0.0199.
    expect(span(typical.nose({ ...objective, na: 1, workingDistanceMm: 2 }))).toEqual(
      ends((4 * 0.99) / Math.sqrt(0.0199), (6 * 0.99) / Math.sqrt(0.0199)),
    );
    // Dipped in 1.5: sin 0.9 / 1.5.
    expect(span(typical.nose({ ...objective, na: 0.9, immersionIndex: 1.5, workingDistanceMm: 8 }))).toEqual(ends(12, 34));
  });
  it('of lengths goes by the focal length', () => {
    expect(span(typical.entrancePupilDepth(200))).toEqual(ends(0, 180));
    expect(span(typical.rimToSensor(200))).toEqual(ends(125, 315));
    const plane = (kind: 'supplementary' | 'tube-lens' | 'camera-lens') => span(typical.principalPlane({ kind }, 200));
    expect([plane('supplementary'), plane('tube-lens'), plane('camera-lens')]).toEqual([ends(-10, 10), ends(-30, 30), ends(-240, 240)]);
  });
  it('of a rim lies 1 to 7 mm under the thread, where that leaves an opening', () => {
    const rim = (maleThread: string) => typical.rimFromThread({ kind: 'supplementary', maleThread });
    expect(span(rim('58 x 0.75') as typical.Guess)).toEqual(ends(51, 57));
    expect([rim('7 x 0.5'), rim('6 x 0.5')]).toEqual([undefined, undefined]);
    expect(span(rim('7.5 x 0.5') as typical.Guess)).toEqual(ends(0.5, 6.5));
    expect(typical.rimFromThread({ kind: 'supplementary' })).toBeUndefined();
    expect(rim('a bayonet')).toBeUndefined();
    // A step ring's smaller side; the smaller of two threads.
    expect(span(rim('58-52 x 0.75') as typical.Guess)).toEqual(ends(45, 51));
    const both = typical.rimFromThread({ kind: 'supplementary', maleThread: 'M49 x 0.75', femaleThread: '52 x 0.75' });
    expect(span(both as typical.Guess)).toEqual(ends(42, 48));
  });
  it('of engraved powers is a twentieth, a quarter of a dioptre at least, but a quarter of a weak one', () => {
    const power = (value: number) => span(typical.loosePower({ value, plusMinus: 0, origin: 'marked' }));
    expect([power(10), power(5), power(2), power(0.5)]).toEqual([ends(9.5, 10.5), ends(4.75, 5.25), ends(1.75, 2.25), ends(0.375, 0.625)]);
    expect(span(typical.looseFocalLength({ value: 200, plusMinus: 0, origin: 'marked' }))).toEqual(ends(190, 210));
  });
  it('of a register lies between cameras without a mirror and with one', () => {
    expect(span(typical.register())).toEqual(ends(16, 47));
  });
  it('is kept within bounds, evenly about the middle of what is left', () => {
    const within = (value: number, plusMinus: number) => span(typical.within('focalLengthMm', { value, plusMinus, why: 'because' }));
    expect([within(100, 20), within(10, 20), within(4995, 20)]).toEqual([ends(80, 120), ends(5, 30), ends(4975, 5000)]);
    expect(typical.within('focalLengthMm', { value: 10, plusMinus: 20, why: 'because' }).why).toBe('because');
  });
  it('of a camera lens’s rim is no narrower than its aperture', () => {
    expect(span(typical.rimOfCameraLens(40, 50, 200))).toEqual(ends(40, 50.8));
    expect(span(typical.rimOfCameraLens(40, -50, 200))).toEqual(ends(40, 40));
    expect(span(typical.rimOfCameraLens(40, 0.5, 108))).toEqual(ends(40, 40.2));
  });
});

describe('parts by name', () => {
  const shelf: Shelf = {
    objectives: new Map([['ten', { magnification: 10, fNumber: 3, pixelPitchUm: 4, columns: 2 }]]),
    relays: new Map([['lens', { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, columns: 2, rows: 3 }]]),
    sensors: new Map(),
  };
  it('unsay no more than what is the same thing of their kind', () => {
    expect(resolveParts({ relay: { from: 'lens', columns: 9 } }, shelf).pairing).toEqual({
      relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, columns: 9, rows: 3 },
    });
    expect(resolveParts({ relay: { from: 'lens', entrancePupilDiameterMm: 40 } }, shelf).pairing).toEqual({
      relay: { kind: 'camera-lens', focalLengthMm: 200, entrancePupilDiameterMm: 40, columns: 2, rows: 3 },
    });
  });
  it('are names of a pairing’s own, and nothing that it inherits', () => {
    const inherited = Object.create({ relay: 'lens' });
    expect(resolveParts(inherited, shelf)).toEqual({ pairing: {}, problems: [] });
    const odd = { relay: null, objective: Object.create({ from: 'ten' }), sensor: 3 };
    expect(resolveParts(odd, shelf)).toEqual({ pairing: odd, problems: [] });
    expect(resolveParts({ relay: undefined }, shelf).problems).toEqual([]);
    expect(resolveParts({ relay: { from: 3 } }, shelf).problems).toMatchObject([{ path: '/relay/from', code: 'unknownPart', given: '3' }]);
  });
});
