/**
 * What a close-up lens is made for: it stands before a camera lens set to infinity, the subject lies in
 * its focal plane. Followed backward, collimated beams come through the camera lens's stop into the
 * close-up lens and meet on the flat subject.
 */
export interface Job {
  /** From the camera lens's stop, as seen from the close-up lens, to the close-up lens, mm. */
  readonly stopsMm: readonly number[];
  readonly stopRadiusMm: number;
  /** Tangent of the angle to the corner of the picture. */
  readonly cornerSlope: number;
}

/** Half a full frame's diagonal behind a telephoto of 200 mm. */
const CORNER = 21.633 / 200;
/** A telephoto of 200 mm at f/10. */
const STOP_RADIUS_MM = 10;

/** From the close-up lens to the stop of a short and of a long camera lens. */
const STOPS_MM = [40, 75] as const;

/**
 * The job of lenses of this clear diameter: a telephoto of 200 mm at f/10, its stop 40 or 75 mm behind
 * the close-up lens. A lens too small for that works with a stop half as wide as itself, and out to where
 * such a beam still passes through it. Common practice, from memory.
 */
export const closeUpJob = (clearDiameterMm: number): Job => ({
  stopsMm: STOPS_MM,
  stopRadiusMm: Math.min(STOP_RADIUS_MM, clearDiameterMm / 4),
  cornerSlope: Math.min(CORNER, clearDiameterMm / 4 / STOPS_MM[1]),
});
