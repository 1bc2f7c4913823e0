import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainIndex } from '../../../core/glass/medium.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { type ClosePencil, closeFoci, closePencil } from '../../../core/trace/coddington.ts';
import type { Lens } from '../../../core/trace/lens.ts';
import { rayPair } from '../../../core/trace/paraxial-rays.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import { MISSED, type Rays, REFLECTED, rays, THROUGH, trace } from '../../../core/trace/rays.ts';
import { fieldCurves, seidelBySurface, seidelSums } from '../../../core/trace/seidel.ts';
import { ANY_NM, lensesUpTo } from '../support/arbitrary-lens.ts';
import { between } from '../support/arbitrary-train.ts';
import { part } from './bundles.ts';

interface Aim {
  readonly pupilDistanceMm: number;
  readonly slope: number;
}

const anyAim: fc.Arbitrary<Aim> = fc.record({ pupilDistanceMm: between(-15, 60), slope: between(-0.25, 0.25) });

const powered = lensesUpTo(Number.POSITIVE_INFINITY).filter((lens) => Math.abs(cardinal(prescription(lens, ANY_NM)).matrix.c) > 2e-3);

/** A ray through a point of the pupil's plane, from the point `object` along the chief ray before the pupil's middle. */
function from(bundle: Rays, i: number, { pupilDistanceMm, slope }: Aim, object: number, px: number, py: number): void {
  const N = 1 / Math.sqrt(1 + slope * slope);
  let [L, M, last] = [0, slope * N, N];
  if (Number.isFinite(object)) {
    const way = [px, py + object * slope * N, object * N] as const;
    const size = Math.sign(object) * Math.hypot(...way);
    [L, M, last] = [way[0] / size, way[1] / size, way[2] / size];
  }
  [bundle.x[i], bundle.y[i], bundle.z[i]] = [px, py, -pupilDistanceMm];
  [bundle.L[i], bundle.M[i], bundle.N[i]] = [L, M, last];
}

/** Where two real rays beside the chief ray cross, sagittal and tangential; undefined where any of them is lost. */
function crossings(lens: Lens, aim: Aim, object: number, off: number): { sagittalMm: number; tangentialMm: number } | undefined {
  const bundle = rays(3);
  from(bundle, 0, aim, object, off, 0);
  from(bundle, 1, aim, object, 0, off);
  from(bundle, 2, aim, object, 0, -off);
  trace(prescription(lens, ANY_NM), bundle);
  if (bundle.status.some((status) => status !== THROUGH)) return undefined;
  const at = (i: number) => ({
    y: bundle.y[i] as number,
    z: bundle.z[i] as number,
    slope: (bundle.M[i] as number) / (bundle.N[i] as number),
  });
  const [top, bottom] = [at(1), at(2)];
  return {
    sagittalMm: (bundle.z[0] as number) - ((bundle.x[0] as number) * (bundle.N[0] as number)) / (bundle.L[0] as number),
    tangentialMm: (bottom.y - bottom.slope * bottom.z - top.y + top.slope * top.z) / (top.slope - bottom.slope),
  };
}

/** The crossings of ever closer rays: their error falls with the square of the distance. */
function limit(lens: Lens, aim: Aim, object: number) {
  const [wide, close] = [crossings(lens, aim, object, 0.02), crossings(lens, aim, object, 0.01)];
  if (!wide || !close) return undefined;
  return { sagittalMm: (4 * close.sagittalMm - wide.sagittalMm) / 3, tangentialMm: (4 * close.tangentialMm - wide.tangentialMm) / 3 };
}

const through = (lens: Lens, aim: Aim): ClosePencil => {
  const pencil = closePencil(prescription(lens, ANY_NM), aim);
  if (pencil.status !== THROUGH) throw new Error('lost');
  return pencil;
};

