import { gaussLegendre } from '../gauss.ts';
import type { PupilPoints } from './beam.ts';

/** The angle that no fraction comes near: what is turned by it again and again never lines up. */
const GOLDEN = Math.PI * (3 - Math.sqrt(5));

/** A disc filled evenly, as a sunflower's head is: for what is looked at (Vogel 1979, from memory). */
export function sunflower(count: number): PupilPoints {
  const radius = Float64Array.from({ length: count }, (_, i) => Math.sqrt((i + 0.5) / count));
  return {
    count,
    x: radius.map((r, i) => r * Math.sin(i * GOLDEN)),
    y: radius.map((r, i) => r * Math.cos(i * GOLDEN)),
    share: new Float64Array(count).fill(1 / count),
  };
}

/**
 * A disc in rings and spokes: Gauss's rule over the square of the radius, evenly spaced spokes, so that a
 * mean over the points is the exact mean by area of any polynomial of degree below twice the rings and
 * below the spokes. Spokes start half a step off the field axis and are mirrored in it.
 */
export function ringsAndSpokes(rings: number, spokes: number): PupilPoints {
  const { nodes, weights } = gaussLegendre(rings, 0, 1);
  const count = rings * spokes;
  const [x, y, share] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i++) {
    const ring = Math.floor(i / spokes);
    const radius = Math.sqrt(nodes[ring] as number);
    const angle = (2 * Math.PI * ((i % spokes) + 0.5)) / spokes;
    x[i] = radius * Math.sin(angle);
    y[i] = radius * Math.cos(angle);
    share[i] = (weights[ring] as number) / spokes;
  }
  return { count, x, y, share };
}
