import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainIndex } from '../../../core/glass/medium.ts';
import { type Lens, lengthOf, reversed, scaled } from '../../../core/trace/lens.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import { CLIPPED, MISSED, type Rays, REFLECTED, rays, THROUGH, trace } from '../../../core/trace/rays.ts';
import { ANY_NM, lensesUpTo } from '../support/arbitrary-lens.ts';
import { between } from '../support/arbitrary-train.ts';
import { tracedByAngles } from '../support/by-angles.ts';
import { part } from './bundles.ts';

interface Start {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly L: number;
  readonly M: number;
}

/** Rays askew to the axis, from before the lens, and as steep as they come. */
const anyStart: fc.Arbitrary<Start> = fc.record({
  x: between(-18, 18),
  y: between(-18, 18),
  z: between(-60, -5),
  L: between(-0.4, 0.4),
  M: between(-0.4, 0.4),
});

const FIELDS = ['x', 'y', 'z', 'L', 'M', 'N', 'path'] as const;
type State = Record<(typeof FIELDS)[number], number>;

const full = ({ x, y, z, L, M }: Start): State => ({ x, y, z, L, M, N: Math.sqrt(1 - L * L - M * M), path: 0 });
const stateOf = (of: Rays, i: number): State => Object.fromEntries(FIELDS.map((key) => [key, of[key][i]])) as State;

function bundleOf(states: readonly State[]): Rays {
  const bundle = rays(states.length);
  for (const [i, state] of states.entries()) for (const key of FIELDS) bundle[key][i] = state[key];
  return bundle;
}

function traced(lens: Lens, ...starts: readonly State[]): Rays {
  const bundle = bundleOf(starts);
  trace(prescription(lens, ANY_NM), bundle);
  return bundle;
}

const WHAT = { through: THROUGH, clipped: CLIPPED, missed: MISSED, reflected: REFLECTED };

/** By how much two states differ at most. */
const apart = (a: State, b: State): number => Math.max(...FIELDS.map((key) => Math.abs(a[key] - b[key])));

