/**
 * Two perfect lenses that obey the sine condition, traced ray by ray: it shares nothing with core. `fo` and `f` are the
 * objective's and the relay's focal lengths, `z` from the pupil to the relay's principal plane, `n` the index before the
 * objective; lengths in mm.
 */
export interface SineLenses {
  fo: number;
  f: number;
  z: number;
  n: number;
  na: number;
}

/** Rings of equal area over the pupil, as heights from 0 to 1. */
export const RINGS = Array.from({ length: 4000 }, (_, i) => Math.sqrt((i + 0.5) / 4000));

export const rmsOf = (w: readonly number[]): number => {
  const mean = w.reduce((a, b) => a + b, 0) / w.length;
  return Math.sqrt(w.reduce((sum, x) => sum + (x - mean) ** 2, 0) / w.length);
};

/** The least of a function with one valley, by thirds. */
export function least(of: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 100; i++) {
    const [x, y] = [a + (b - a) / 3, b - (b - a) / 3];
    if (of(x) < of(y)) b = y;
    else a = x;
  }
  return (a + b) / 2;
}

/**
 * Where rays from a point `shift` beyond the focal plane of a perfect lens that obeys the sine condition meet the sensor
 * `s` beyond the focus of another: each lens turns place in its front focal plane into direction and direction into place,
 * `p = f n sin θ`, `sin θ' = −x / f`. The pupil is the objective's back focal plane, `z` before the relay's principal plane.
 */
function landing(rig: SineLenses, sine: number, shift: number, s: number): { pupil: number; at: number; slope: number } {
  const tangent = sine / Math.sqrt(1 - sine * sine);
  const inFocalPlane = shift * tangent;
  const pupil = rig.fo * rig.n * sine;
  const beam = -inFocalPlane / rig.fo;
  // On to the relay's own front focal plane, and through it in the same manner.
  const before = pupil + ((rig.z - rig.f) * beam) / Math.sqrt(1 - beam * beam);
  const behind = -before / rig.f;
  return { pupil, at: rig.f * beam + (s * behind) / Math.sqrt(1 - behind * behind), slope: behind };
}

/**
 * The wavefront at the sensor from where rays land: dW/dp' = x, integrated over the direction sine behind the relay, mm.
 * `shift` is the stage's place.
 */
function traced(rig: SineLenses, shift: number, s: number): number[] {
  const sines = [0, ...RINGS.map((r) => (r * rig.na) / rig.n)];
  const rays = sines.map((sine) => landing(rig, sine, shift, s));
  let sum = 0;
  return rays.slice(1).map((ray, i) => {
    const last = rays[i] as (typeof rays)[number];
    sum += ((ray.at + last.at) / 2) * (ray.slope - last.slope);
    return sum;
  });
}

/** What is left when the stage is moved to the least rms, and where it stands, both mm, by tracing. */
export function focusedByStage(rig: SineLenses, s: number) {
  const paraxial = (-rig.n * s * rig.fo ** 2) / (rig.f * (rig.f + s - (rig.z * s) / rig.f));
  const rms = (shift: number): number => rmsOf(traced(rig, shift, s));
  const shift = least(rms, Math.min(0.5 * paraxial, 1.5 * paraxial), Math.max(0.5 * paraxial, 1.5 * paraxial));
  return { rms: rms(shift), paraxial };
}
