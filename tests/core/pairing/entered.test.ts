import { describe, expect, it } from 'vitest';
import { Gap, type Node } from '../../../core/figure.ts';
import type { Pairing } from '../../../core/index.ts';
import type { GlassRelay } from '../../../core/pairing/glassworks.ts';
import { inputsOf } from '../../../core/pairing/inputs.ts';
import * as leaves from '../../../core/pairing/leaves.ts';

/** What stands in for what: a pairing's numbers as they are entered, with glass that says what it comes to. */

const glass: GlassRelay = {
  focalLengthMm: 198,
  backFocalLengthMm: 190,
  thicknessMm: 15,
  frontPrincipalPlaneMm: 7,
  clearDiameterMm: 48,
  mappingFactor: () => 1,
  sharpRadiusMm: () => 0,
  focusSpreadMm: () => 0,
};
const LISTING = { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['a', 'b'] };

function entered(relay: object, known?: GlassRelay, more: object = {}) {
  const { objective, sensor, ...rest } = more as { objective?: object; sensor?: object };
  const pairing = {
    objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: -10, ...objective },
    relay: { kind: 'supplementary', ...relay },
    sensor: { widthMm: 24, heightMm: 32, pixelPitchUm: 4, ...sensor },
    infinitySpaceMm: 60,
    ...rest,
  } as Pairing;
  const { values, list } = inputsOf(pairing, known);
  const of = (leaf: Node) => {
    const input = list.find((i) => i.leaf === leaf);
    return input && { path: input.path, value: input.value, plusMinus: input.plusMinus };
  };
  return { values, list, of, at: (leaf: Node) => values.get(leaf) };
}
const measured = (value: number) => ({ value, plusMinus: 1, origin: 'measured' as const });
const GLASS = '/relay/glass';

describe("the relay's focal length", () => {
  const from = (relay: object, known?: GlassRelay) => {
    const { of, at } = entered(relay, known);
    return [of(leaves.givenFocalLength)?.path, of(leaves.power)?.path, at(leaves.givenFocalLength), at(leaves.power)];
  };
  const [noLength, noPower] = [Gap.unknown('/relay/focalLengthMm'), Gap.unknown('/relay/powerDioptre')];
  const byGlass = [GLASS, undefined, 198, noPower];
  const byLength = (f: number) => ['/relay/focalLengthMm', undefined, f, noPower];
  const byPower = (P: number) => [undefined, '/relay/powerDioptre', noLength, P];

  it('is that of its glass where its surfaces are listed and nothing was measured', () => {
    expect(from({ glass: LISTING }, glass)).toEqual(byGlass);
    expect(from({ glass: LISTING, focalLengthMm: 200, powerDioptre: 5 }, glass)).toEqual(byGlass);
    expect(from({ glass: LISTING, focalLengthMm: measured(199) }, glass)).toEqual(byLength(199));
    expect(from({ glass: LISTING, powerDioptre: measured(5.1) }, glass)).toEqual(byPower(5.1));
    expect(from({ glass: { class: 'singlet' }, powerDioptre: 5 }, glass)).toEqual(byPower(5));
    expect(from({ glass: LISTING, focalLengthMm: 200 })).toEqual(byLength(200));
  });
  it('is that of its power where no length is given, or the power alone was measured', () => {
    expect(from({ powerDioptre: 5 })).toEqual(byPower(5));
    expect(from({ powerDioptre: 5, focalLengthMm: 201 })).toEqual(byLength(201));
    expect(from({ powerDioptre: measured(5), focalLengthMm: 201 })).toEqual(byPower(5));
    expect(from({ powerDioptre: measured(5), focalLengthMm: measured(201) })).toEqual(byLength(201));
    expect(from({ powerDioptre: 5, focalLengthMm: measured(201) })).toEqual(byLength(201));
    expect(from({ focalLengthMm: 201 })).toEqual(byLength(201));
  });
  it('is loose as its class is: a close-up lens in its power, a camera lens in its length', () => {
    const spread = (relay: object) => entered(relay).of('powerDioptre' in relay ? leaves.power : leaves.givenFocalLength)?.plusMinus;
    expect(spread({ kind: 'supplementary', powerDioptre: 8 })).toBeCloseTo(0.4, 12);
    expect(spread({ kind: 'tube-lens', powerDioptre: 8 })).toBe(0);
    expect(spread({ kind: 'camera-lens', focalLengthMm: 200 })).toBe(10);
    expect(spread({ kind: 'tube-lens', focalLengthMm: 200 })).toBe(0);
    const why = (q: unknown) => entered({ powerDioptre: q }).list.find((i) => i.leaf === leaves.power)?.guess;
    expect(why(8)).toContain('loose');
    expect(why({ value: 8, origin: 'assumed' })).toContain('loose');
    expect(why({ value: 8, plusMinus: 0.1, origin: 'assumed' })).toBe('given as typical of its class');
    expect(why({ value: 8, origin: 'measured' })).toBeUndefined();
  });
  it('decides what is guessed of a camera lens, from its power as well', () => {
    // 1000 / 5 mm: the pupil 0.45 of it deep, the lens 20 mm longer than it, give or take 0.4 of it and 15 mm.
    for (const told of [{ powerDioptre: 5 }, { focalLengthMm: 200 }]) {
      const { of } = entered({ kind: 'camera-lens', fNumber: 4, ...told });
      expect(of(leaves.entrancePupilDepth)).toMatchObject({ value: 90, plusMinus: 90 });
      expect(of(leaves.givenRimToSensor)).toMatchObject({ value: 220, plusMinus: 95 });
      expect(of(leaves.principalPlane)).toMatchObject({ value: 0, plusMinus: 240 });
    }
  });
});

