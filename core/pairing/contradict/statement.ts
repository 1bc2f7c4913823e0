import { type Problem, shown } from '../../errors.ts';
import { amount, type QuantityInput } from '../../parts/quantity.ts';
import { MM_PER_M } from '../../units.ts';
import type { GlassRelay } from '../glassworks.ts';
import type { Pairing } from '../schema.ts';

/** Two statements of one thing may differ by this much before they contradict each other. */
const AGREE = 0.01;

/** `a` is positive, so that it disagrees with any `b` that is not. */
export const disagree = (a: number, b: number): boolean => Math.abs(a - b) > AGREE * b;
export const spread = (q: QuantityInput | undefined): number => (typeof q === 'object' ? (q.plusMinus ?? 0) : 0);
export const rounded = (x: number): string => String(Number(x.toPrecision(4)));

export const problem = (code: string, path: string, given: unknown, message: string, expected: string): Problem => ({
  path,
  code,
  message,
  given: shown(given),
  expected,
});

/** As it was told, else as its glass comes to, in mm; Infinity where neither is known. */
export const relayFocalLength = ({ focalLengthMm: f, powerDioptre: P }: Pairing['relay'], glass?: GlassRelay): number =>
  f !== undefined ? amount(f) : P !== undefined ? MM_PER_M / amount(P) : (glass?.focalLengthMm ?? Number.POSITIVE_INFINITY);
