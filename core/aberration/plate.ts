import { sagitta } from './off-conjugate.ts';
import { type Refocused, refocused, type Wavefront } from './refocused.ts';

/** A plane plate between subject and objective: a cover slip, resin; a negative thickness is one that is missing. */
export interface Plate {
  readonly thicknessMm: number;
  readonly index: number;
}

/**
 * What a plane plate adds to a ray's way, mm per mm of its thickness, but for a constant: a ray of `n sin θ = a` is
 * `n_p cos θ_p − n cos θ` longer on its way than without the plate, n the index of what it takes the place of. Snell's law.
 */
const perThickness =
  (n: number, na: number, index: number): Wavefront =>
  (u) => {
    const a2 = na * na * u;
    return n * sagitta(a2 / (n * n)) - index * sagitta(a2 / (index * index));
  };

/**
 * Spherical aberration of plane plates before an objective, mm, refocused with the stage. Exact for the plates and a
 * sine-condition objective; to the fourth order `d (n_p² − 1) NA⁴ / (8 n_p³)` over `6 √5` for one in air.
 *
 * @param n index of what the objective dips in
 * @param na numerical aperture, below `n` and every plate's index
 */
export function platesAberration(plates: readonly Plate[], n: number, na: number): Refocused {
  const each = plates.map((plate) => ({ d: plate.thicknessMm, way: perThickness(n, na, plate.index) }));
  const way: Wavefront = (u) => each.reduce((sum, { d, way }) => sum + d * way(u), 0);
  return refocused(way, (u) => sagitta((na * na * u) / (n * n)));
}

/** Index of the glass that cover slips are made of (ISO 8255-1 asks for 1.5255 in the green e line; from memory). */
export const SLIP_INDEX = 1.5255;
