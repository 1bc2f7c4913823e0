import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainIndex } from '../../../core/glass/medium.ts';
import type { Beam, PupilPoints } from '../../../core/trace/beam.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { ringsAndSpokes } from '../../../core/trace/points.ts';
import { type Prescription, prescription } from '../../../core/trace/prescription.ts';
import { MISSED, type Rays, rays, THROUGH } from '../../../core/trace/rays.ts';
import { strehl, withoutTilt } from '../../../core/trace/strehl.ts';
import { chiefRay, wavefront } from '../../../core/trace/wavefront.ts';
import { between } from '../support/arbitrary-train.ts';
import { anyCase, part, pointsAt, sent } from './bundles.ts';

const NM = 550;
const MM = NM * 1e-6;
const POINTS = ringsAndSpokes(8, 12);

type Vector = readonly [x: number, y: number, z: number];
const less = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const place = (of: Rays, i: number): Vector => [of.x[i], of.y[i], of.z[i]] as unknown as Vector;
const direction = (of: Rays, i: number): Vector => [of.L[i], of.M[i], of.N[i]] as unknown as Vector;
const along = (of: Rays, i: number, t: number): Vector => place(of, i).map((p, k) => p + t * (direction(of, i)[k] as number)) as never;
const onPlane = (of: Rays, i: number, z: number): Vector => along(of, i, (z - (of.z[i] as number)) / (of.N[i] as number));

/** Wavefront and weights of a beam, in one call. */
function waved(lens: Prescription, points: PupilPoints, from: Beam, planeMm: number) {
  const { bundle, came } = sent(lens, points, from);
  const chief = chiefRay(lens, from, bundle, points);
  return { bundle, came, chief, waves: wavefront(bundle, chief, planeMm, NM) };
}