describe('rays close to a chief ray', () => {
  it('meet where real ones do, in collimated light and from a point', () => {
    let held = 0;
    const object = fc.oneof(fc.constant(Number.POSITIVE_INFINITY), between(80, 400));
    fc.assert(
      fc.property(powered, anyAim, object, (lens, aim, objectMm) => {
        const due = limit(lens, aim, objectMm);
        if (!due) return;
        const got = closeFoci(through(lens, aim), objectMm);
        for (const key of ['sagittalMm', 'tangentialMm'] as const) {
          // The farther off, the nearer to parallel they are.
          if (Math.abs(due[key]) > 2000) continue;
          held++;
          expect(Math.abs(got[key] - due[key]), `${key} ${got[key]}, rays ${due[key]}`).toBeLessThan(
            1e-5 * Math.max(10, Math.abs(due[key])),
          );
        }
      }),
      part(0.3, 171),
    );
    if (process.env.RUNS === undefined) expect(held).toBeGreaterThan(60);
  });

  it('keep the invariant: both matrices have a determinant of 1, and on the axis both are the paraxial one', () => {
    fc.assert(
      fc.property(lensesUpTo(30), anyAim, (lens, aim) => {
        const prescribed = prescription(lens, ANY_NM);
        const pencil = closePencil(prescribed, aim);
        if (pencil.status === THROUGH)
          for (const { a, b, c, d } of [pencil.sagittal, pencil.tangential])
            expect(Math.abs(a * d - b * c - 1)).toBeLessThan(1e-11 * Math.max(1, Math.abs(a * d)));
        const axial = through(lens, { ...aim, slope: 0 });
        const { a, b, c, d } = cardinal(prescribed).matrix;
        const due = { a, b: b + a * aim.pupilDistanceMm, c, d: d + c * aim.pupilDistanceMm };
        for (const key of ['a', 'b', 'c', 'd'] as const)
          for (const got of [axial.sagittal, axial.tangential])
            expect(Math.abs(got[key] - due[key])).toBeLessThan(1e-11 * Math.max(1, Math.abs(due[key])));
      }),
      part(0.2, 172),
    );
  });

  it('go with the chief ray where the trace takes it', () => {
    fc.assert(
      fc.property(lensesUpTo(Number.POSITIVE_INFINITY), anyAim, (lens, aim) => {
        const prescribed = prescription(lens, ANY_NM);
        const ray = rays(1);
        from(ray, 0, aim, Number.POSITIVE_INFINITY, 0, 0);
        trace(prescribed, ray);
        const pencil = closePencil(prescribed, aim);
        expect(pencil.status).toBe(ray.status[0]);
        if (pencil.status !== THROUGH) expect(pencil.surface).toBe(ray.surface[0]);
        else for (const key of ['y', 'z', 'M', 'N'] as const) expect(pencil[key]).toBeCloseTo(ray[key][0] as number, 11);
      }),
      part(0.3, 173),
    );
  });

  it('fall off the paraxial plane as third-order theory says, the closer the smaller the field', () => {
    fc.assert(
      fc.property(powered, between(-15, 60), (lens, pupilDistanceMm) => {
        const prescribed = prescription(lens, ANY_NM);
        const { backFocalLengthMm } = cardinal(prescribed);
        const shift = (slope: number) => {
          const { sagittalMm, tangentialMm } = closeFoci(through(lens, { pupilDistanceMm, slope }));
          return [sagittalMm - backFocalLengthMm, tangentialMm - backFocalLengthMm] as const;
        };
        const slope = 0.01;
        const [whole, half] = [shift(slope), shift(slope / 2)];
        const pair = rayPair(prescribed, { pupilRadiusMm: 1, pupilDistanceMm, slope });
        const surfaces = seidelBySurface(prescribed, pair);
        const imageSlope = pair.marginal.slope[prescribed.count] as number;
        const { sagittalMm, tangentialMm } = fieldCurves(seidelSums(surfaces), imageSlope);
        const size = surfaces.reduce((sum, { S3, S4 }) => sum + 3 * Math.abs(S3) + Math.abs(S4), 0) / (2 * imageSlope ** 2);
        // The square of the field alone: what the fourth power adds cancels between the two.
        for (const [i, due] of [sagittalMm, tangentialMm].entries()) {
          const got = (16 * (half[i] as number) - (whole[i] as number)) / 3;
          expect(Math.abs(got - due), `${i}: ${got}, sums ${due}`).toBeLessThan(1e-4 * size + 1e-10);
        }
      }),
      part(0.2, 174),
    );
  });

  it('follow the chief ray past what is clipped, and say where it is lost beyond that', () => {
    const lens: Lens = { radiiMm: [20, Infinity], thicknessesMm: [5], media: [plainIndex(1.6)], semiAperturesMm: [1, 1] };
    const prescribed = prescription(lens, ANY_NM);
    expect(closePencil(prescribed, { pupilDistanceMm: 30, slope: 0.3 }).status).toBe(THROUGH);
    expect(closePencil(prescribed, { pupilDistanceMm: 100, slope: 0.3 })).toEqual({ status: MISSED, surface: 0 });
    const steep = prescription({ ...lens, radiiMm: [Infinity, -8] }, ANY_NM);
    expect(closePencil(steep, { pupilDistanceMm: 20, slope: 0.3 })).toEqual({ status: REFLECTED, surface: 1 });
  });

  it('leave a plate in parallel, and a point seen through it moves as the textbook says', () => {
    const [n, t, slope] = [1.5, 10, 0.5];
    const plate: Lens = { radiiMm: [Infinity, Infinity], thicknessesMm: [t], media: [plainIndex(n)], semiAperturesMm: [9, 9] };
    const pencil = through(plate, { pupilDistanceMm: 0, slope });
    expect([pencil.sagittal.c, pencil.tangential.c].map(Math.abs)).toEqual([0, 0]);
    const [sine, cosine] = [slope, 1].map((part) => part / Math.hypot(slope, 1)) as [number, number];
    const inside = Math.sqrt(1 - (sine / n) ** 2);
    // Along the ray: t (1 / (n cos i')) and t (cos² i / (n cos³ i')) instead of the way in air.
    const { sagittalMm, tangentialMm } = closeFoci(pencil, 50);
    expect(sagittalMm).toBeCloseTo(-cosine * (50 + t / (n * inside)), 12);
    expect(tangentialMm).toBeCloseTo(-cosine * (50 + (t * cosine ** 2) / (n * inside ** 3)), 12);
  });
});
