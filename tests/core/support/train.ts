/**
 * An optical train as it stands on a table, and its geometry worked out by similar triangles alone: this
 * file imports nothing from core. Lengths in mm; the objective's exit pupil is at its back focal plane,
 * z = 0; the relay is thin, at its principal plane; light runs toward +z.
 */
export interface Ring {
  readonly radius: number;
  readonly from: 'shoulder' | 'sensor';
  readonly at: number;
}

export interface Train {
  readonly objectiveFocalLength: number;
  readonly pupilRadius: number;
  /** Exit pupil beyond the shoulder. */
  readonly exitPupil: number;
  readonly space: number;
  readonly rimRadius: number;
  /** Principal plane behind the rim. */
  readonly plane: number;
  readonly focalLength: number;
  /** Sensor beyond the relay's focus. */
  readonly offset: number;
  /** A camera lens's aperture as seen from the front: its radius, and its depth behind the rim. */
  readonly entrancePupil?: { readonly radius: number; readonly depth: number };
  readonly rings: readonly Ring[];
}

/** Where a stop is: `z` from the exit pupil in the infinity space, or `l` before the sensor. */
export interface Place {
  readonly radius: number;
  readonly z?: number;
  readonly l?: number;
}

export function placesOf(train: Train): Place[] {
  const shoulder = -train.exitPupil;
  const rim = shoulder + train.space;
  return [
    { radius: train.pupilRadius, z: 0 },
    ...train.rings.map(({ radius, from, at }) => (from === 'shoulder' ? { radius, z: shoulder + at } : { radius, l: at })),
    { radius: train.rimRadius, z: rim },
    ...(train.entrancePupil ? [{ radius: train.entrancePupil.radius, z: rim + train.entrancePupil.depth }] : []),
  ];
}

/** The plane in which the relay is thought to bend the rays, from the exit pupil. */
export const planeOf = (train: Train): number => train.space - train.exitPupil + train.plane;

/** The sensor behind that plane. */
export const sensorOf = (train: Train): number => train.focalLength + train.offset;

/**
 * The line on which a ray runs in the infinity space when it leaves the exit pupil at height `p` and is
 * to land at `r` on the sensor. In focus at infinity all have the slope of the ray through the relay's
 * middle, `r / f`. Otherwise they come from the point that the relay images on the sensor: at `v` behind
 * a lens of focal length `f` lies the image of a point `f v / (v - f)` before it, upside down.
 */
function lineInFront(train: Train, r: number, p: number): (z: number) => number {
  const v = sensorOf(train);
  if (train.offset === 0) return (z) => p + (r / train.focalLength) * z;
  const before = (train.focalLength * v) / (v - train.focalLength);
  const zSource = planeOf(train) - before;
  const hSource = (-r * before) / v;
  return (z) => hSource + ((p - hSource) * (z - zSource)) / (0 - zSource);
}

/** Where that ray meets a stop. Behind the relay it runs straight from its height in the plane to `r`. */
export function heightAt(train: Train, place: Place, r: number, p: number): number {
  const line = lineInFront(train, r, p);
  if (place.z !== undefined) return line(place.z);
  return r + ((line(planeOf(train)) - r) * (place.l as number)) / sensorOf(train);
}

/**
 * Distance from the subject to the objective's principal plane, and the subject's height (upside down,
 * hence negative) for a point that lands at `r`. The objective is a thin lens `f_o` before its pupil.
 */
export function subjectOf(train: Train, r: number): { distance: number; height: number } {
  const f = train.objectiveFocalLength;
  const v = sensorOf(train);
  if (train.offset === 0) return { distance: f, height: (-f * r) / train.focalLength };
  const before = (train.focalLength * v) / (v - train.focalLength);
  const image = planeOf(train) - before + f;
  const distance = (f * image) / (image - f);
  return { distance, height: (-((-r * before) / v) * distance) / image };
}

export interface Disc {
  readonly centre: number;
  readonly radius: number;
}

/** The part of the pupil that each stop passes for the point that lands at `r`, from two rays through it. */
export function discsOf(train: Train, r: number): Disc[] {
  return placesOf(train).map((place) => {
    const at0 = heightAt(train, place, r, 0);
    const perMm = heightAt(train, place, r, 1) - at0;
    return { centre: -at0 / perMm, radius: place.radius / Math.abs(perMm) };
  });
}

export const narrowest = (discs: readonly Disc[]): Disc => discs.reduce((a, b) => (b.radius < a.radius ? b : a));

/** Whether the whole axial beam passes at `r`. */
export function isClear(train: Train, r: number, slack = 0): boolean {
  const discs = discsOf(train, r);
  const least = narrowest(discs);
  return discs.every((d) => Math.abs(d.centre - least.centre) <= d.radius - least.radius + slack);
}

/** Heights on the sensor where the light begins to fall and where none is left: centres go as the height. */
export function limitsOf(train: Train): { onset: number; cutoff: number } {
  const discs = discsOf(train, 1);
  const least = narrowest(discs);
  const per = (d: Disc, e: Disc, room: number): number =>
    d.centre === e.centre ? Number.POSITIVE_INFINITY : room / Math.abs(d.centre - e.centre);
  return {
    onset: Math.min(...discs.map((d) => per(d, least, d.radius - least.radius || (d === least ? Number.POSITIVE_INFINITY : 0)))),
    cutoff: Math.min(...discs.flatMap((d, i) => discs.slice(0, i).map((e) => per(d, e, d.radius + e.radius)))),
  };
}

/**
 * Area shared by discs with centres on one line, by the midpoint rule in the angle `θ` of
 * `x = middle + half sin θ`, which takes the steepness off both ends. Good to about 1e-6 of the area
 * with 2000 steps (kinks in the border cost `step²`).
 */
function areaByQuadrature(discs: readonly Disc[], steps = 2000): number {
  const left = Math.max(...discs.map((d) => d.centre - d.radius));
  const right = Math.min(...discs.map((d) => d.centre + d.radius));
  if (left >= right) return 0;
  const half = (right - left) / 2;
  const middle = (left + right) / 2;
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const angle = Math.PI * ((k + 0.5) / steps - 0.5);
    const x = middle + half * Math.sin(angle);
    let height = Number.POSITIVE_INFINITY;
    for (const d of discs) height = Math.min(height, d.radius ** 2 - (x - d.centre) ** 2);
    sum += Math.sqrt(Math.max(0, height)) * Math.cos(angle);
  }
  return (2 * half * sum * Math.PI) / steps;
}

export function lightByQuadrature(train: Train, r: number): number {
  const discs = discsOf(train, r);
  return areaByQuadrature(discs) / (Math.PI * narrowest(discs).radius ** 2);
}

/** The discs that form the border of the shared area, found by looking at many places along it. */
export function borderDiscs(discs: readonly Disc[], looks = 4000): Set<number> {
  const left = Math.max(...discs.map((d) => d.centre - d.radius));
  const right = Math.min(...discs.map((d) => d.centre + d.radius));
  const found = new Set<number>();
  for (let k = 0; left < right && k < looks; k++) {
    const x = left + ((right - left) * (k + 0.5)) / looks;
    let lowest = 0;
    const height = (d: Disc): number => d.radius ** 2 - (x - d.centre) ** 2;
    discs.forEach((d, i) => {
      if (height(d) < height(discs[lowest] as Disc)) lowest = i;
    });
    found.add(lowest);
  }
  return found;
}