describe('the wavefront', () => {
  it('has the transverse aberration as its gradient, exactly, on real and on virtual planes', () => {
    const h = 1e-3;
    let virtual = 0;
    fc.assert(
      fc.property(anyCase, between(-0.9, 0.9), between(-0.4, 0.4), between(-1.6, 0.4), (one, px, py, off) => {
        const points = pointsAt([px, py], [px + h, py], [px - h, py], [px, py + h], [px, py - h]);
        const plane = one.backFocalLengthMm * (1 + off);
        const { bundle, came, chief, waves } = waved(one.lens, points, one.from, plane);
        if (came.rays < points.count || Math.abs(plane) < 20) return;
        if (plane < 0) virtual++;
        const centre = onPlane(chief.of, chief.index, plane);
        // On the reference sphere, by the plain quadratic.
        const radius = Math.hypot(...less(centre, place(chief.of, chief.index)));
        const onSphere = (i: number): Vector => {
          const to = less(centre, place(bundle, i));
          const b = dot(to, direction(bundle, i));
          const root = Math.sqrt(b * b - dot(to, to) + radius * radius);
          return along(bundle, i, Math.abs(b - root) < Math.abs(b + root) ? b - root : b + root);
        };
        const image = onPlane(bundle, 0, plane);
        const distance = dot(less(image, onSphere(0)), direction(bundle, 0));
        for (const [plus, minus] of [
          [1, 2],
          [3, 4],
        ] as const) {
          const rise = ((waves[plus] as number) - (waves[minus] as number)) * MM;
          const predicted = dot(less(image, centre), less(onSphere(plus), onSphere(minus))) / distance;
          expect(Math.abs(rise - predicted)).toBeLessThan(2e-5 * Math.abs(predicted) + 1e-11);
        }
      }),
      part(0.5, 31),
    );
    expect(virtual).toBeGreaterThan(5);
  });

  it('gains what two spheres differ by when the plane is moved away from the axis focus', () => {
    fc.assert(
      fc.property(anyCase, between(0.5, 3), ({ lens, backFocalLengthMm, focalLengthMm, from }, dz) => {
        const axis = { ...from, pupilRadiusMm: 1.5, slope: 0 };
        const { bundle, came, chief, waves } = waved(lens, POINTS, axis, backFocalLengthMm);
        if (came.rays < POINTS.count) return;
        const moved = wavefront(bundle, chief, backFocalLengthMm + dz, NM).map((w, i) => w - (waves[i] as number));
        // W020 ρ², the mean taken out, is W020/√12 rms.
        const told = ((axis.pupilRadiusMm ** 2 / 2) * (1 / focalLengthMm - 1 / (focalLengthMm + dz))) / Math.sqrt(12) / MM;
        expect(withoutTilt(moved, POINTS, came.weights) / told).toBeCloseTo(1, 2);
        // A wavefront that runs ahead at the rim comes to focus beyond.
        expect((moved[POINTS.count - 1] as number) < (moved[0] as number)).toBe(true);
      }),
      part(0.1, 32),
    );
  });

  it('of a thin lens on the axis is what third-order spherical aberration says', () => {
    const n = 1.6;
    for (const [c1, c2] of [
      [1 / 240, -1 / 240],
      [1 / 120, 0],
      [1 / 60, 1 / 120],
    ] as const) {
      const lens = prescription(
        { radiiMm: [1 / c1, 1 / c2], thicknessesMm: [1e-3], media: [plainIndex(n)], semiAperturesMm: [50, 50] },
        NM,
      );
      const { backFocalLengthMm: plane, effectiveFocalLengthMm: f } = cardinal(lens);
      const h = 3;
      const { came, waves } = waved(lens, POINTS, { pupilRadiusMm: h, pupilDistanceMm: 0, slope: 0 }, plane);
      // Welford 1986, the thin lens in its shape B and conjugate C = -1 for a far object; from memory.
      const B = (c1 + c2) / (c1 - c2);
      const shape = ((n + 2) / (n * (n - 1) ** 2)) * (B - (2 * (n * n - 1)) / (n + 2)) ** 2;
      const sum = ((h ** 4 / f ** 3) * ((n / (n - 1)) ** 2 + shape - n / (n + 2))) / 4;
      // W040 ρ⁴ with the mean taken out: rms 2/(3√5) of it.
      const told = ((sum / 8) * 2) / (3 * Math.sqrt(5)) / MM;
      expect(withoutTilt(waves, POINTS, came.weights) / told).toBeCloseTo(1, 2);
    }
  });

  it('is measured from the middle of the pupil, glass or no glass there', () => {
    fc.assert(
      fc.property(anyCase, ({ lens, backFocalLengthMm, from }) => {
        const points = pointsAt([0, 0], [0.5, 0.2], [-0.5, 0.2]);
        const { bundle, came, chief, waves } = waved(lens, points, from, backFocalLengthMm);
        if (came.rays < points.count) return;
        expect(chief.of).not.toBe(bundle);
        expect(waves[0]).toBeCloseTo(0, 8);
        // The lens is mirrored in the field axis.
        expect(waves[1]).toBeCloseTo(waves[2] as number, 8);
        const blind = { ...lens, clear: lens.clear.map(() => 0) };
        expect(chiefRay(blind, from, bundle, points)).toEqual(chief);
      }),
      part(0.1, 33),
    );
  });

  it('is measured from the nearest ray where the middle of the pupil passes beside the sphere', () => {
    const lens = prescription({ radiiMm: [5, -40], thicknessesMm: [3], media: [plainIndex(1.5)], semiAperturesMm: [5, 5] }, NM);
    const from = { pupilRadiusMm: 3, pupilDistanceMm: 100, slope: 0.058 };
    const points = ringsAndSpokes(6, 12);
    const { bundle, came, chief, waves } = waved(lens, points, from, cardinal(lens).backFocalLengthMm);
    expect(bundle.status.includes(MISSED)).toBe(true);
    expect(came.rays).toBeGreaterThan(3);
    expect(chief.of).toBe(bundle);
    expect(bundle.status[chief.index]).toBe(THROUGH);
    const off = (i: number): number => Math.hypot(points.x[i] as number, points.y[i] as number);
    for (let i = 0; i < points.count; i++) if (bundle.status[i] === THROUGH) expect(off(i)).toBeGreaterThanOrEqual(off(chief.index));
    expect(waves[chief.index]).toBeCloseTo(0, 9);
    expect(waves.every(Number.isFinite)).toBe(true);
  });

  it('is finite on the plane where the chief ray leaves the lens: the sphere is a point there', () => {
    fc.assert(
      fc.property(anyCase, ({ lens, from }) => {
        const { bundle, chief } = waved(lens, POINTS, from, 0);
        const there = wavefront(bundle, chief, chief.of.z[chief.index] as number, NM);
        expect(there.every(Number.isFinite)).toBe(true);
      }),
      part(0.03, 34),
    );
  });
});

