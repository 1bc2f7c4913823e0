import { describe, expect, it } from 'vitest';
import { figuresByLaw, type Known, spansByLaw } from '../../../core/choose/laws.ts';
import type { Limit } from '../../../core/choose/limits.ts';
import type { Variable } from '../../../core/choose/quantities.ts';
import type { Span } from '../../../core/choose/spans.ts';
import type { Value } from '../../../core/choose/values.ts';
import { Gap } from '../../../core/figure.ts';
import type { FigureId, Pairing } from '../../../core/index.ts';
import { RIG } from './windows-support.ts';

const FOCAL: Variable = '/relay/focalLengthMm';
const limitOn = (figure: FigureId, sense: Limit['sense'], limit: number): Limit => ({ name: 'length', figure, sense, limit });
/** Figures over a focal length from 100 to 400 mm, known in the middle and at the ends. */
const known = (of: (x: number) => Partial<Record<FigureId, Value>>): [Known, Known, Known] => [
  { at: 100, values: of(100) },
  { at: 200, values: of(200) },
  { at: 400, values: of(400) },
];
const spans = (
  limit: Limit,
  of: (x: number) => Partial<Record<FigureId, Value>>,
  pairing: Pairing = RIG,
  vary = FOCAL,
): Span[] | undefined => spansByLaw(limit, vary, pairing, known(of));

describe('where a figure meets its limit, by its law', () => {
  it('is from a place on, or up to it, for what grows or falls with the focal length', () => {
    const grows = (x: number) => ({ systemMagnification: x / 20 });
    expect(spans(limitOn('systemMagnification', 'least', 8), grows)).toEqual([[160, 400]]);
    expect(spans(limitOn('systemMagnification', 'most', 8), grows)).toEqual([[100, 160]]);
    const falls = (x: number) => ({ objectFieldWidthMm: 480 / x });
    expect(spans(limitOn('objectFieldWidthMm', 'least', 3), falls)).toEqual([[100, 160]]);
    expect(spans(limitOn('objectFieldWidthMm', 'most', 3), falls)).toEqual([[160, 400]]);
  });

  it('is all, nothing, or one place at the very end', () => {
    const grows = (x: number) => ({ systemMagnification: x / 20 });
    expect(spans(limitOn('systemMagnification', 'least', 1), grows)).toEqual([[100, 400]]);
    expect(spans(limitOn('systemMagnification', 'most', 100), grows)).toEqual([[100, 400]]);
    expect(spans(limitOn('systemMagnification', 'least', 100), grows)).toEqual([]);
    expect(spans(limitOn('systemMagnification', 'most', 1), grows)).toEqual([]);
    expect(spans(limitOn('systemMagnification', 'least', 20), grows)).toEqual([[400, 400]]);
    expect(spans(limitOn('systemMagnification', 'most', 5), grows)).toEqual([[100, 100]]);
  });

  it('is all or nothing for what stays, its limit included', () => {
    const same = () => ({ clearWorkingDistanceMm: 10 });
    for (const [sense, limit, met] of [
      ['least', 10, true],
      ['least', 9, true],
      ['least', 11, false],
      ['most', 10, true],
      ['most', 11, true],
      ['most', 9, false],
    ] as const)
      expect(spans(limitOn('clearWorkingDistanceMm', sense, limit), same), `${sense} ${limit}`).toEqual(met ? [[100, 400]] : []);
  });

  it('shifts with it for the length, whatever it is asked for', () => {
    const shifts = (x: number) => ({ totalLengthMm: 60 + x });
    expect(spans(limitOn('totalLengthMm', 'most', 300), shifts)).toEqual([[100, 240]]);
    expect(spans(limitOn('totalLengthMm', 'least', 300), shifts)).toEqual([[240, 400]]);
  });

  it('is not told where the law does not hold at either end, or a value is none', () => {
    const limit = limitOn('systemMagnification', 'least', 8);
    for (const place of [100, 400]) expect(spans(limit, (x) => ({ systemMagnification: x === place ? x / 21 : x / 20 }))).toBeUndefined();
    for (const place of [100, 200, 400]) {
      expect(spans(limit, (x) => ({ systemMagnification: x === place ? Gap.unknown('/relay/focalLengthMm') : x / 20 }))).toBeUndefined();
      expect(spans(limit, (x) => (x === place ? {} : { systemMagnification: x / 20 }))).toBeUndefined();
    }
    expect(spans(limit, (x) => ({ systemMagnification: (x / 20) * (1 + (x === 400 ? 1e-12 : 0)) }))).toEqual([[160, 400]]);
    expect(spans(limit, (x) => ({ systemMagnification: (x / 20) * (1 + (x === 400 ? 1e-7 : 0)) }))).toBeUndefined();
    const large = (off: number) => (x: number) => ({ clearWorkingDistanceMm: 1000 * (1 + (x === 400 ? off : 0)) });
    expect(spans(limitOn('clearWorkingDistanceMm', 'least', 20), large(1e-10))).toEqual([[100, 400]]);
    const below = (off: number) => (x: number) => ({ clearWorkingDistanceMm: -10 * (1 + (x === 400 ? off : 0)) });
    expect(spans(limitOn('clearWorkingDistanceMm', 'least', -20), below(1e-12))).toEqual([[100, 400]]);
    expect(spans(limitOn('clearWorkingDistanceMm', 'least', -20), below(1e-7))).toBeUndefined();
    // Without limit in one place and with one in another is no law, and without everywhere is one.
    const endless = Number.POSITIVE_INFINITY;
    const distance = limitOn('clearWorkingDistanceMm', 'least', 5);
    expect(spans(distance, (x) => ({ clearWorkingDistanceMm: x === 200 ? endless : 10 }))).toBeUndefined();
    expect(spans(distance, () => ({ clearWorkingDistanceMm: endless }))).toEqual([[100, 400]]);
    expect(spans(distance, () => ({ clearWorkingDistanceMm: 0 }))).toEqual([]);
  });
});

