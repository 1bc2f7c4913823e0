import { describe, expect, it } from 'vitest';
import { contradictions, type Pairing } from '../../../../core/index.ts';
import { ofRelay } from '../../../../core/pairing/contradict/relay.ts';
import { ofFocus, ofStops } from '../../../../core/pairing/contradict/spacing.ts';
import { relayFocalLength } from '../../../../core/pairing/contradict/statement.ts';
import type { GlassRelay, Glassworks } from '../../../../core/pairing/glassworks.ts';

const base = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0 },
  relay: { kind: 'supplementary', focalLengthMm: 200 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
  infinitySpaceMm: 60,
};
const glass = { focalLengthMm: 200, frontPrincipalPlaneMm: 7, clearDiameterMm: 48 } as GlassRelay;
const works = (relay: ReturnType<Glassworks['relay']> = glass): Glassworks => ({ relay: () => relay });
const found = (change: object, with_?: Glassworks) =>
  contradictions({ ...base, ...change } as Pairing, with_).map(({ path, code }) => `${path} ${code}`);
const measured = (value: number) => ({ value, origin: 'measured' });
const doubtful = (value: number, plusMinus: number) => ({ value, plusMinus });

describe("a relay's glass", () => {
  const relay = (more: object) => found({ relay: { kind: 'supplementary', glass: { class: 'singlet' }, ...more } }, works());
  const length = ['/relay/focalLengthMm contradiction'];
  const power = ['/relay/powerDioptre contradiction'];
  it('is as wide as its rim at least, but for the digits of a listing', () => {
    expect([relay({ clearApertureMm: 48.04 }), relay({ clearApertureMm: 48.06 })]).toEqual([[], ['/relay/clearApertureMm contradiction']]);
    expect([relay({ clearApertureMm: 47.97 }), relay({ clearApertureMm: 30 })]).toEqual([[], []]);
  });
  it('agrees to 1 % with the length engraved, to 6 % with the power', () => {
    expect([201.9, 202.1, 198.1, 197.9].map((focalLengthMm) => relay({ focalLengthMm }))).toEqual([[], length, [], length]);
    expect([5.29, 5.31, 4.71, 4.69].map((powerDioptre) => relay({ powerDioptre }))).toEqual([[], power, [], power]);
  });
  it('may be as far from its rim and its power as that, and no farther', () => {
    const told = (more: object, known: Partial<GlassRelay>) =>
      ofRelay({ ...base, relay: { kind: 'supplementary', ...more } } as Pairing, { ...glass, ...known }).map(({ path }) => path);
    expect(told({ clearApertureMm: 64 * 1.001 }, { clearDiameterMm: 64 })).toEqual([]);
    // 6 % of 25 D is 1.5 D, both without rounding.
    expect([26.5, 26.51, 23.5, 23.49].map((powerDioptre) => told({ powerDioptre }, { focalLengthMm: 40 }))).toEqual([
      [],
      ['/relay/powerDioptre'],
      [],
      ['/relay/powerDioptre'],
    ]);
  });
  it('is not held against what was measured', () => {
    expect([relay({ focalLengthMm: measured(210) }), relay({ powerDioptre: measured(6) })]).toEqual([[], []]);
    expect(relay({ focalLengthMm: measured(210), powerDioptre: 6 })).toEqual([]);
  });
  it('that spreads light agrees with nothing engraved', () => {
    const engraved = { focalLengthMm: 200, powerDioptre: 5 };
    const diverging = works({ ...glass, focalLengthMm: -200 });
    expect(found({ relay: { kind: 'supplementary', glass: { class: 'singlet' }, ...engraved } }, diverging)).toEqual([...length, ...power]);
  });
  it('that is no lens is told alone of the relay', () => {
    const bad = works([{ path: '/relay/glass', code: 'noLens', message: '', given: '', expected: '' }]);
    const both = { relay: { kind: 'supplementary', glass: { class: 'singlet' } }, objective: { ...base.objective, na: 1 } };
    expect(found(both, bad)).toEqual(['/objective/na contradiction', '/relay/glass noLens']);
  });
  it('needs what works with glass', () => {
    expect(() => found({ relay: { kind: 'supplementary', glass: { class: 'singlet' } } })).toThrow(TypeError);
  });
});

