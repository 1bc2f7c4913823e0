import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Running } from '../../api/server.ts';
import { firstUnfit } from '../data/finite.ts';
import reference from './reference-relays.json' with { type: 'json' };
import { ask, post, start } from './support.ts';

/** The six relays of an independent program, and what else is asked of a relay's glass, through the API. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

interface Known {
  state: 'known';
  slope: number;
  radiusMm: number;
  planeMm: number;
  centroidMm: number;
  rmsSpotUm: number;
  sagittalRmsUm: number;
  tangentialRmsUm: number;
  rmsWavefrontWaves: number;
  strehl: number;
  focusShiftMm: number;
  sagittalFocusShiftMm: number;
  tangentialFocusShiftMm: number;
  lateralColourUm: number[];
  allColoursRmsSpotUm: number;
  raysThrough: number;
  raysClipped: number;
  raysReflected: number;
  shareThrough: number;
}
interface Trace {
  effectiveFocalLengthMm: number;
  backFocalLengthMm: number;
  chromaticBackFocusShiftMm: number[];
  fields: Known[];
}

async function traced(body: object): Promise<Trace> {
  const answer = await post(`${server.address}/api/relays/trace`, body);
  expect(answer.status, answer.text).toBe(200);
  expect(firstUnfit(answer.json)).toBeUndefined();
  return answer.json;
}

const relayOf = (glass: object, reversed?: boolean) => ({ kind: 'supplementary', glass, ...(reversed === undefined ? {} : { reversed }) });
const listed = (id: string) => reference.relays.find((r) => r.id === id) as (typeof reference.relays)[number];
const D = 587.5618;

describe('the reference relays through POST /api/relays/trace', () => {
  let compared = 0;
  const close = (got: number, value: number, within: number, what: string): void => {
    expect(Math.abs(got - value), `${what}: ${got} for ${value}`).toBeLessThanOrEqual(within);
    compared++;
  };

  /** Each as it is listed, and each pair's second also as the first one turned round. */
  const cases = reference.relays.flatMap((relay) => {
    const asListed = { name: relay.id, relay, body: relayOf(relay.glass) };
    if (!relay.id.endsWith('-reversed')) return [asListed];
    return [asListed, { name: `${relay.id} by turning`, relay, body: relayOf(listed(relay.id.replace('-reversed', '')).glass, true) }];
  });

  test.each(cases)('$name agrees', async ({ relay, body }) => {
    const wavelengthsNm = [relay.wavelengthNm, ...relay.chromaticBackFocusShiftMm.map((c) => c.wavelengthNm)];
    for (const pupilDistanceMm of new Set(relay.rows.map((row) => row.pupilDistanceMm))) {
      const rows = relay.rows.filter((row) => row.pupilDistanceMm === pupilDistanceMm);
      const slopes = rows.map((row) => row.slope);
      const got = await traced({
        relay: body,
        pupilDiameterMm: relay.pupilDiameterMm,
        pupilDistanceMm,
        slopes,
        wavelengthsNm,
        focus: 'paraxial',
      });
      close(got.effectiveFocalLengthMm / relay.effectiveFocalLengthMm, 1, 1e-8, 'focal length');
      close(got.backFocalLengthMm / relay.backFocalLengthMm, 1, 1e-8, 'back focal length');
      expect(got.chromaticBackFocusShiftMm[0]).toBe(0);
      for (const [i, { shiftMm }] of relay.chromaticBackFocusShiftMm.entries())
        close(got.chromaticBackFocusShiftMm[i + 1] as number, shiftMm, 0.5e-7, `shift ${i}`);
      expect(got.fields.length).toBe(rows.length);
      for (const [i, row] of rows.entries()) {
        const field = got.fields[i] as Known;
        expect(field).toMatchObject({ state: 'known', slope: row.slope, raysClipped: 0, raysReflected: 0, planeMm: got.backFocalLengthMm });
        for (const name of ['rmsSpotUm', 'sagittalRmsUm', 'tangentialRmsUm'] as const)
          close(field[name], row[name], 3e-4 * row[name] + 1e-4, `${name} ${i}`);
        // Printed to 1e-7 mm, far beyond the tolerance of the other lengths.
        close(field.centroidMm, row.centroidMm, 2e-7, `centroid ${i}`);
        close(field.rmsWavefrontWaves, row.rmsWavesTiltRemoved, 0.01 * row.rmsWavesTiltRemoved + 1e-4, `wavefront ${i}`);
      }
    }
  });

  test('were nine, and 414 values of them', () => {
    expect(cases.length).toBe(9);
    expect(compared).toBe(9 * 2 * (2 + 4 + 4 * 5));
  });
});

