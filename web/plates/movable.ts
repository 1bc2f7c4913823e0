import { BOUNDS, type Evaluation, valueAt } from '../../core/index.ts';
import { withAmount } from '../fields/whole.ts';
import { draft, edit, take, takeSound } from '../state/draft.ts';
import { withAt } from '../state/json.ts';
import type { Moved } from './handle.tsx';
import type { Scene } from './path-geometry.ts';
import type { Entry } from './plate-input.tsx';

/** What can be moved on the light path, by its handle or by its number. */
export interface Movable extends Entry, Moved {
  /** Where its handle stands, mm; undefined where there is only the number. */
  at: { z: number; y: number } | undefined;
  /** The value that puts the handle at a place along the axis or at a height, mm. */
  valueAt(place: number): number;
}

type Told = Pick<Movable, 'name' | 'label' | 'short' | 'path' | 'value' | 'least' | 'greatest' | 'at'> & Partial<Movable>;

export const AXIS = { unit: 'mm', step: 1, leap: 10, along: 'axis', valueAt: (place: number) => place } as const;
export const HEIGHT = { unit: 'mm', step: 0.5, leap: 5, along: 'height', valueAt: (place: number) => 2 * place } as const;

/** A value of the draft at a path. */
export const here = (path: string): unknown => valueAt(draft.peek(), path.slice(1).split('/'));

/** One that sets the quantity at its path, all else of the quantity kept. */
export function ofPath({ inputs }: Evaluation, kind: typeof AXIS | typeof HEIGHT, told: Told): Movable {
  const { path } = told;
  const input = inputs.find((one) => one.path === path);
  // A quantity that is not given is guessed, and moving it leaves it a guess.
  const guessed = input && here(path) === undefined ? input : undefined;
  const put = (value: number): object => withAt(draft.peek(), path, withAmount(here(path), value, guessed));
  return {
    ...kind,
    plusMinus: input?.plusMinus ?? 0,
    assumed: input?.origin === 'assumed',
    set: (value) => takeSound(put(value)),
    type: (value) => (typeof value === 'number' ? take(put(value)) : edit(path, value)),
    ...told,
  };
}

/** An opening that is reached by the edge of its stop. */
export function opening(evaluation: Evaluation, stop: Scene['stops'][number], told: Pick<Told, 'name' | 'label' | 'short'>): Movable {
  const value = 2 * stop.half;
  return ofPath(evaluation, HEIGHT, {
    ...told,
    path: stop.path,
    value,
    least: BOUNDS.diameterMm[0],
    greatest: Math.max(120, value),
    at: { z: stop.z, y: stop.half },
  });
}
