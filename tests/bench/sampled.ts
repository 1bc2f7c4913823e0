import type { SeenStops } from '../../core/index.ts';

/** Relative illumination by sampling the pupil on a square grid of `side` points each way: what one does without the closed form. */
export function sampledIllumination({ walk, radius, limiting }: SeenStops, slope: number, side: number): number {
  const within = (x: number, y: number, t: number): boolean => {
    for (let i = 0; i < walk.length; i++) {
      const dx = x - (walk[i] as number) * t;
      const r = radius[i] as number;
      if (dx * dx + y * y > r * r) return false;
    }
    return true;
  };
  const half = radius[limiting] as number;
  const middle = (walk[limiting] as number) * slope;
  let all = 0;
  let through = 0;
  for (let i = 0; i < side; i++) {
    const u = ((2 * i + 1) / side - 1) * half;
    for (let j = 0; j < side; j++) {
      const y = ((2 * j + 1) / side - 1) * half;
      if (u * u + y * y > half * half) continue;
      all++;
      if (within(middle + u, y, slope)) through++;
    }
  }
  return through / all;
}
