import { amount } from '../parts/quantity.ts';
import type { Pairing } from './schema.ts';

/** Width and height, mm. */
export type Size = readonly [width: number, height: number];

/** The subject's bounding box at magnification `m`, as it was told; a missing side is taken as the given one. */
export function subjectSize(subject: Pairing['subject'], m: number): Size | undefined {
  const side = subject?.widthMm ?? subject?.heightMm;
  return side === undefined ? undefined : [m * side, m * (subject?.heightMm ?? side)];
}

/** A box turned so that its longer side lies along the sensor's: the camera can be turned. */
export function laidOn({ widthMm, heightMm }: Pairing['sensor'], [a, b]: Size): Size {
  const [long, across] = [Math.max(a, b), Math.min(a, b)];
  return amount(widthMm) >= amount(heightMm) ? [long, across] : [across, long];
}