describe('rays by hand', () => {
  /** On the plane z = 0: place and direction of each, and what path it has come. */
  const bundleOf = (...all: readonly (readonly [at: Vector, to: Vector, path: number])[]): Rays => {
    const bundle = rays(all.length);
    for (const [i, [at, to, path]] of all.entries()) {
      [bundle.x[i], bundle.y[i], bundle.z[i]] = at;
      [bundle.L[i], bundle.M[i], bundle.N[i]] = to;
      bundle.path[i] = path;
    }
    return bundle;
  };
  // The chief ray goes askew from the origin to the sphere's centre (6, 0, 8), 10 mm away.
  const askew = [[0, 0, 0], [0.6, 0, 0.8], 0] as const;

  it('on the sphere about where an oblique chief ray meets the plane are in step when their paths are', () => {
    const bundle = bundleOf(
      askew,
      [[6, -6, 0], [0, 0.6, 0.8], 0],
      [[6, -6, 0], [0, 0.6, 0.8], 20 * MM],
      // 5 mm before the sphere.
      [[6, -9, -4], [0, 0.6, 0.8], 0],
    );
    const waves = wavefront(bundle, { of: bundle, index: 0 }, 8, NM);
    for (const [i, due] of [0, 0, 20, 5 / MM].entries()) expect((waves[i] as number) / (due || 1)).toBeCloseTo(due && 1, 9);
  });

  it('that pass beside the sphere go to where they are nearest to its centre, and those that graze it too', () => {
    // A sphere of 1 mm about (0, 0, 1): parallel rays 3, 1 and 0.6 mm off the axis, from z = 0.
    const up = [0, 0, 1] as const;
    const bundle = bundleOf([[0, 0, 0], up, 0], [[0, 3, 0], up, 0], [[0, 1, 0], up, 0], [[0, 0.6, 0], up, 0]);
    const waves = wavefront(bundle, { of: bundle, index: 0 }, 1, NM);
    for (const [i, way] of [0, 1, 1, 0.2].entries()) expect((waves[i] as number) * MM).toBeCloseTo(way, 12);
  });

  it('that were lost count nothing', () => {
    const bundle = bundleOf(askew, [[6, -6, 0], [0, 0.6, 0.8], 20 * MM]);
    bundle.status[1] = MISSED;
    expect(wavefront(bundle, { of: bundle, index: 0 }, 8, NM)[1]).toBe(0);
  });

  it('stand in for the middle of the pupil: the nearest that came through, the first of those as near', () => {
    const ball = prescription({ radiiMm: [1, -1], thicknessesMm: [1], media: [plainIndex(1.5)], semiAperturesMm: [1, 1] }, NM);
    const from = { pupilRadiusMm: 1, pupilDistanceMm: 100, slope: 0.1 };
    const points = pointsAt([0.5, 0], [0, 0.5], [0, 0.1], [-0.5, 0]);
    const bundle = rays(4);
    expect(chiefRay(ball, from, bundle, points)).toEqual({ of: bundle, index: 2 });
    bundle.status[2] = MISSED;
    expect(chiefRay(ball, from, bundle, points)).toEqual({ of: bundle, index: 0 });
    bundle.status[0] = MISSED;
    expect(chiefRay(ball, from, bundle, points)).toEqual({ of: bundle, index: 1 });
  });
});