describe('a real ray', () => {
  it('goes where angles and circles take it, or ends there and as they say; what it held is then left alone', () => {
    const seen = { through: 0, clipped: 0, missed: 0, reflected: 0 };
    fc.assert(
      fc.property(lensesUpTo(30), fc.array(anyStart, { minLength: 3, maxLength: 3 }), (lens, starts) => {
        const states = starts.map(full);
        const bundle = traced(lens, ...states);
        for (const [i, before] of states.entries()) {
          const { what, surface, at, along, path } = tracedByAngles(lens, [before.x, before.y, before.z], [before.L, before.M, before.N]);
          seen[what]++;
          expect([bundle.status[i], bundle.surface[i]]).toEqual([WHAT[what], surface]);
          if (what !== 'through') expect(stateOf(bundle, i)).toEqual(before);
          else {
            const [x, y, z] = [at[0], at[1], at[2] - lengthOf(lens)];
            expect(apart(stateOf(bundle, i), { x, y, z, L: along[0], M: along[1], N: along[2], path })).toBeLessThan(1e-9);
          }
        }
      }),
      part(0.5, 101),
    );
    for (const [what, count] of Object.entries(seen)) if (process.env.RUNS === undefined) expect(count, what).toBeGreaterThan(10);
  });

  it("keeps at each surface Snell's vector n d x normal, its length, and the path from there to here", () => {
    let held = 0;
    fc.assert(
      fc.property(lensesUpTo(30), anyStart, (lens, start) => {
        const whole = prescription(lens, ANY_NM);
        const bundle = bundleOf([full(start)]);
        for (let k = 0; k < whole.count; k++) {
          const before = stateOf(bundle, 0);
          trace(
            {
              count: 1,
              curvature: whole.curvature.slice(k, k + 1),
              gap: whole.gap.slice(k, k + 1),
              index: whole.index.slice(k, k + 2),
              clear: whole.clear.slice(k, k + 1),
            },
            bundle,
          );
          if (bundle.status[0] !== THROUGH) return;
          const after = stateOf(bundle, 0);
          const [c, n, m] = [whole.curvature[k] as number, whole.index[k] as number, whole.index[k + 1] as number];
          const normal = [-c * after.x, -c * after.y, 1 - c * after.z] as const;
          expect(Math.hypot(...normal)).toBeCloseTo(1, 11);
          expect(Math.hypot(after.L, after.M, after.N)).toBeCloseTo(1, 11);
          expect(n * (before.M * normal[2] - before.N * normal[1])).toBeCloseTo(m * (after.M * normal[2] - after.N * normal[1]), 11);
          expect(n * (before.N * normal[0] - before.L * normal[2])).toBeCloseTo(m * (after.N * normal[0] - after.L * normal[2]), 11);
          expect(n * (before.L * normal[1] - before.M * normal[0])).toBeCloseTo(m * (after.L * normal[1] - after.M * normal[0]), 11);
          const way = Math.hypot(after.x - before.x, after.y - before.y, after.z + (whole.gap[k] as number) - before.z);
          expect(Math.abs(after.path - before.path)).toBeCloseTo(n * way, 9);
          held++;
        }
      }),
      part(0.3, 102),
    );
    if (process.env.RUNS === undefined) expect(held).toBeGreaterThan(100);
  });

  it('comes back the way it went, through the lens turned round, over the same optical path', () => {
    let back = 0;
    fc.assert(
      fc.property(lensesUpTo(30), anyStart, (lens, start) => {
        const there = traced(lens, full(start));
        if (there.status[0] !== THROUGH) return;
        const end = stateOf(there, 0);
        const here = traced(reversed(lens), { ...end, z: -end.z, L: -end.L, M: -end.M, path: 0 });
        expect(here.status[0]).toBe(THROUGH);
        back++;
        const { x, y, z, L, M, N, path } = stateOf(here, 0);
        expect([L, M, N]).toEqual([-start.L, -start.M, full(start).N].map((value) => expect.closeTo(value, 9)));
        // On the line on which it came, and as long a path from there as the ray took inside the lens.
        const step = (-z - start.z) / N;
        expect(start.x + step * start.L).toBeCloseTo(x, 8);
        expect(start.y + step * start.M).toBeCloseTo(y, 8);
        expect(path + step).toBeCloseTo(end.path, 8);
      }),
      part(0.3, 103),
    );
    if (process.env.RUNS === undefined) expect(back).toBeGreaterThan(30);
  });

  it('grows with its lens: all lengths by half, no angle', () => {
    fc.assert(
      fc.property(lensesUpTo(30), anyStart, (lens, start) => {
        const k = 1.5;
        const small = full(start);
        const one = traced(lens, small);
        const grown = (of: State): State => ({ ...of, x: k * of.x, y: k * of.y, z: k * of.z, path: k * of.path });
        const large = traced(scaled(lens, k), grown(small));
        expect([large.status[0], large.surface[0]]).toEqual([one.status[0], one.surface[0]]);
        expect(apart(stateOf(large, 0), grown(stateOf(one, 0)))).toBeLessThan(1e-9);
      }),
      part(0.3, 104),
    );
  });

  it('adds to the path and does not start it anew', () => {
    const lens: Lens = { radiiMm: [50, -80], thicknessesMm: [5], media: [plainIndex(1.5)], semiAperturesMm: [20, 20] };
    const start = { x: 3, y: -4, z: -10, L: 0.1, M: 0.05 };
    const [fresh, gone] = [full(start), { ...full(start), path: 7 }];
    const bundle = traced(lens, fresh, gone);
    expect((bundle.path[1] as number) - (bundle.path[0] as number)).toBeCloseTo(7, 12);
  });

  it('passes a parallel plate in its own direction, shifted as the textbook says', () => {
    const [n, t, angle] = [1.5, 10, 0.5];
    const plate: Lens = { radiiMm: [Infinity, Infinity], thicknessesMm: [t], media: [plainIndex(n)], semiAperturesMm: [99, 99] };
    const bundle = traced(plate, { x: 0, y: 0, z: 0, L: 0, M: Math.sin(angle), N: Math.cos(angle), path: 0 });
    const inside = Math.asin(Math.sin(angle) / n);
    expect(bundle.M[0]).toBeCloseTo(Math.sin(angle), 14);
    expect(bundle.y[0]).toBeCloseTo(t * Math.tan(inside), 13);
    expect(bundle.path[0]).toBeCloseTo((n * t) / Math.cos(inside), 13);
  });

  // A ray starts on its way to the far side of a ball from beyond that side's centre.
  it('passes a ball through its middle: straight along any diameter, and a close ray to nR / (2(n - 1)) from there', () => {
    const ball: Lens = { radiiMm: [10, -10], thicknessesMm: [20], media: [plainIndex(1.5)], semiAperturesMm: [10, 10] };
    const M = Math.sin(0.3);
    const [along, close] = [full({ x: 0, y: -20 * Math.tan(0.3), z: -10, L: 0, M }), full({ x: 0, y: 1e-4, z: -5, L: 0, M: 0 })];
    const bundle = traced(ball, along, close);
    expect([...bundle.status]).toEqual([THROUGH, THROUGH]);
    expect(bundle.M[0]).toBeCloseTo(M, 14);
    expect(bundle.y[0]).toBeCloseTo(10 * M, 13);
    expect(bundle.z[0]).toBeCloseTo(10 * Math.cos(0.3) - 10, 13);
    expect((-1e-4 * (bundle.N[1] as number)) / (bundle.M[1] as number)).toBeCloseTo(15, 6);
  });

  it('ends at the surface that is to blame, for each of the reasons', () => {
    const ball = { thicknessesMm: [4, 6], media: [plainIndex(1.5), plainIndex(1.8)], semiAperturesMm: [40, 9, 40] };
    const parallel = (y: number): State => ({ x: 0, y, z: -5, L: 0, M: 0, N: 1, path: 0 });
    const ends = (lens: Lens, y: number) => {
      const bundle = traced(lens, parallel(y));
      return [bundle.status[0], bundle.surface[0]];
    };
    const lens: Lens = { radiiMm: [30, Infinity, -12], ...ball };
    expect(ends(lens, 3)).toEqual([THROUGH, 3]);
    expect(ends(lens, 8.5)).toEqual([REFLECTED, 2]);
    expect(ends(lens, 12)).toEqual([CLIPPED, 1]);
    expect(ends(lens, 31)).toEqual([MISSED, 0]);
    expect(ends(lens, 29.9)).toEqual([CLIPPED, 1]);
    // Just as high as the surface lets through is through.
    expect(ends({ ...lens, semiAperturesMm: [3, 40, 40] }, 3)).toEqual([THROUGH, 3]);
    expect(ends({ ...lens, semiAperturesMm: [3 - 1e-12, 40, 40] }, 3)).toEqual([CLIPPED, 0]);
  });
});
