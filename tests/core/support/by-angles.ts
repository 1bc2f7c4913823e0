import type { Lens } from '../../../core/trace/lens.ts';
import { ANY_NM } from './arbitrary-lens.ts';

type Vector = readonly [number, number, number];

const add = (a: Vector, b: Vector, k = 1): Vector => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const times = (a: Vector, k: number): Vector => [k * a[0], k * a[1], k * a[2]];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const length = (a: Vector): number => Math.sqrt(dot(a, a));

export interface Traced {
  readonly what: 'through' | 'clipped' | 'missed' | 'reflected';
  readonly surface: number;
  /** z from the first vertex. */
  readonly at: Vector;
  readonly along: Vector;
  readonly path: number;
}

/**
 * The straight way through a lens, by angles: each sphere about its centre, met where the line's nearest
 * point to the centre less half the chord lies; the ray turned in its plane of incidence by Snell's law.
 */
export function tracedByAngles(lens: Lens, from: Vector, direction: Vector): Traced {
  let at = from;
  let along = direction;
  let path = 0;
  let vertex = 0;
  let n = 1;
  for (const [surface, radius] of lens.radiiMm.entries()) {
    vertex += surface === 0 ? 0 : (lens.thicknessesMm[surface - 1] as number);
    const next = lens.media[surface]?.indexAt(ANY_NM) ?? 1;
    const lost = (what: Traced['what']): Traced => ({ what, surface, at, along, path });
    let step: number;
    let normal: Vector = [0, 0, 1];
    if (Number.isFinite(radius)) {
      const toCentre = add([0, 0, vertex + radius], at, -1);
      const nearest = dot(toCentre, along);
      const beside = Math.sqrt(Math.max(0, dot(toCentre, toCentre) - nearest ** 2));
      if (beside > Math.abs(radius)) return lost('missed');
      step = nearest - Math.sign(radius) * Math.sqrt(radius ** 2 - beside ** 2);
      normal = times(add(toCentre, along, -step), 1 / radius);
    } else step = (vertex - at[2]) / along[2];
    const met = add(at, along, step);
    if (Math.hypot(met[0], met[1]) > (lens.semiAperturesMm[surface] as number)) return lost('clipped');
    const across = add(along, normal, -dot(along, normal));
    const sine = (n / next) * length(across);
    if (sine > 1) return lost('reflected');
    path += n * step;
    at = met;
    if (length(across) > 0) along = add(times(normal, Math.cos(Math.asin(sine))), across, sine / length(across));
    n = next;
  }
  return { what: 'through', surface: lens.radiiMm.length, at, along, path };
}