describe('one flat focus', () => {
  const fieldRadiiMm = Array.from({ length: 9 }, (_, i) => (21.63 * i) / 8);
  const worst = async (reversed: boolean, pupilDistanceMm: number): Promise<number> => {
    const relay = relayOf(listed('R3').glass, reversed);
    const { fields } = await traced({
      relay,
      pupilDiameterMm: 11.2,
      pupilDistanceMm,
      fieldRadiiMm,
      wavelengthsNm: [587.56],
      focus: 'one-frame',
    });
    expect(new Set(fields.map((f) => f.planeMm)).size).toBe(1);
    return Math.max(...fields.map((f) => f.rmsSpotUm));
  };
  // Worked out by the same independent program, which looked for its focus step by step: it may end a last digit above the least.
  test('of the close-up form: 5.55 µm at 85 mm, 19.9 at 20 mm', async () => {
    expect(Math.abs((await worst(false, 85)) - 5.55)).toBeLessThan(0.01);
    expect(await worst(false, 20)).toBeCloseTo(19.9, 1);
  });
  test('of the same turned round: 33.7 to 30.8 µm wherever it stands', async () => {
    expect(await worst(true, 20)).toBeCloseTo(33.7, 1);
    expect(await worst(true, 150)).toBeCloseTo(30.8, 1);
    const middle = await worst(true, 85);
    expect(middle).toBeGreaterThan(30.8);
    expect(middle).toBeLessThan(33.7);
  });
});