describe('a limit on the smallest or the coarsest of several', () => {
  const circles = (x: number) => ({ correctedCircleMm: 0.11 * x, litCircleMm: 0.15 * x, sharpCircleMm: 40, systemMagnification: x / 20 });
  const all = limitOn('coveredShare', 'least', 1);

  it('is met where each of them meets it', () => {
    // A frame of 33 mm in its diagonal, 27.5 by 18.24.
    expect(spans(all, circles)).toEqual([[expect.closeTo(33 / 0.11, 1), 400]]);
    expect(spans(all, (x) => ({ ...circles(x), sharpCircleMm: 30 }))).toEqual([]);
    // At the subject: 2.2 mm of field, 3 mm of light, and 800 / f of what is sharp.
    expect(spans(limitOn('goodFieldMm', 'least', 2.1), circles)).toEqual([[100, expect.closeTo(800 / 2.1, 9)]]);
    expect(spans(limitOn('goodFieldMm', 'least', 2.3), circles)).toEqual([]);
    const detail = (x: number) => ({ rayleighUm: 1.342, pixelAtSubjectUm: 80 / x });
    expect(spans(limitOn('resolvedDetailUm', 'most', 1.4), detail)).toEqual([[expect.closeTo(160 / 1.4, 9), 400]]);
    expect(spans(limitOn('resolvedDetailUm', 'most', 1.3), detail)).toEqual([]);
    expect(spans(limitOn('resolvedDetailUm', 'least', 1.4), detail)).toBeUndefined();
  });

  it('does not count a circle that is not known, but one that there is not or that is known here and not there', () => {
    const unknown = Gap.unknown('/relay/imageCircleMm');
    expect(spans(all, (x) => ({ ...circles(x), sharpCircleMm: unknown }))).toEqual([[expect.closeTo(300, 0), 400]]);
    expect(spans(all, (x) => ({ ...circles(x), sharpCircleMm: Gap.none('there is none') }))).toBeUndefined();
    expect(spans(all, (x) => ({ ...circles(x), sharpCircleMm: x === 100 ? unknown : 40 }))).toBeUndefined();
    expect(spans(all, () => ({ correctedCircleMm: unknown, litCircleMm: unknown, sharpCircleMm: unknown }))).toBeUndefined();
    // At the subject the magnification must be known.
    expect(spans(limitOn('goodFieldMm', 'least', 2.1), (x) => ({ ...circles(x), systemMagnification: unknown }))).toBeUndefined();
    // Of a figure that is no circle nothing is left out.
    expect(spans(limitOn('resolvedDetailUm', 'most', 1.4), (x) => ({ rayleighUm: unknown, pixelAtSubjectUm: 80 / x }))).toBeUndefined();
  });

  it('has a law only where the stops stand, of all of the frame, and without glass to trace', () => {
    const has = (pairing: Pairing, limit = all): boolean => figuresByLaw([limit], FOCAL, pairing).length > 0;
    expect(has(RIG)).toBe(true);
    expect(has(RIG, limitOn('coveredShare', 'least', 0.9))).toBe(false);
    expect(has(RIG, limitOn('coveredShare', 'most', 1))).toBe(false);
    expect(has(RIG, limitOn('goodFieldMm', 'most', 1))).toBe(false);
    expect(has({ ...RIG, stops: [{ diameterMm: 40, fromSensorMm: 30 }] })).toBe(false);
    expect(has({ ...RIG, stops: [{ diameterMm: 40, fromShoulderMm: 30 }] })).toBe(true);
    expect(
      has({
        ...RIG,
        stops: [
          { diameterMm: 40, fromShoulderMm: 30 },
          { diameterMm: 40, fromSensorMm: 30 },
        ],
      }),
    ).toBe(false);
    expect(has({ ...RIG, sensor: { ...RIG.sensor, registerMm: 20, throatDiameterMm: 40 } })).toBe(false);
    const glass = { radiiMm: [100, -100], thicknessesMm: [5], glasses: [1.5] };
    expect(has({ ...RIG, relay: { ...RIG.relay, glass } })).toBe(false);
    const lens = (more: Partial<Pairing['relay']>): Pairing => ({ ...RIG, relay: { kind: 'camera-lens', focalLengthMm: 200, ...more } });
    const openings = { clearApertureMm: 60, entrancePupilDiameterMm: 50, entrancePupilDepthMm: 30 };
    expect(has(lens(openings))).toBe(true);
    for (const name of Object.keys(openings)) expect(has(lens({ ...openings, [name]: undefined })), name).toBe(false);
    for (const [name, value] of Object.entries(openings)) expect(has(lens({ [name]: value })), name).toBe(false);
  });

  it('has a length that stays where the relay has its own, and none that is a guess of its class', () => {
    const length = limitOn('totalLengthMm', 'most', 300);
    const own: Pairing = { ...RIG, relay: { ...RIG.relay, rimToSensorMm: 200 } };
    expect(spans(length, () => ({ totalLengthMm: 260 }), own)).toEqual([[100, 400]]);
    expect(spans(length, () => ({ totalLengthMm: 310 }), own)).toEqual([]);
    const lens: Pairing = { ...RIG, relay: { kind: 'camera-lens', focalLengthMm: 200 } };
    expect(spans(length, (x) => ({ totalLengthMm: 60 + x }), lens)).toBeUndefined();
    expect(spans(length, () => ({ totalLengthMm: 260 }), { ...lens, relay: { ...lens.relay, rimToSensorMm: 200 } })).toEqual([[100, 400]]);
  });
});