describe("the camera lens's aperture", () => {
  const lens = (more: object) => entered({ kind: 'camera-lens', focalLengthMm: 200, ...more });
  it('is what was measured of diameter and f-number, else the diameter, and only that may move', () => {
    const both = (pupil: unknown, fNumber: unknown) => {
      const { list, at } = lens({ entrancePupilDiameterMm: pupil, fNumber });
      return {
        paths: list.map(({ path }) => path).filter((path) => /entrancePupilDiameter|fNumber/.test(path)),
        known: [at(leaves.givenEntrancePupil), at(leaves.fNumber)].map((v) => typeof v === 'number'),
        focal: list.some(({ path }) => path === '/relay/focalLengthMm'),
      };
    };
    const pupil = { paths: ['/relay/entrancePupilDiameterMm'], known: [true, false], focal: true };
    const number = { paths: ['/relay/fNumber'], known: [false, true], focal: true };
    expect(both(50, 4)).toEqual(pupil);
    expect(both(measured(50), 4)).toEqual(pupil);
    expect(both(measured(50), measured(4))).toEqual(pupil);
    expect(both(50, measured(4))).toEqual(number);
    expect(both(50, undefined)).toEqual(pupil);
    expect(both(undefined, 4)).toEqual(number);
  });
  it('widens the rim that is guessed: from the aperture to what lights a full frame past it', () => {
    // Depth 50, half of 43.2 mm at 200: 2 · 50 · 21.6 / 200 = 10.8 wider.
    const rim = (more: object) => lens({ entrancePupilDepthMm: 50, ...more }).of(leaves.clearAperture);
    const guessed = { path: '/relay/clearApertureMm', value: expect.closeTo(45.4, 9), plusMinus: expect.closeTo(5.4, 9) };
    expect(rim({ entrancePupilDiameterMm: 40 })).toEqual(guessed);
    expect(rim({ fNumber: 5 })).toEqual(guessed);
    expect(rim({ entrancePupilDiameterMm: 40, fNumber: measured(5) })).toEqual(guessed);
    expect(rim({ entrancePupilDiameterMm: 40, entrancePupilDepthMm: -30 })).toMatchObject({ value: 40, plusMinus: 0 });
    expect(rim({ maleThread: '58 x 0.75' })).toMatchObject({ value: 54 });
    expect(lens({}).at(leaves.clearAperture)).toEqual(Gap.unknown('/relay/clearApertureMm'));
  });
  it('has no depth but in a camera lens', () => {
    const tube = entered({ kind: 'tube-lens', focalLengthMm: 200, fNumber: 4, entrancePupilDepthMm: 30 });
    expect(tube.at(leaves.entrancePupilDepth)).toEqual(Gap.unknown('/relay/entrancePupilDepthMm'));
    expect(tube.at(leaves.clearAperture)).toEqual(Gap.unknown('/relay/clearApertureMm'));
    expect(lens({ entrancePupilDepthMm: 30 }).at(leaves.entrancePupilDepth)).toBe(30);
  });
});