describe("a relay's numbers", () => {
  const lens = (more: object) => found({ relay: { kind: 'camera-lens', ...more } });
  it('lie within a zoom, its ends included', () => {
    const at = (focalLengthMm: number, focalLengthRangeMm: number[]) => lens({ focalLengthMm, focalLengthRangeMm });
    expect([at(70, [70, 200]), at(200, [70, 200]), at(100, [100, 100])]).toEqual([[], [], []]);
    const outside = ['/relay/focalLengthMm contradiction'];
    expect([at(69, [70, 200]), at(201, [70, 200])]).toEqual([outside, outside]);
    const [problem] = contradictions({
      ...base,
      relay: { kind: 'camera-lens', focalLengthMm: 69, focalLengthRangeMm: [70, 200] },
    } as Pairing);
    expect(problem).toMatchObject({ message: "lies outside the zoom's range, 70 to 200 mm", expected: 'between 70 and 200' });
    expect(lens({ powerDioptre: 5, focalLengthRangeMm: [70, 190] })).toEqual(outside);
    expect(lens({ powerDioptre: 5, focalLengthRangeMm: [70, 210] })).toEqual([]);
  });
  it('agree with each other, aperture and f-number unless one was measured', () => {
    const at = (entrancePupilDiameterMm: unknown, fNumber: unknown) => lens({ focalLengthMm: 200, entrancePupilDiameterMm, fNumber });
    const wrong = ['/relay/entrancePupilDiameterMm contradiction'];
    expect([at(50.4, 4), at(50.6, 4), at(49.6, 4), at(49.4, 4)]).toEqual([[], wrong, [], wrong]);
    expect([at(measured(60), 4), at(60, measured(4)), at(60, undefined), at(undefined, 4)]).toEqual([[], [], [], []]);
    expect(lens({ powerDioptre: 5, entrancePupilDiameterMm: 50, fNumber: 4 })).toEqual([]);
  });
  it('tell how long it is: by its length, its power, its glass, or not at all', () => {
    const of = (relay: object, known?: GlassRelay) => relayFocalLength({ kind: 'tube-lens', ...relay }, known);
    expect([of({ focalLengthMm: 180, powerDioptre: 5 }), of({ powerDioptre: 8 }, glass), of({}, glass), of({})]).toEqual([
      180,
      125,
      200,
      Number.POSITIVE_INFINITY,
    ]);
  });
});

describe('places behind and before the relay', () => {
  it('end at the relay, which the sensor may leave or approach', () => {
    const ring = (fromSensorMm: number, sensorOffsetMm?: number) =>
      ofStops({ ...base, sensorOffsetMm, stops: [{ diameterMm: 20, fromSensorMm }] } as Pairing).map(({ path }) => path);
    const wrong = ['/stops/0/fromSensorMm'];
    expect([ring(199.9), ring(200), ring(209.9, 10), ring(210, 10), ring(190, -10)]).toEqual([[], wrong, [], wrong, wrong]);
    const throat = (registerMm: number, sensorOffsetMm: number) =>
      found({ sensor: { ...base.sensor, throatDiameterMm: 46, registerMm }, sensorOffsetMm });
    expect([throat(204.9, 5), throat(205, 5), throat(195, -5)]).toEqual([
      [],
      ['/sensor/registerMm contradiction'],
      ['/sensor/registerMm contradiction'],
    ]);
    expect(found({ sensor: { ...base.sensor, registerMm: 300 } })).toEqual([]);
  });
  it('leave an objective its barrel even at the ends of what both may be', () => {
    const barrel = (workingDistanceMm: unknown, parfocalDistanceMm: unknown) =>
      found({ objective: { ...base.objective, workingDistanceMm, parfocalDistanceMm } });
    const wrong = ['/objective/workingDistanceMm contradiction'];
    expect([barrel(doubtful(46, 2), 45), barrel(doubtful(47, 2), 45), barrel(doubtful(47, 2), doubtful(45, 1))]).toEqual([[], wrong, []]);
  });
  it('say how many rows would make the pixels square', () => {
    const problems = contradictions({ ...base, sensor: { widthMm: 36, heightMm: 24.003, columns: 6000, rows: 3000 } } as Pairing);
    // 24.003 mm at 6 µm: 4000.5, and the next whole number is 4001.
    expect(problems).toMatchObject([{ path: '/sensor/rows', expected: 'about 4001' }]);
  });
});

