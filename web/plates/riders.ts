import { held } from '../state/held.ts';
import type { Movable } from './movable.ts';
import type { Scene } from './path-geometry.ts';
import type { PathScale } from './path-scale.ts';
import { widthOf } from './rows.ts';

/** What stands on the bench, by name. */
const ON_BENCH: Record<string, string> = { pupil: 'exit pupil', relay: 'relay', focal: 'sensor' };

/** Everything that slides along has a rider on the bench. */
export const ridersOf = (movables: readonly Movable[], scene: Scene, scale: PathScale, axis: number) => {
  const all = riders(movables, scene, scale, axis);
  // A name stands behind its rider, where the next leaves room for it.
  return all.map((one) => (all.some(({ x }) => x > one.x && x - one.x < 24 + widthOf(one.words, 12)) ? { ...one, words: '' } : one));
};

const riders = (movables: readonly Movable[], scene: Scene, scale: PathScale, axis: number) =>
  movables.flatMap(({ name, at, along }) => {
    if (along !== 'axis' || !at) return [];
    const half = name === 'pupil' ? scene.pupilHalf : name === 'focal' ? scene.cornerHeight : (nearest(scene, at.z) ?? 0);
    return [{ name, words: ON_BENCH[name] ?? '', x: scale.x(at.z), from: axis + scale.h(half), held: held.value === name }];
  });

const nearest = ({ stops }: Scene, z: number): number | undefined => stops.find((s) => Math.abs(s.z - z) < 1e-6)?.half;
