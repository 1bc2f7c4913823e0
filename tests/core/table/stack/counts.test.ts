import { describe, expect, test } from 'vitest';
import { Gap } from '../../../../core/figure.ts';
import * as counted from '../../../../core/table/stack/counts.ts';
import * as steps from '../../../../core/table/stack/steps.ts';

/** What each node makes of what it rests on, by its name. */
const counts = Object.fromEntries(
  Object.values({ ...counted, ...steps }).flatMap((node) => (typeof node === 'object' ? [[node.id, node.of]] : [])),
) as unknown as Record<keyof typeof counted | keyof typeof steps | 'railIncrementThere', (...values: unknown[]) => unknown>;

const GAP = Gap.unknown('/sensor/pixelPitchUm');

describe('frames', () => {
  test('one is enough for a subject as deep as it, whatever the rail does', () => {
    expect(counts.stackFrames(0.01, 10, GAP)).toBe(1);
    expect(counts.stackFrames(0.0101, 10, GAP)).toEqual(GAP);
    expect(counts.stackFrames(0.0101, 10, 8)).toBe(2);
    expect(counts.stackFrames(0.5, 10, 7)).toBe(71);
    expect(counts.stackFrames(0.1, GAP, 8)).toEqual(GAP);
    expect(counts.stackFrames(GAP, 10, 8)).toEqual(GAP);
  });
  test('a hundred thousand are counted, one more is too many', () => {
    expect(counts.stackFrames(100, 1, 1)).toBe(100_000);
    expect(counts.stackFrames(100.001, 1, 1)).toMatchObject({ state: 'none', why: expect.stringContaining('100,000') });
  });
  test('unwatched, the error of the rail is gone through at both ends besides', () => {
    // 90 + 2 × 1.5 × 4 = 102: (102 − 10) / 8 = 11.5.
    expect(counts.stackFramesUnwatched(0.09, 4, 1.5, 10, 8)).toBe(13);
    expect(counts.stackFramesUnwatched(0.09, 0, 1.5, 10, 8)).toBe(11);
  });
  test('a curved field takes those that a deeper subject would take more', () => {
    expect(counts.curvatureFrames(0.09, 20, 10, 8, 11)).toBe(3);
    // One frame needs no step, and what is not known is not for want of one.
    const coarse = Gap.none('too coarse');
    expect(counts.curvatureFrames(0.001, 9, 10, coarse, 1)).toBe(0);
    expect(counts.curvatureFrames(0.001, 9.1, 10, coarse, 1)).toBe(coarse);
    expect(counts.curvatureFrames(0.001, GAP, 10, coarse, 1)).toEqual(GAP);
    expect(counts.curvatureFrames(99.9, 200, 1, 1, 99_900)).toMatchObject({ state: 'none' });
  });
  test('in all those of both, and without those that are not known', () => {
    expect(counts.framesInAll(11, 3)).toBe(14);
    expect(counts.framesInAll(11, GAP)).toBe(11);
    const none = Gap.none('too many');
    expect(counts.framesInAll(11, none)).toBe(none);
    expect(counts.framesInAll(GAP, 3)).toEqual(GAP);
  });
});

describe('steps', () => {
  test('keep the overlap, and leave no gap where both neighbours err', () => {
    // 10 × 0.8, and 10 − 2 × 1.5 × e.
    expect(counts.longestStep(10, 0.2, 0.5, 1.5)).toBe(8);
    expect(counts.longestStep(10, 0.2, 2, 1.5)).toBe(4);
    expect(counts.longestStep(12, 0.2, 4, 1.5)).toMatchObject({ state: 'none', why: expect.stringContaining('errs by half') });
  });
  test('of a rail with a finest step are whole ones of it', () => {
    expect(counts.incrementsAStep(8, 1.5, 1)).toBe(5);
    expect(counts.incrementsAStep(8, 1.5, 8 / 1.5)).toBe(1);
    expect(counts.incrementsAStep(8, 1.5, 5.4)).toMatchObject({ state: 'none', why: expect.stringContaining('finest step is longer') });
    expect(counts.frameStepUm(8, 1.5, 1, 5)).toBe(7.5);
    expect(counts.frameStepUm(8, 1.5, GAP, GAP)).toBe(8);
    expect(counts.frameStepUm(GAP, 1.5, 1, GAP)).toEqual(GAP);
    const coarse = Gap.none('too coarse');
    expect(counts.frameStepUm(8, 1.5, 9, coarse)).toBe(coarse);
    expect(counts.railIncrementThere(0)).toMatchObject({ state: 'unknown' });
    expect(counts.railIncrementThere(0.5)).toBe(0.5);
    expect(counts.railIncrementThere(GAP)).toMatchObject({ state: 'unknown', missing: ['/railIncrementUm'] });
  });
  test('forgive what neighbours share, by both: the overlap, or what whole steps leave', () => {
    expect(counts.railErrorForgivenUm(0.2, 12, 1.5, GAP)).toBeCloseTo((0.2 * 12) / 3, 12);
    // 9.6 holds six of 1.5 × 1: 12 − 9 are left.
    expect(counts.railErrorForgivenUm(0.2, 12, 1.5, 1)).toBeCloseTo(1, 12);
    expect(counts.railErrorForgivenUm(0, 12, 1.5, 4)).toBe(0);
    expect(counts.railErrorForgivenUm(0.2, 12, 1.5, 7)).toMatchObject({ state: 'none' });
    expect(counts.railErrorForgivenUm(0.2, GAP, 1.5, 1)).toEqual(GAP);
  });
});
