import { describe, expect, it } from 'vitest';
import { circleInRectangle } from '../../../core/pairing/circle.ts';

/** What a chord at a distance from the middle cuts off a circle. */
const segment = (r: number, distance: number): number =>
  r * r * Math.acos(distance / r) - distance * Math.sqrt(r * r - distance * distance);

describe('a circle in a rectangle of 6 by 8', () => {
  const areas = (r: number): number[] => [circleInRectangle(r, 6, 8), circleInRectangle(r, 8, 6)];
  const both = (area: number) => [expect.closeTo(area, 12), expect.closeTo(area, 12)];

  it('lies all inside up to half the shorter side', () => {
    expect(areas(0)).toEqual([0, 0]);
    expect(areas(0.5)).toEqual(both(Math.PI / 4));
    expect(areas(2)).toEqual(both(4 * Math.PI));
    expect(areas(3)).toEqual(both(9 * Math.PI));
  });
  it('loses two segments, and then four', () => {
    expect(areas(3.5)).toEqual(both(12.25 * Math.PI - 2 * segment(3.5, 3)));
    expect(areas(4)).toEqual(both(16 * Math.PI - 2 * segment(4, 3)));
    expect(areas(4.5)).toEqual(both(20.25 * Math.PI - 2 * segment(4.5, 3) - 2 * segment(4.5, 4)));
  });
  it('holds all of the rectangle from its corners on', () => {
    expect(areas(4.999)[0]).toBeLessThan(48);
    expect(areas(5)).toEqual([48, 48]);
    expect(areas(50)).toEqual([48, 48]);
  });
});
