import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { framesOf, stepOf, USUAL_OVERLAP } from '../../../core/pairing/frames.ts';

const RUNS = Number(process.env.RUNS ?? 300);

/** Depths from a tenth of a micrometre to a millimetre, subjects of up to 200 depths, errors of up to nearly half the depth. */
const stacks = fc
  .record({
    depth: fc.double({ min: 0.1, max: 1000, noNaN: true }),
    depths: fc.oneof(fc.double({ min: 0, max: 200, noNaN: true }), fc.integer({ min: 0, max: 40 })),
    overlap: fc.oneof(fc.double({ min: 0, max: 0.9, noNaN: true }), fc.constant(0)),
    error: fc.oneof(fc.double({ min: 0, max: 0.49, noNaN: true }), fc.constant(0)),
    seed: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 8, maxLength: 8 }),
  })
  .map(({ depth, depths, overlap, error, seed }) => ({ depth, subject: depth * depths, overlap, error: depth * error, seed }));

/** The first place that no frame shows, from `from` to `to`; undefined where each place is in one. */
function gapIn(places: readonly number[], depth: number, from: number, to: number): number | undefined {
  let shown = from;
  for (const place of [...places].sort((a, b) => a - b)) {
    if (place > shown + 1e-9 * depth) return shown;
    shown = Math.max(shown, place + depth);
  }
  return shown < to - 1e-9 * depth ? shown : undefined;
}

/** Where the frames stand: in even steps, each off by a share of the error. */
const standing = (count: number, step: number, from: number, error: number, off: (i: number) => number): number[] =>
  Array.from({ length: count }, (_, i) => from + i * step + error * off(i));

/** The ways to err that open most: all in turns, only every third, by chance. */
const WAYS = (seed: readonly number[]) =>
  [
    (i: number) => (i % 2 ? 1 : -1),
    (i: number) => (i % 2 ? -1 : 1),
    (i: number) => (i % 3 ? -1 : 1),
    (i: number) => seed[i % seed.length] as number,
  ] as const;

describe('the frames of a stack', () => {
  it('leave no gap however the rail errs between the two ends that were set by eye', () => {
    fc.assert(
      fc.property(stacks, ({ depth, subject, overlap, error, seed }) => {
        const step = stepOf(depth, overlap, error);
        const count = framesOf(subject, depth, step);
        for (const way of WAYS(seed)) {
          const places = standing(count, step, 0, error, (i) => (i === 0 || i === count - 1 ? 0 : way(i)));
          expect(gapIn(places, depth, 0, subject)).toBeUndefined();
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('leave none where the ends err too, begun an error early and ended an error late', () => {
    fc.assert(
      fc.property(stacks, ({ depth, subject, overlap, error, seed }) => {
        const step = stepOf(depth, overlap, error);
        const count = framesOf(subject + 2 * error, depth, step);
        for (const way of [...WAYS(seed), () => 1, () => -1]) {
          expect(gapIn(standing(count, step, -error, error, way), depth, 0, subject)).toBeUndefined();
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('are as few as can be: one less does not reach the back, a longer step opens a gap or shares too little', () => {
    fc.assert(
      fc.property(stacks, ({ depth, subject, overlap, error }) => {
        const step = stepOf(depth, overlap, error);
        const count = framesOf(subject, depth, step);
        if (count > 1) expect(depth + (count - 2) * step).toBeLessThan(subject * (1 + 1e-12));
        else expect(subject).toBeLessThanOrEqual(depth * (1 + 1e-12));
        const longer = step * (1 + 1e-6) + 1e-9 * depth;
        const apart = standing(2, longer, 0, error, (i) => (i ? 1 : -1));
        const sharing = (depth - longer) / depth;
        expect(gapIn(apart, depth, -error, longer + depth) !== undefined || sharing < overlap).toBe(true);
      }),
      { numRuns: RUNS },
    );
  });

  it('count whole numbers of steps as whole, whatever the last bits say', () => {
    for (let whole = 1; whole <= 400; whole++)
      for (const depth of [0.1, 0.3, 1.1, 8.8, 10, 0.7 / 3])
        for (const overlap of [0, 0.1, 0.2, 0.3]) {
          const step = stepOf(depth, overlap, 0);
          expect(framesOf(depth + whole * step, depth, step)).toBe(1 + whole);
        }
  });

  it('of a usual stack share a fifth of their depth', () => {
    // 1000 steps of 8 behind the first depth of 10.
    expect(framesOf(8010, 10, stepOf(10, USUAL_OVERLAP, 0))).toBe(1001);
  });

  it('are one for a flat subject, many without limit, and never what is no number', () => {
    expect(framesOf(0, 10, 8)).toBe(1);
    expect(framesOf(10, 10, 8)).toBe(1);
    expect(framesOf(1e6, 0.01, 1e-12)).toBeGreaterThan(1e17);
    expect(framesOf(1e6, 0.01, 5e-324)).toBe(Number.POSITIVE_INFINITY);
    expect(stepOf(10, 0.2, 5)).toBe(0);
    expect(stepOf(10, 0.2, 6)).toBe(-2);
  });
});
