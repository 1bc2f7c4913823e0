import type { PupilPoints } from './beam.ts';
import { type Rays, THROUGH } from './rays.ts';

/** What of a traced bundle came through. */
export interface Through {
  readonly rays: number;
  /** Their share of the pupil's area. */
  readonly share: number;
  /** What each ray counts in a mean by area over them: adds up to 1; 0 for a ray that was lost, and for all where none came through. */
  readonly weights: Float64Array;
}

export function through({ status }: Rays, points: PupilPoints): Through {
  let rays = 0;
  let share = 0;
  for (let i = 0; i < points.count; i++) {
    if (status[i] !== THROUGH) continue;
    rays++;
    share += points.share[i] as number;
  }
  return { rays, share, weights: points.share.map((own, i) => (status[i] === THROUGH ? own / share : 0)) };
}