describe('what is asked otherwise', () => {
  const base = { relay: relayOf(listed('R3').glass), pupilDiameterMm: 11.2, pupilDistanceMm: 60, wavelengthsNm: [D, 486.1327, 656.2725] };
  const fieldRadiiMm = [0, 8, 14.2, 21.63];

  test('radii stand for slopes times the focal length', async () => {
    const byRadius = await traced({ ...base, fieldRadiiMm, focus: 'paraxial' });
    const f = byRadius.effectiveFocalLengthMm;
    expect(byRadius.fields.map((one) => one.slope)).toEqual(fieldRadiiMm.map((r) => r / f));
    for (const [i, one] of byRadius.fields.entries()) expect(one.radiusMm).toBeCloseTo(fieldRadiiMm[i] as number, 12);
    expect(await traced({ ...base, slopes: fieldRadiiMm.map((r) => r / f), focus: 'paraxial' })).toEqual(byRadius);
  });

  test('each at its best: no spot larger than on either flat plane, and the plane told', async () => {
    const [best, frame, paraxial] = (await Promise.all(
      ['each-best', 'one-frame', 'paraxial'].map((focus) => traced({ ...base, fieldRadiiMm, focus })),
    )) as [Trace, Trace, Trace];
    for (const [i, one] of best.fields.entries()) {
      expect(one.planeMm).toBeCloseTo(best.backFocalLengthMm + one.focusShiftMm, 10);
      expect(one.rmsSpotUm).toBeLessThanOrEqual((frame.fields[i] as Known).rmsSpotUm);
      expect(one.rmsSpotUm).toBeLessThan((paraxial.fields[i] as Known).rmsSpotUm);
      // Where the beam is widest the two directions pull both ways; the best lies between.
      expect((one.sagittalFocusShiftMm - one.focusShiftMm) * (one.tangentialFocusShiftMm - one.focusShiftMm)).toBeLessThanOrEqual(1e-12);
      expect(one.rmsSpotUm ** 2).toBeCloseTo(one.sagittalRmsUm ** 2 + one.tangentialRmsUm ** 2, 9);
    }
    // Shifts do not depend on the plane that is judged.
    expect(frame.fields.map((one) => one.focusShiftMm)).toEqual(best.fields.map((one) => one.focusShiftMm));
    // Undercorrected zones focus short of the paraxial plane.
    expect((best.fields[0] as Known).focusShiftMm).toBeLessThan(0);
    expect(Math.max(...frame.fields.map((one) => one.rmsSpotUm))).toBeLessThan(Math.max(...paraxial.fields.map((one) => one.rmsSpotUm)));
  });

  test('colours: the lateral shift is the difference of centroids, and widens the spot of all', async () => {
    const all = await traced({ ...base, fieldRadiiMm, focus: 'paraxial' });
    const slopes = all.fields.map((one) => one.slope);
    for (const [i, one] of all.fields.entries()) {
      expect(one.lateralColourUm).toHaveLength(3);
      expect(one.lateralColourUm[0]).toBe(0);
      if (i === 0) for (const shift of one.lateralColourUm) expect(shift).toBeCloseTo(0, 9);
    }
    const alone = await traced({ ...base, wavelengthsNm: [D], slopes, focus: 'paraxial' });
    expect(alone.fields.map((one) => one.lateralColourUm)).toEqual(slopes.map(() => [0]));
    for (const one of alone.fields) expect(one.allColoursRmsSpotUm).toBeCloseTo(one.rmsSpotUm, 9);
    // Seen from the other wavelength the shift is the opposite one, on a plane a little away.
    const swapped = await traced({ ...base, wavelengthsNm: [486.1327, D], slopes, focus: 'paraxial' });
    const corner = (of: Trace) => of.fields[3] as Known;
    expect(corner(swapped).lateralColourUm[1]).toBeCloseTo(-(corner(all).lateralColourUm[1] as number), 0);
    expect(Math.abs(corner(all).lateralColourUm[1] as number)).toBeGreaterThan(0.5);
  });

  test('a single lens: its lateral colour is that of its dispersion, and the spot of all holds it', async () => {
    const glass = { radiiMm: [206, -206], thicknessesMm: [5], glasses: ['N-BK7'] };
    const [slope, pupilDistanceMm] = [0.1, 100];
    const { fields, chromaticBackFocusShiftMm: shift } = await traced({
      relay: relayOf(glass),
      pupilDiameterMm: 2,
      pupilDistanceMm,
      slopes: [slope],
      wavelengthsNm: [486.1327, 656.2725],
      focus: 'paraxial',
    });
    const [one] = fields as [Known];
    // A thin lens at z from the pupil bends the chief ray by z t / f: on one plane it lands z t f δ(1/f) nearer.
    const told = (1e3 * pupilDistanceMm * slope * (shift[1] as number)) / 199;
    expect((one.lateralColourUm[1] as number) / told).toBeCloseTo(1, 1);
    expect(one.allColoursRmsSpotUm).toBeGreaterThan(Math.abs(one.lateralColourUm[1] as number) / 2);
  });

  test('a relay of the catalogue with glass told, by class too', async () => {
    const from = { from: 'close-up-5d-58', glass: listed('R1').glass };
    const inline = await traced({ ...base, relay: relayOf(listed('R1').glass), fieldRadiiMm, focus: 'one-frame' });
    expect(await traced({ ...base, relay: from, fieldRadiiMm, focus: 'one-frame' })).toEqual(inline);
    const made = await traced({
      ...base,
      relay: { from: 'close-up-5d-58', glass: { class: 'cemented-achromat' } },
      fieldRadiiMm,
      focus: 'one-frame',
    });
    expect(made.effectiveFocalLengthMm).toBeCloseTo(200, 6);
  });

  test('two lenses in a row', async () => {
    const { glass } = listed('R1');
    const row = await traced({
      ...base,
      relay: relayOf({ ...glass, second: { gapMm: 1, ...glass, reversed: true } }),
      fieldRadiiMm,
      focus: 'one-frame',
    });
    expect(row.effectiveFocalLengthMm).toBeGreaterThan(98);
    expect(row.effectiveFocalLengthMm).toBeLessThan(106);
  });
});