describe('glass', () => {
  it('ends the rim where it is narrower than what the thread leaves open', () => {
    const rim = (relay: object, clearDiameterMm = 48) =>
      entered({ glass: LISTING, ...relay }, { ...glass, clearDiameterMm }).of(leaves.clearAperture);
    expect(rim({})).toEqual({ path: GLASS, value: 48, plusMinus: 0 });
    expect(rim({ maleThread: '58 x 0.75' })).toMatchObject({ path: GLASS, value: 48 });
    expect(rim({ maleThread: '49 x 0.75' })).toMatchObject({ path: '/relay/clearApertureMm', value: 45 });
    expect(rim({ maleThread: '58 x 0.75' }, 54)).toMatchObject({ path: '/relay/clearApertureMm', value: 54 });
    expect(rim({ clearApertureMm: 40 })).toMatchObject({ path: '/relay/clearApertureMm', value: 40 });
    expect(rim({}, Number.POSITIVE_INFINITY)).toBeUndefined();
  });
  it('tells its plane and lengths, unless they are given', () => {
    const { of, at } = entered({ glass: LISTING }, glass);
    expect(of(leaves.principalPlane)).toMatchObject({ path: GLASS, value: 7 });
    expect(of(leaves.givenRimToSensor)).toMatchObject({ path: GLASS, value: 205 });
    expect(of(leaves.backFocalLength)).toMatchObject({ path: GLASS, value: 190 });
    expect(at(leaves.glassRelay)).toBe(glass);
    const given = entered({ glass: LISTING, frontPrincipalPlaneFromRimMm: 3, rimToSensorMm: 210, backFocalLengthMm: 192 }, glass);
    expect(given.of(leaves.principalPlane)).toMatchObject({ path: '/relay/frontPrincipalPlaneFromRimMm', value: 3 });
    expect(given.of(leaves.givenRimToSensor)).toMatchObject({ path: '/relay/rimToSensorMm', value: 210 });
    expect(given.of(leaves.backFocalLength)).toMatchObject({ path: '/relay/backFocalLengthMm', value: 192 });
    const without = entered({ focalLengthMm: 200 });
    expect(without.of(leaves.principalPlane)).toMatchObject({ value: 0, plusMinus: 10 });
    expect(without.at(leaves.givenRimToSensor)).toEqual(Gap.unknown('/relay/rimToSensorMm'));
    expect(without.at(leaves.backFocalLength)).toEqual(Gap.unknown('/relay/backFocalLengthMm'));
    expect(without.at(leaves.glassRelay)).toEqual(Gap.unknown(GLASS));
  });
  it('tells how far the relay stands between sines and tangents, at the corner as the pupil sees it', () => {
    const asked: number[][] = [];
    const mapping = (factor: number, more: object = {}) => {
      const known = { ...glass, focalLengthMm: 200, mappingFactor: (...at: [number, number]) => asked.push(at) && factor };
      const { list } = entered({ glass: LISTING, frontPrincipalPlaneFromRimMm: 6 }, known, more);
      return list.find((i) => i.leaf === leaves.mapping);
    };
    // Half of 40 mm over 200: slope 0.1, cos⁴ = 1 / 1.01²; the pupil 10 mm inside the shoulder, 70 mm from the rim.
    const whole = 1 - 1 / 1.01 ** 2;
    expect(mapping(1 - whole / 2)).toMatchObject({
      path: GLASS,
      least: 0,
      greatest: expect.closeTo(0.5, 12),
      plusMinus: expect.closeTo(0.5, 12),
    });
    expect(mapping(1 + whole / 4)).toMatchObject({ least: expect.closeTo(-0.25, 12), greatest: 0, plusMinus: expect.closeTo(0.25, 12) });
    expect(asked[0]).toEqual([70, expect.closeTo(0.1, 12)]);
    // Off the focus by 10 mm: 200 + 10 - (70 + 6) · 10 / 200 of height for a slope of 1.
    mapping(1, { sensorOffsetMm: 10 });
    expect(asked[2]).toEqual([70, expect.closeTo(20 / 206.2, 12)]);
    expect(entered({ focalLengthMm: 200 }).list.find((i) => i.leaf === leaves.mapping)).toMatchObject({
      least: 0,
      greatest: 1,
      plusMinus: 1,
    });
  });
});

