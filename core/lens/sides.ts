import type { Lens } from '../trace/lens.ts';

/** Radii closer than this are told as equal. */
const EQUAL = 1e-3;

/** Which of a standing lens's outer surfaces faces the objective; undefined where both are as strong. */
export function firstSide({ radiiMm }: Lens): 'weak' | 'strong' | undefined {
  const first = Math.abs(1 / (radiiMm[0] as number));
  const last = Math.abs(1 / (radiiMm.at(-1) as number));
  if (Math.abs(first - last) <= EQUAL * Math.max(first, last)) return undefined;
  return first < last ? 'weak' : 'strong';
}

/** Which way round a lens stands, told by its thread: it is listed from the side with the male thread. */
export const threadOf = (reversed: boolean): string => `male thread toward the ${reversed ? 'camera' : 'objective'}`;

/** Which way round a lens stands, by glass and by thread: 'weak side first, male thread toward the objective'. */
export function standing(lens: Lens, reversed: boolean): string {
  const side = firstSide(lens);
  return side ? `${side} side first, ${threadOf(reversed)}` : threadOf(reversed);
}
