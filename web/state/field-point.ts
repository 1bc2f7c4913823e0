import { computed, signal } from '@preact/signals';
import { diagonalOf } from '../../core/index.ts';
import { answered } from './draft.ts';

/**
 * The point of the picture whose beam is drawn, along the diagonal: its distance from the middle as a part
 * of the corner's, 0 to 1. It belongs to the one who looks, not to the pairing: no link holds it.
 */
export const fieldPoint = signal(1);

/** The same in mm on the sensor. */
export const fieldPointMm = computed(() => (fieldPoint.value * diagonalOf(answered.value.pairing.sensor)) / 2);

/** Puts the point at a distance from the middle, in mm, kept on the sensor. */
export function pointAt(radiusMm: number): void {
  const corner = diagonalOf(answered.peek().pairing.sensor) / 2;
  fieldPoint.value = Math.min(1, Math.max(0, radiusMm / corner));
}