describe('beams that do not come through whole', () => {
  const semi = (h: number) => ({ radiiMm: ['plane', -100], thicknessesMm: [6], glasses: ['N-BK7'], semiAperturesMm: [h, h] });
  const ask1 = (glass: object, more: object = {}) =>
    traced({
      relay: relayOf(glass),
      pupilDiameterMm: 12,
      pupilDistanceMm: 40,
      slopes: [0, 0.1, 0.4],
      wavelengthsNm: [D, 450],
      focus: 'one-frame',
      ...more,
    });

  test('are counted, and judged by what does', async () => {
    const [axis, off, dark] = (await ask1(semi(6))).fields as [Known, Known, Known];
    expect(axis).toMatchObject({ state: 'known', raysClipped: 0 });
    expect(axis.shareThrough).toBeCloseTo(1, 12);
    // Two discs of radius 6, 4 mm apart at the lens: they share 58 % of one.
    expect(off.raysThrough + off.raysClipped).toBe(axis.raysThrough);
    expect(off.shareThrough).toBeCloseTo((2 / Math.PI) * (Math.acos(1 / 3) - (1 / 3) * Math.sqrt(8 / 9)), 1);
    expect(dark).toEqual({
      state: 'none',
      slope: 0.4,
      radiusMm: expect.any(Number),
      raysThrough: 0,
      raysClipped: axis.raysThrough,
      raysReflected: 0,
      why: 'the whole beam passes beside the glass',
    });
  });
  test('all dark: still an answer', async () => {
    const { fields, backFocalLengthMm } = await ask1(semi(1), { slopes: [0.2, 0.3] });
    expect(fields.map((f) => f.state)).toEqual(['none', 'none']);
    expect(backFocalLengthMm).toBeGreaterThan(0);
  });
  test('totally reflected ones are told from clipped ones', async () => {
    const ball = { radiiMm: ['plane', -10], thicknessesMm: [9.9], glasses: [1.9], semiAperturesMm: [9.9, 9.9] };
    const [axis, off] = (await ask1(ball, { pupilDiameterMm: 14, pupilDistanceMm: 0, slopes: [0, 0.9] })).fields as [Known, Known];
    expect(axis.raysReflected).toBeGreaterThan(0);
    expect(axis.raysThrough).toBeGreaterThan(0);
    expect(axis.raysThrough + axis.raysClipped + axis.raysReflected).toBe(off.raysThrough + off.raysClipped + off.raysReflected);
    const rim = { radiiMm: ['plane', -20], thicknessesMm: [5], glasses: [3.5] };
    const [lost] = (await ask1(rim, { pupilDiameterMm: 0.1, pupilDistanceMm: -4, slopes: [2] })).fields as unknown as [
      { state: string; why: string },
    ];
    expect(lost).toMatchObject({ state: 'none', why: 'the whole beam is totally reflected' });
  });
});

test('GET /api/glasses lists the glasses by name', async () => {
  const { status, json } = await ask(`${server.address}/api/glasses`);
  expect(status).toBe(200);
  const bk7 = json.glasses.find((g: { name: string }) => g.name === 'N-BK7');
  expect(bk7.nd).toBeCloseTo(1.5168, 4);
  expect(bk7.vd).toBeCloseTo(64.17, 2);
  expect(bk7.rangeNm).toEqual([300, 2500]);
  expect(json.glasses.length).toBeGreaterThan(30);
  expect(firstUnfit(json)).toBeUndefined();
});