describe('the sensor before the image of the exit pupil', () => {
  /** Scale f + s - z s / f, which may not fall to a tenth of f; z = S - e + h. */
  const focus = (sensorOffsetMm: unknown, change: object = {}, known?: GlassRelay) =>
    ofFocus({ ...base, sensorOffsetMm, ...change } as Pairing, known).map(({ path }) => path);
  const wrong = ['/sensorOffsetMm'];
  const at = (e: unknown, more: object = {}) => ({ objective: { ...base.objective, exitPupilFromShoulderMm: e }, ...more });

  it('may come as near as a tenth of the scale', () => {
    // z = 300: 200 - s / 2 is 20 at s = 360.
    expect([focus(359, { infinitySpaceMm: 300 }), focus(360, { infinitySpaceMm: 300 }), focus(361, { infinitySpaceMm: 300 })]).toEqual([
      [],
      wrong,
      wrong,
    ]);
    // z = 100: 200 + s / 2 is 20 at s = -360.
    expect([focus(-359, { infinitySpaceMm: 100 }), focus(-361, { infinitySpaceMm: 100 })]).toEqual([[], wrong]);
  });
  it('counts the distance from the exit pupil to the principal plane', () => {
    const plane = { relay: { ...base.relay, frontPrincipalPlaneFromRimMm: 60 } };
    expect([focus(359, at(0, { infinitySpaceMm: 240, ...plane })), focus(361, at(0, { infinitySpaceMm: 240, ...plane }))]).toEqual([
      [],
      wrong,
    ]);
    expect([focus(359, at(-60, { infinitySpaceMm: 240 })), focus(361, at(-60, { infinitySpaceMm: 240 }))]).toEqual([[], wrong]);
    const byGlass = { infinitySpaceMm: 293, relay: { kind: 'supplementary' } };
    expect([focus(359, byGlass, glass), focus(361, byGlass, glass)]).toEqual([[], wrong]);
  });
  it('counts what sensor and space may be, each to its own end', () => {
    // z = 400: 200 - s, which is 20 at 180.
    expect([focus(doubtful(168, 10), { infinitySpaceMm: 400 }), focus(doubtful(172, 10), { infinitySpaceMm: 400 })]).toEqual([[], wrong]);
    // s = 160: 360 - 0.8 z, which is 20 at z = 425.
    expect([focus(160, { infinitySpaceMm: doubtful(412, 10) }), focus(160, { infinitySpaceMm: doubtful(416, 10) })]).toEqual([[], wrong]);
    // z = 80: 200 + 0.6 s, which is 20 at -300.
    expect([focus(doubtful(-288, 10), { infinitySpaceMm: 80 }), focus(doubtful(-292, 10), { infinitySpaceMm: 80 })]).toEqual([[], wrong]);
    // s = -300: 1.5 z - 100, which is 20 at z = 80.
    expect([focus(-300, { infinitySpaceMm: doubtful(92, 10) }), focus(-300, { infinitySpaceMm: doubtful(88, 10) })]).toEqual([[], wrong]);
  });
  it('counts what all of them may be, an unknown pupil 60 mm either way', () => {
    const { exitPupilFromShoulderMm: _, ...unknown } = base.objective;
    expect([focus(359, { infinitySpaceMm: 240, objective: unknown }), focus(361, { infinitySpaceMm: 240, objective: unknown })]).toEqual([
      [],
      wrong,
    ]);
    expect([focus(359, at(doubtful(0, 60), { infinitySpaceMm: 240 })), focus(361, at(doubtful(0, 60), { infinitySpaceMm: 240 }))]).toEqual([
      [],
      wrong,
    ]);
    // The root of the squares of 36 and 48 is 60.
    const both = (s: number) => focus(s, at(doubtful(0, 48), { infinitySpaceMm: doubtful(240, 36) }));
    expect([both(359), both(361)]).toEqual([[], wrong]);
    expect([focus(doubtful(300, 59), { infinitySpaceMm: 300 }), focus(doubtful(300, 61), { infinitySpaceMm: 300 })]).toEqual([[], wrong]);
    expect([focus(doubtful(0, 359), { infinitySpaceMm: 100 }), focus(doubtful(0, 361), { infinitySpaceMm: 100 })]).toEqual([[], wrong]);
  });
  it('is none of a pairing in focus, however short its relay', () => {
    expect(focus(undefined, { infinitySpaceMm: 2000, relay: { kind: 'supplementary', focalLengthMm: 5 } })).toEqual([]);
    expect(focus(359.8, { infinitySpaceMm: 300 })).toEqual([]);
  });
  it('is not asked for in focus, or of a relay of unknown length', () => {
    expect([focus(undefined, { infinitySpaceMm: 2000 }), focus(0, { infinitySpaceMm: 2000 })]).toEqual([[], []]);
    expect(focus(10, { relay: { kind: 'supplementary' } })).toEqual([]);
  });
});

describe('a contradiction', () => {
  const expected = (change: object) => contradictions({ ...base, ...change } as Pairing).map((problem) => problem.expected);
  const lens = (more: object) => expected({ relay: { kind: 'camera-lens', ...more } });
  it('says what would do, to four digits', () => {
    expect(lens({ focalLengthMm: 60, focalLengthRangeMm: [70, 200] })).toEqual(['between 70 and 200']);
    expect(lens({ powerDioptre: 7, focalLengthMm: 150 })[0]).toMatch(/^142\.9, or /);
    expect(lens({ focalLengthMm: 200, entrancePupilDiameterMm: 60, fNumber: 3 })[0]).toMatch(/^66\.67, or /);
  });
  it('begins just above what two statements may differ by', () => {
    expect(
      [lens({ powerDioptre: 5, focalLengthMm: 202.01 }), lens({ powerDioptre: 5, focalLengthMm: 201.99 })].map((all) => all.length),
    ).toEqual([1, 0]);
    const glassy = (more: object) => found({ relay: { kind: 'supplementary', glass: { class: 'singlet' }, ...more } }, works());
    expect([glassy({ powerDioptre: 5.301 }), glassy({ clearApertureMm: 48.0482 })].map((all) => all.length)).toEqual([1, 1]);
  });
  it('is none of a number that only does not say how sure it is', () => {
    expect(found({ objective: { ...base.objective, na: { value: 0.5 } } })).toEqual([]);
    expect(found({ objective: { ...base.objective, na: 0.9, immersionIndex: 1.5 }, subject: { index: 0.9 } })).toEqual([
      '/subject/index contradiction',
    ]);
  });
});
