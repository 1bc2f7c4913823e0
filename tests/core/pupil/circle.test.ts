import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circleInRectangle } from '../../../core/index.ts';
import { random } from '../../support/random.ts';
import { between, seeded } from '../support/arbitrary-train.ts';
import { polygonOf, rectangleOf, sharedPolygonArea } from '../support/polygons.ts';

const SIDES = 256;

/**
 * How far the polygon's share of a rectangle can be from the circle's: eight ends of arcs, each
 * `r² h³ / (9 √3)` with `h = π / sides`, and where a side of the rectangle barely touches the circle,
 * twice over each of four sides, the sliver `4/3 δ √(2 δ r)` with `δ = r h² / 3`.
 */
function clippingError(r: number): number {
  const h = Math.PI / SIDES;
  const off = (r * h * h) / 3;
  return (8 * r * r * h ** 3) / (9 * Math.sqrt(3)) + 4 * (4 / 3) * off * Math.sqrt(2 * off * r);
}

describe('the area that a circle shares with a rectangle', () => {
  it('is what clipping by polygons leaves', () => {
    const draw = random(95_001);
    const kinds = { cutsTwo: 0, cutsFour: 0, inside: 0, covers: 0 };
    for (let k = 0; k < 100; k++) {
      const w = draw.between(5, 50);
      const h = draw.between(5, 50);
      const r = (Math.hypot(w, h) / 2) * draw.between(0.2, 1.1);
      const clipped = sharedPolygonArea([rectangleOf(w, h), polygonOf({ centre: 0, radius: r }, SIDES)]);
      expect(Math.abs(circleInRectangle(r, w, h) - clipped), `${r} in ${w} x ${h}`).toBeLessThan(clippingError(r));
      const [short, long] = [Math.min(w, h), Math.max(w, h)];
      kinds[2 * r < short ? 'inside' : 2 * r < long ? 'cutsTwo' : 2 * r < Math.hypot(w, h) ? 'cutsFour' : 'covers']++;
    }
    for (const [kind, count] of Object.entries(kinds)) expect(count, kind).toBeGreaterThanOrEqual(10);
  }, 30_000);

  it('is all of the circle while it fits, and all of the rectangle once it reaches the corners', () => {
    fc.assert(
      fc.property(between(0.1, 60), between(0.1, 60), between(0, 1), (w, h, share) => {
        const inside = (share * Math.min(w, h)) / 2;
        expect(circleInRectangle(inside, w, h)).toBeCloseTo(Math.PI * inside * inside, 9);
        expect(circleInRectangle((Math.hypot(w, h) / 2) * (1 + share) + 1e-12, w, h)).toBe(w * h);
      }),
      seeded(95),
    );
    for (const r of [0, -1]) expect(circleInRectangle(r, 36, 24)).toBe(0);
  });

  it('grows with the circle, without a jump, and does not mind which side is the width', () => {
    fc.assert(
      fc.property(between(1, 60), between(1, 60), (w, h) => {
        const reach = Math.hypot(w, h) / 2;
        let before = 0;
        for (let i = 1; i <= 200; i++) {
          const r = (1.05 * reach * i) / 200;
          const area = circleInRectangle(r, w, h);
          expect(area).toBeGreaterThanOrEqual(before * (1 - 1e-14));
          // No faster than the whole circumference.
          expect(area - before).toBeLessThanOrEqual(2 * Math.PI * r * ((1.05 * reach) / 200) * (1 + 1e-9));
          expect(circleInRectangle(r, h, w)).toBeCloseTo(area, 9);
          before = area;
        }
        expect(before).toBe(w * h);
      }),
      seeded(96, 100),
    );
  });
});
