import { describe, expect, test } from 'vitest';
import { coloursOf, spectrumOf } from '../../../core/contrast/colours.ts';
import { bestFocus, type FieldPoint, fieldPoint } from '../../../core/contrast/field.ts';
import { contrastAt, contrastThroughFocus, steadiest } from '../../../core/contrast/through-focus.ts';
import { diffractionMtf } from '../../../core/diffraction/mtf.ts';
import { oneWavelength, photopic } from '../../../core/diffraction/spectrum.ts';
import { beam } from '../../../core/trace/beam.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { reversed, scaled } from '../../../core/trace/lens.ts';
import { ringsAndSpokes } from '../../../core/trace/points.ts';
import { trace } from '../../../core/trace/rays.ts';
import { BENT, LIGHT, settingOf } from './lenses.ts';

const point = (setting: ReturnType<typeof settingOf>, slope: number): FieldPoint => {
  const found = fieldPoint(setting, slope);
  if (!found) throw new Error('no light arrives');
  return found;
};

const f = cardinal(settingOf(BENT).colours.reference).effectiveFocalLengthMm;
const mm = LIGHT * 1e-6;

describe('contrast by pairs of rays', () => {
  test('of a pupil without aberrations is the closed form to 1e-3, the frequency counted in direction cosines', () => {
    for (const frequency of [5, 20, 48, 70, 90]) {
      const { sagittal, tangential } = point(settingOf(BENT, { frequency }), 0);
      const exact = diffractionMtf((frequency * mm * f) / 11.2);
      expect(Math.abs(sagittal.perfect - exact)).toBeLessThan(1e-3);
      expect(Math.abs(tangential.perfect - exact)).toBeLessThan(1e-3);
    }
  });

  test('is 1 on the axis of a beam so slender that nothing is left of the aberrations', () => {
    const { sagittal, tangential } = point(settingOf(BENT, { radius: 0.8, frequency: 6 }), 0);
    expect(contrastAt(sagittal, 0)).toBeGreaterThan(0.9999);
    expect(contrastAt(tangential, 0)).toBeGreaterThan(0.9999);
  });

  test('through focus is the same sum at each place', () => {
    const { tangential } = point(settingOf(BENT), 0.08);
    const range = { from: -1, step: 0.125, count: 17 };
    contrastThroughFocus(tangential, range).forEach((c, k) => {
      expect(c).toBeCloseTo(contrastAt(tangential, range.from + k * range.step), 10);
    });
  });

  // By a second route: in the limit of low frequencies an image is its rays' places alone (geometric optics).
  test.each([0.05, 0.09])('falls at low frequencies as the rays of the spot part, slope %s', (slope) => {
    const setting = settingOf(BENT, { distance: 20, frequency: 0.5 });
    const points = ringsAndSpokes(16, 32);
    const rays = beam(points, { pupilRadiusMm: 5.6, pupilDistanceMm: 20, slope });
    trace(setting.colours.reference, rays);
    for (const focus of [-9, 7]) {
      const plane = setting.colours.focusMm + focus;
      const geometric = (at: (i: number) => number): number => {
        let [re, im] = [0, 0];
        for (let i = 0; i < points.count; i++) {
          re += (points.share[i] as number) * Math.cos(2 * Math.PI * setting.frequency * at(i));
          im += (points.share[i] as number) * Math.sin(2 * Math.PI * setting.frequency * at(i));
        }
        return Math.hypot(re, im);
      };
      const reach = (i: number): number => (plane - (rays.z[i] as number)) / (rays.N[i] as number);
      const { sagittal, tangential } = point(setting, slope);
      const x = geometric((i) => (rays.x[i] as number) + reach(i) * (rays.L[i] as number));
      const y = geometric((i) => (rays.y[i] as number) + reach(i) * (rays.M[i] as number));
      expect(1 - Math.min(x, y)).toBeGreaterThan(0.05);
      expect(Math.abs(contrastAt(sagittal, focus) - x)).toBeLessThan(0.01 * (1 - x));
      expect(Math.abs(contrastAt(tangential, focus) - y)).toBeLessThan(0.01 * (1 - y));
    }
  });

  // W(r) = δ NA² r² / 2 in waves; the pairs of a sheared disc all differ by δ NA s x: summed by a plain grid here.
  test('out of focus on the axis is the sum over the lens-shaped overlap', () => {
    const setting = settingOf(BENT, { radius: 3, frequency: 20 });
    const { tangential } = point(setting, 0);
    const { focus } = steadiest(tangential);
    const NA = 3 / f;
    const shear = (20 * mm) / NA;
    for (const defocus of [0.5, 1, 2]) {
      let [re, area] = [0, 0];
      const n = 800;
      for (let i = 0; i < n; i++)
        for (let j = 0; j < n; j++) {
          const [x, y] = [-1 + (2 * i + 1) / n, -1 + (2 * j + 1) / n];
          if (x * x + (Math.abs(y) + shear / 2) ** 2 > 1) continue;
          area++;
          re += Math.cos((2 * Math.PI * defocus * NA * NA * shear * y) / mm);
        }
      expect(contrastAt(tangential, focus + defocus)).toBeCloseTo(re / area, 3);
    }
  });

  test('falls from the steadiest focus as 1 - 2π² variance: a fifth at the reach', () => {
    const { sagittal, tangential } = point(settingOf(BENT, { radius: 3, frequency: 20 }), 0.02);
    for (const pairs of [sagittal, tangential]) {
      const { focus, reach } = steadiest(pairs);
      const top = contrastAt(pairs, focus);
      expect(contrastAt(pairs, focus + reach / 4) / top).toBeCloseTo(1 - 0.2 / 16, 3);
      expect(contrastAt(pairs, focus - reach / 4) / top).toBeCloseTo(1 - 0.2 / 16, 3);
    }
  });

  test('in white light is lower than in one colour, and counts the shift of colours against each other', () => {
    const slope = 18 / f;
    const best = (setting: ReturnType<typeof settingOf>): number => bestFocus([point(setting, slope)]).contrast;
    expect(best(settingOf(BENT, { spectrum: photopic() }))).toBeLessThan(best(settingOf(BENT)));
  });

  test('does not change when lens, pupil, distance and wavelengths of the pattern grow together', () => {
    const plain = point(settingOf(BENT), 0.08);
    // The same number of waves needs the same lens: so the pattern is made coarser and the light is left; contrast then differs.
    const large = point(settingOf(scaled(BENT, 1.5), { radius: 8.4, distance: 127.5, frequency: 48 }), 0.08);
    for (const direction of ['sagittal', 'tangential'] as const) {
      expect(large[direction].perfect).toBeCloseTo(plain[direction].perfect, 6);
      for (let i = 0; i < plain[direction].count; i++) {
        expect(large[direction].phase[i]).toBeCloseTo(1.5 * (plain[direction].phase[i] as number), 6);
        expect(large[direction].rate[i]).toBeCloseTo(plain[direction].rate[i] as number, 6);
      }
    }
  });

  test('says of a field point without light that there is none', () => {
    expect(fieldPoint({ ...settingOf(BENT), discs: { walk: [0, 100], radius: [5.6, 5] } }, 0.2)).toBeUndefined();
  });

  // Strong side first and far out of focus: phases that spread over many waves. On the axis both directions are one.
  test('on the axis is the same in both directions at any focus, and comes round to nothing where nothing is left', () => {
    const { sagittal, tangential } = point(settingOf(reversed(BENT)), 0);
    for (const focus of [-6, -4.2, -3, -2]) {
      expect(contrastAt(sagittal, focus)).toBeLessThan(0.05);
      expect(contrastAt(tangential, focus)).toBeLessThan(0.05);
    }
    for (const focus of [-0.6, -0.2, 0, 0.3]) expect(contrastAt(tangential, focus)).toBeCloseTo(contrastAt(sagittal, focus), 3);
  });

  // A single lens parts the colours so far that five wavelengths, each by itself, would come round to .6 here.
  test('of a single lens in white light is what many wavelengths make of it', () => {
    const single = {
      ...BENT,
      radiiMm: [103, Number.POSITIVE_INFINITY],
      thicknessesMm: [5],
      media: BENT.media.slice(0, 1),
      semiAperturesMm: [20, 20],
    };
    const colours = coloursOf(single, spectrumOf('photopic', LIGHT), LIGHT);
    const setting = { colours, discs: { walk: [0], radius: [4] }, pupilDistanceMm: 85, frequency: 37 };
    const { tangential } = point(setting as never, 14.2 / 200);
    expect(tangential.count).toBeGreaterThan(1000);
    const curve = contrastThroughFocus(tangential, { from: -12, step: 0.05, count: 361 });
    expect(Math.max(...curve)).toBeLessThan(0.02);
    // The polynomial through the traced wavelengths is what tracing one between them gives.
    const fine = colours.between?.weights.length ?? 0;
    expect(fine).toBe(15);
    const own = point({ ...setting, colours: coloursOf(single, oneWavelength(600), LIGHT) } as never, 14.2 / 200).tangential;
    const per = tangential.count / fine;
    const mean = (pairs: typeof own, from: number, to: number): number => {
      let [w, sum] = [0, 0];
      for (let i = from; i < to; i++) [w, sum] = [w + (pairs.share[i] ?? 0), sum + (pairs.share[i] ?? 0) * (pairs.phase[i] ?? 0)];
      return sum / w;
    };
    expect(mean(tangential, 9 * per, 10 * per)).toBeCloseTo(mean(own, 0, own.count), 1);
  });
});