describe('tilt and mean', () => {
  const weights = POINTS.share;
  const plane = (a: number, b: number, c: number) => POINTS.x.map((x, i) => a + b * x + c * (POINTS.y[i] as number));
  it('are taken out whole, and nothing besides', () => {
    fc.assert(
      fc.property(between(-5, 5), between(-5, 5), between(-5, 5), between(0.01, 1), (a, b, c, astigmatism) => {
        expect(withoutTilt(plane(a, b, c), POINTS, weights)).toBeCloseTo(0, 12);
        // A(x² - y²) has no tilt: rms A/√6 over the disc.
        const waves = plane(a, b, c).map((w, i) => w + astigmatism * ((POINTS.x[i] as number) ** 2 - (POINTS.y[i] as number) ** 2));
        expect(withoutTilt(waves, POINTS, weights)).toBeCloseTo(astigmatism / Math.sqrt(6), 12);
        expect(strehl(plane(0, 0, 0), weights)).toBeCloseTo(1, 14);
      }),
      part(0.2, 35),
    );
  });
  it('of coma leave a third of it: 3ρ³ - 2ρ', () => {
    const coma = POINTS.x.map((x, i) => ((y) => y * (x * x + y * y))(POINTS.y[i] as number));
    expect(withoutTilt(coma, POINTS, weights)).toBeCloseTo(1 / Math.sqrt(72), 12);
  });
  it('are told from what only a part of the pupil says, or cannot say', () => {
    const points = pointsAt([0.1, 0.2], [0.3, 0.6], [-0.2, -0.4], [0.9, 0.1]);
    const waves = (): Float64Array => Float64Array.of(1, 3, -2, 50);
    // Three rays on a line: only the tilt along it is there, and it fits.
    expect(withoutTilt(waves(), points, Float64Array.of(0.4, 0.3, 0.3, 0))).toBeCloseTo(0, 12);
    expect(withoutTilt(waves(), points, Float64Array.of(1, 0, 0, 0))).toBe(0);
    expect(withoutTilt(waves(), points, Float64Array.of(0.5, 0, 0, 0.5))).toBeCloseTo(0, 12);
  });
});

describe('the Strehl ratio', () => {
  it('is never above that of a perfect wavefront, whose even weights add up to a digit more than 1', () => {
    const weights = new Float64Array(57).fill(1 / 57);
    expect(weights.reduce((sum, w) => sum + w, 0)).toBeGreaterThan(1);
    expect(strehl(new Float64Array(57), weights)).toBe(1);
  });
  const disc = ringsAndSpokes(14, 6);
  const squareOf = (i: number): number => (disc.x[i] as number) ** 2 + (disc.y[i] as number) ** 2;
  it.each([0.05, 0.25, 0.5, 1, 1.43])('of %s waves of defocus is the square of sin πw / πw', (w) => {
    const waves = Float64Array.from({ length: disc.count }, (_, i) => w * squareOf(i));
    expect(strehl(waves, disc.share)).toBeCloseTo((Math.sin(Math.PI * w) / (Math.PI * w)) ** 2, 9);
  });
  it('of small aberrations is exp of minus the square of the rms phase', () => {
    fc.assert(
      fc.property(between(-1, 1), between(-1, 1), between(-1, 1), between(0.003, 0.008), (a, b, c, rms) => {
        const waves = Float64Array.from({ length: disc.count }, (_, i) => {
          const [x, y] = [disc.x[i] as number, disc.y[i] as number];
          return a * squareOf(i) ** 2 + b * (x * x - y * y) + c * y * squareOf(i);
        });
        const now = withoutTilt(waves, disc, disc.share);
        if (now < 0.01) return;
        const small = waves.map((w) => (w * rms) / now);
        expect(strehl(small, disc.share)).toBeCloseTo(Math.exp(-((2 * Math.PI * rms) ** 2)), 5);
      }),
      part(0.2, 36),
    );
  });
  it('of a part of the pupil is judged beside that part alone', () => {
    const weights = disc.share.map((s, i) => ((disc.y[i] as number) > 0 ? 2 * s : 0));
    const waves = disc.y.map((y) => (y > 0 ? 0.3 : 0.8));
    expect(strehl(waves, weights)).toBeCloseTo(1, 12);
    expect(strehl(waves, disc.share)).toBeCloseTo(0, 12);
  });
});
