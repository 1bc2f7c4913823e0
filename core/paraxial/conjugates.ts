/**
 * A sensor that stands `s` beyond the relay's focus sees an object point that the objective no longer
 * sends out collimated. With `f` the relay's focal length, `z` from the objective's exit pupil to the
 * relay's front principal plane, a ray that leaves the pupil at height `p` for an object point of
 * slope `t` has there the slope `t + c p`. It meets the sensor at a height free of `p` when
 *
 *     c = s / (f F),    F = f + s - z s / f,    height on the sensor = F t.
 *
 * So `F` stands in for `f` wherever a height on the sensor is meant, and `c` bends the beams in the
 * infinity space. In focus at infinity `s = 0`, `F = f`, `c = 0`. Lengths in mm.
 */
export const imageScale = (f: number, s: number, z: number): number => f + s - (z * s) / f;

/**
 * How far beyond its focus a lens draws a thing that is `distance` before its front principal plane: Newton's equation,
 * `f² / (distance − f)`; Infinity for one that is no farther than its focal length and has no picture.
 */
export const offsetFocusedOn = (f: number, distance: number): number =>
  distance > f ? (f * f) / (distance - f) : Number.POSITIVE_INFINITY;

/** `c` above, 1/mm: positive where the beams diverge. */
export const divergence = (f: number, s: number, z: number): number => s / (f * imageScale(f, s, z));

/**
 * The focal length at which the image scale is `F`, all else held: `imageScale` backward. 0 where every
 * focal length gives more than that.
 */
export function focalLengthForScale(F: number, s: number, z: number): number {
  const half = (F - s) / 2;
  const square = half * half + z * s;
  return square < 0 ? 0 : Math.max(0, half + Math.sqrt(square));
}

/**
 * Slope behind the relay of the ray through the middle of the exit pupil, for the object point that
 * lands at height `r`: `(r/F)(1 - z/f)`. Signed: negative where the ray comes back to the axis.
 */
export const chiefRaySlope = (r: number, F: number, f: number, z: number): number => (r / F) * (1 - z / f);
