import Flatten from '@flatten-js/core';
import type { Disc } from './train.ts';

const { BooleanOperations, Point, Polygon } = Flatten;
type Shape = InstanceType<typeof Polygon>;

/** All polygons start at the same odd angle: no corner lies on the line of centres. */
const TURN = 0.37;

/** A regular polygon of the disc's area. */
export function polygonOf({ centre, radius }: Disc, sides: number): Shape {
  const step = (2 * Math.PI) / sides;
  const corner = radius * Math.sqrt(step / Math.sin(step));
  return new Polygon(
    Array.from({ length: sides }, (_, i) => new Point(centre + corner * Math.cos(TURN + step * i), corner * Math.sin(TURN + step * i))),
  );
}

/** A rectangle about the origin. */
export const rectangleOf = (w: number, h: number): Shape =>
  new Polygon([new Point(-w / 2, -h / 2), new Point(w / 2, -h / 2), new Point(w / 2, h / 2), new Point(-w / 2, h / 2)]);

/** The area that shapes share, by repeated boolean intersection. */
export function sharedPolygonArea(shapes: readonly Shape[]): number {
  let common = shapes[0] as Shape;
  for (const shape of shapes.slice(1)) {
    common = BooleanOperations.intersect(common, shape);
    if (common.faces.size === 0) return 0;
  }
  return Math.abs(common.area());
}

export const sharedByClipping = (discs: readonly Disc[], sides: number): number => sharedPolygonArea(discs.map((d) => polygonOf(d, sides)));

/**
 * How far the shared area of equal-area polygons can be from that of the discs.
 *
 * With `h = π / sides` and `x` from -1 to 1 along a side the polygon's edge stands off the circle by
 * `r h² (x²/2 - 1/6)`. Over a whole side that sums to nothing, over a part of one to at most
 * `r² h³ / (9 √3)`. So only the ends of the border's arcs err, and each disc of the border has at most
 * four of them: left and right, above and below. Where two borders cross at the angle `α`, edges that
 * stand off by `δ` between them move the corner by `δ² / (2 sin α)`; where they barely touch, with
 * curvatures that differ by `κ`, the sliver between them is at most `4/3 δ √(2 δ / κ)`. The greatest error met in
 * the tests is half of the sum.
 */
export function clippingError(discs: readonly Disc[], border: ReadonlySet<number>, sides: number): number {
  const h = Math.PI / sides;
  let error = 0;
  for (const i of border) {
    const d = discs[i] as Disc;
    error += (4 * d.radius ** 2 * h ** 3) / (9 * Math.sqrt(3));
    discs.forEach((e, j) => {
      if (j !== i && (border.has(j) ? j < i : touches(d, e, h))) error += 2 * cornerError(d, e, h);
    });
  }
  return error;
}

const standOff = (d: Disc, e: Disc, h: number): number => (h * h * (d.radius + e.radius)) / 3;

/** Whether the second disc, not of the border, is so near to touching the first from outside that its polygon may cut. */
const touches = (d: Disc, e: Disc, h: number): boolean => e.radius - d.radius - Math.abs(e.centre - d.centre) < 2 * standOff(d, e, h);

function cornerError(d: Disc, e: Disc, h: number): number {
  const off = standOff(d, e, h);
  const apart = Math.abs(d.centre - e.centre);
  const cosine = (d.radius ** 2 + e.radius ** 2 - apart ** 2) / (2 * d.radius * e.radius);
  const outside = cosine < 0;
  const bend = Math.abs(1 / d.radius + (outside ? 1 : -1) / e.radius);
  const sliver = (4 / 3) * off * Math.sqrt((2 * off) / bend);
  return Math.abs(cosine) >= 1 ? sliver : Math.min(sliver, off ** 2 / (2 * Math.sqrt(1 - cosine ** 2)));
}
