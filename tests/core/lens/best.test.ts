import { describe, expect, it } from 'vitest';
import { bestPlace, worthOf } from '../../../core/lens/best.ts';
import type { SpacingPoint } from '../../../core/lens/spacing.ts';

/** Places 10 mm apart, from 0 on. */
const places = (contrasts: readonly number[], blurs: readonly (number | undefined)[] = []): SpacingPoint[] =>
  contrasts.map((contrast, i) => ({
    infinitySpaceMm: 10 * i,
    oneFrame: contrast,
    stack: 1 - contrast,
    ...(blurs[i] === undefined ? {} : { oneFrameBlurUm: blurs[i] }),
    cornerLight: 1,
  }));
const best = (points: readonly SpacingPoint[]) => bestPlace(points, 'one frame');

describe('what places are ranked by', () => {
  it('is contrast where one of them keeps a fifth of it', () => {
    expect(best(places([0.1, 0.2], [5, 9])).point.infinitySpaceMm).toBe(10);
    expect(best(places([0.201, 0.1], [9, 5])).point.infinitySpaceMm).toBe(0);
  });
  it('is blur where none does: half the blur is worth twice as much, none known nothing', () => {
    const points = places([0.199, 0.1, 0.15], [9, 4.5, undefined]);
    expect(best(points).point.infinitySpaceMm).toBe(10);
    expect(points.map(worthOf(points, 'one frame'))).toEqual([1 / 9, 1 / 4.5, 0].map((x) => expect.closeTo(x, 12)));
  });
  it('is the blur of a stack in a stack', () => {
    const points = [7, 5].map((stackBlurUm, i) => ({
      infinitySpaceMm: 10 * i,
      oneFrame: 0,
      stack: 0,
      oneFrameBlurUm: 9 + i,
      stackBlurUm,
      cornerLight: 1,
    }));
    expect(bestPlace(points, 'stack').point.infinitySpaceMm).toBe(10);
    expect(best(points).point.infinitySpaceMm).toBe(0);
  });
  it('is that of the stack in a stack', () => {
    expect(bestPlace(places([0.9, 0.3]), 'stack')).toMatchObject({ point: { infinitySpaceMm: 10 }, contrast: 0.7 });
  });
});

describe('the stretch about the best place', () => {
  it('begins or ends where nothing more was looked at', () => {
    // It falls by a tenth half-way from 0.95 to 0.85.
    expect(best(places([1, 0.95, 0.85])).withinMm).toEqual([0, expect.closeTo(15, 9)]);
    expect(best(places([0.85, 0.95, 1])).withinMm).toEqual([expect.closeTo(5, 9), 20]);
    expect(best(places([0.95, 1, 0.91])).withinMm).toEqual([0, 20]);
  });
  it('goes on past a place that is exactly a tenth less', () => {
    expect(best(places([1, 0.9, 0.95, 0.85])).withinMm).toEqual([0, expect.closeTo(25, 9)]);
  });
  it('is a tenth of what the best keeps, not of all', () =>
    // From 0.5 to 0.3 over 10 mm: 0.05 of it in 2.5.
    expect(best(places([0.5, 0.3])).withinMm).toEqual([0, expect.closeTo(2.5, 9)]));
  it('ends right at the place before a sharp fall to nothing', () => {
    // A tenth of 1 in 10 mm.
    expect(best(places([0, 1, 0])).withinMm).toEqual([expect.closeTo(9, 9), expect.closeTo(11, 9)]);
  });
});
