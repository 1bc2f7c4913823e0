import { Gap } from '../figure.ts';
import type { Origin } from '../parts/quantity.ts';
import type { Unit } from '../units.ts';

/**
 * What a figure answers. `low` and `high` are left out where there is no limit on that side;
 * nothing here is ever NaN, Infinity or null.
 */
export type Answer =
  | { state: 'known'; value: number; unit: Unit; low?: number; high?: number; origin: Origin }
  | { state: 'unlimited'; unit: Unit; low?: number }
  | { state: 'unknown'; unit: Unit; missing: string[] }
  | { state: 'none'; unit: Unit; why: string };

/** From a figure's raw value and its interval; its origin is asked for, with its number `j`, where it has one. */
export function answer(value: unknown, unit: Unit, low: number, high: number, originOf: (j: number) => Origin, j: number): Answer {
  if (value instanceof Gap)
    return value.state === 'none' ? { state: 'none', unit, why: value.why } : { state: 'unknown', unit, missing: [...value.missing] };
  const number = value as number;
  if (number === Number.POSITIVE_INFINITY) return Number.isFinite(low) ? { state: 'unlimited', unit, low } : { state: 'unlimited', unit };
  const state = 'known';
  // Written out, because this is made for every figure of every report and spreads are slow.
  if (Number.isFinite(low)) {
    if (Number.isFinite(high)) return { state, value: number, unit, low, high, origin: originOf(j) };
    return { state, value: number, unit, low, origin: originOf(j) };
  }
  if (Number.isFinite(high)) return { state, value: number, unit, high, origin: originOf(j) };
  return { state, value: number, unit, origin: originOf(j) };
}

/** The value of a known answer, Infinity for an unlimited one, else undefined. */
export const numberIn = (a: Answer): number | undefined =>
  a.state === 'known' ? a.value : a.state === 'unlimited' ? Number.POSITIVE_INFINITY : undefined;

/** `[low, value, high]` with unlimited sides as Infinity, or undefined where nothing is known. */
export function interval(a: Answer): readonly [low: number, value: number, high: number] | undefined {
  if (a.state === 'known') return [a.low ?? Number.NEGATIVE_INFINITY, a.value, a.high ?? Number.POSITIVE_INFINITY];
  if (a.state === 'unlimited') return [a.low ?? Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  return undefined;
}