describe('the laws of other quantities', () => {
  it('hold with the sensor in the relay’s focus alone', () => {
    const limit = limitOn('systemMagnification', 'least', 8);
    const off = { ...RIG, sensorOffsetMm: 2 };
    expect(figuresByLaw([limit], FOCAL, off)).toEqual([]);
    expect(spans(limit, (x) => ({ systemMagnification: x / 20 }), off)).toBeUndefined();
    expect(figuresByLaw([limit], FOCAL, { ...RIG, sensorOffsetMm: 0 })).toEqual(['systemMagnification']);
  });
  it('leave to roots what of a space or an opening has none', () => {
    for (const vary of ['/infinitySpaceMm', '/relay/clearApertureMm'] as const) {
      expect(figuresByLaw([limitOn('coveredShare', 'least', 1), limitOn('goodFieldMm', 'least', 1)], vary, RIG)).toEqual([]);
      expect(figuresByLaw([limitOn('totalLengthMm', 'most', 300)], vary, RIG)).toEqual(['totalLengthMm']);
    }
    expect(figuresByLaw([limitOn('resolvedDetailUm', 'most', 1)], '/infinitySpaceMm', RIG)).toEqual(['resolvedDetailUm']);
    expect(figuresByLaw([limitOn('resolvedDetailUm', 'most', 1)], '/relay/clearApertureMm', RIG)).toEqual([]);
  });
  it('want the magnification of what is judged at the subject, and of nothing else', () => {
    expect(figuresByLaw([limitOn('goodFieldMm', 'least', 1)], FOCAL, RIG).toSorted()).toEqual(
      ['correctedCircleMm', 'litCircleMm', 'sharpCircleMm', 'systemMagnification'].toSorted(),
    );
    expect(figuresByLaw([limitOn('coveredShare', 'least', 1)], FOCAL, RIG)).not.toContain('systemMagnification');
  });
});