describe('rings and the throat', () => {
  const stops = [
    { diameterMm: 20, fromShoulderMm: 5 },
    { diameterMm: { value: 30, plusMinus: 1 }, fromSensorMm: { value: 40, plusMinus: 2 }, label: 'a tube' },
  ];
  it('stand in a row, each number an input of its own that moves itself alone', () => {
    const { list, at } = entered({ focalLengthMm: 200 }, undefined, { stops, sensor: { throatDiameterMm: 46, registerMm: 18 } });
    const rings = [
      { label: 'ring 1', path: '/stops/0/diameterMm', diameterMm: 20, place: 'shoulder', atMm: 5 },
      { label: 'a tube', path: '/stops/1/diameterMm', diameterMm: 30, place: 'sensor', atMm: 40 },
      { label: "the mount's throat", path: '/sensor/throatDiameterMm', diameterMm: 46, place: 'sensor', atMm: 18 },
    ];
    expect(at(leaves.rings)).toEqual(rings);
    const own = list.filter((i) => i.leaf === leaves.rings);
    expect(own.map(({ path, value, plusMinus }) => [path, value, plusMinus])).toEqual([
      ['/stops/0/diameterMm', 20, 0],
      ['/stops/0/fromShoulderMm', 5, 0],
      ['/stops/1/diameterMm', 30, 1],
      ['/stops/1/fromSensorMm', 40, 2],
      ['/sensor/throatDiameterMm', 46, 0],
      ['/sensor/registerMm', 18, 0],
    ]);
    expect(own[2]?.put(rings, 31)).toEqual([rings[0], { ...rings[1], diameterMm: 31 }, rings[2]]);
    expect(own[3]?.put(rings, 41)).toEqual([rings[0], { ...rings[1], atMm: 41 }, rings[2]]);
  });
  it('have no throat without both its numbers', () => {
    const none = (sensor: object) => entered({ focalLengthMm: 200 }, undefined, { sensor }).at(leaves.rings);
    expect([none({}), none({ registerMm: 18 }), none({ throatDiameterMm: 46 })]).toEqual([[], [], []]);
  });
});

describe('what moves nothing of the picture', () => {
  it('is apart, the cover glass both ways', () => {
    const { list, at } = entered({ focalLengthMm: 200 }, undefined, {
      objective: { coverGlassMm: 0.17, testedFieldMm: 20, workingDistanceMm: 10, parfocalDistanceMm: 45 },
    });
    const apart = Object.fromEntries(list.filter((i) => i.apart).map((i) => [i.path, i.apart]));
    expect(apart).toEqual({
      '/objective/workingDistanceMm': 'one way',
      '/objective/parfocalDistanceMm': 'one way',
      '/objective/noseDiameterMm': 'one way',
      '/objective/coverGlassMm': 'both ways',
      '/sensor/registerMm': 'one way',
    });
    expect(at(leaves.testedField)).toBe(20);
    // Without the cover glass nothing else is taken for it.
    const without = entered({ focalLengthMm: 200 });
    expect(without.at(leaves.coverGlass)).toEqual(Gap.unknown('/objective/coverGlassMm'));
    expect(without.at(leaves.testedField)).toEqual(Gap.unknown('/objective/testedFieldMm'));
    expect(without.list.filter((i) => i.apart).map((i) => i.apart)).toEqual(['one way', 'one way']);
    // From 16 to 47 mm.
    expect(without.of(leaves.register)).toMatchObject({ value: 31.5, plusMinus: 15.5 });
  });
});

describe('what is chosen', () => {
  const { wavelength, litThreshold, depthConvention, sharpContrast, givenDetail, sharpFocus, sharpSpectrum, columns, rows } = leaves;
  const all = [wavelength, litThreshold, depthConvention, sharpContrast, givenDetail, sharpFocus, sharpSpectrum, columns, rows];
  it('is as chosen', () => {
    const { at } = entered({ focalLengthMm: 200 }, undefined, {
      wavelengthNm: 500,
      litThreshold: 0.7,
      depth: { convention: 'high-aperture' },
      sharp: { relativeContrast: 0.6, frequency: 30, focus: 'stack', spectrum: 'one wavelength' },
      sensor: { columns: 6000, rows: 8000 },
    });
    expect(all.map(at)).toEqual([500, 0.7, 'high-aperture', 0.6, 30, 'stack', 'one wavelength', 6000, 8000]);
  });
  it('stands for green light, half of it lit, waves and pixels, and four fifths of the contrast in one white frame', () => {
    const { at } = entered({ focalLengthMm: 200 });
    expect(all.map(at)).toEqual([
      550,
      0.5,
      'wave-and-pixel',
      0.8,
      Gap.unknown('/sharp/frequency'),
      'one frame',
      'photopic',
      Gap.unknown('/sensor/columns'),
      Gap.unknown('/sensor/rows'),
    ]);
    expect([at(leaves.sensorOffset), at(leaves.immersion), at(leaves.subjectIndex)]).toEqual([0, 1, 1]);
  });
});
