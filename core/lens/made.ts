import type { Lens } from '../trace/lens.ts';
import { bestBending, type Task } from './made/design.ts';
import { closeUpJob } from './made/job.ts';
import type { MadeKind } from './made/kinds.ts';
import { glassesOf, nameOf, type Recipe, recipesOf } from './made/recipe.ts';
import { type Residuals, residualsOf } from './made/residuals.ts';
import type { Workpiece } from './made/workpiece.ts';
import { type Limits, steepestCurvature, workshopLimits } from './made/workshop.ts';

export { MADE_KINDS, type MadeKind } from './made/kinds.ts';
export type { Recipe } from './made/recipe.ts';
export type { Residuals } from './made/residuals.ts';

/**
 * A lens of a class, bent for the close-up lens's normal job. It is listed from the side that faces the
 * camera lens there, its male thread's: the side that faces the objective when it is not turned round.
 */
export interface MadeLens extends Recipe {
  readonly name: string;
  readonly lens: Lens;
  readonly residuals: Residuals;
}

/** A lens of a class that cannot be made at this focal length and diameter. */
export interface Unmade extends Recipe {
  readonly name: string;
  readonly why: string;
}

export const isMade = (lens: MadeLens | Unmade): lens is MadeLens => 'lens' in lens;

/**
 * The lens of this kind and these glasses that does the close-up lens's job best, of exactly this focal
 * length for d. What is not said is as in the first of the class's lenses; a single lens has no flint.
 * @throws RangeError where focal length or diameter is not positive
 */
export function madeLens(
  kind: MadeKind,
  focalLengthMm: number,
  clearDiameterMm: number,
  given: Partial<Omit<Recipe, 'kind'>> = {},
): MadeLens | Unmade {
  const usual = recipesOf(kind)[0] as Recipe;
  const recipe = usual.flint === undefined ? { ...usual, crown: given.crown ?? usual.crown } : { ...usual, ...given };
  return made(recipe, focalLengthMm, clearDiameterMm);
}

/**
 * Every lens of a class, made or not, by the pairs of glasses that such lenses are made from, each pair both
 * ways about; one by one, for those who have other things to do between.
 */
export function* making(kind: MadeKind, focalLengthMm: number, clearDiameterMm: number): Generator<MadeLens | Unmade, void, undefined> {
  for (const recipe of recipesOf(kind)) yield made(recipe, focalLengthMm, clearDiameterMm);
}

/** All of them. */
export const triedFamily = (kind: MadeKind, focalLengthMm: number, clearDiameterMm: number): readonly (MadeLens | Unmade)[] => [
  ...making(kind, focalLengthMm, clearDiameterMm),
];

/** The lenses of a class that can be made. */
export const familyOf = (kind: MadeKind, focalLengthMm: number, clearDiameterMm: number): readonly MadeLens[] =>
  triedFamily(kind, focalLengthMm, clearDiameterMm).filter(isMade);

function made(recipe: Recipe, focalLengthMm: number, clearDiameterMm: number): MadeLens | Unmade {
  if (!(focalLengthMm > 0 && clearDiameterMm > 0)) throw new RangeError('a lens is made of a positive focal length and diameter');
  const name = nameOf(recipe);
  const glasses = glassesOf(recipe);
  if (typeof glasses === 'string') return { ...recipe, name, why: glasses };
  const task: Task = { focalLengthMm, limits: workshopLimits(clearDiameterMm), job: closeUpJob(clearDiameterMm) };
  const work = bestBending(recipe.kind, glasses, task)?.work;
  const residuals = work && residualsOf(work, task);
  if (!residuals) return { ...recipe, name, why: tooSteep(task.limits) };
  return { ...recipe, name, lens: lensOf(work, clearDiameterMm), residuals };
}

function tooSteep(limits: Limits): string {
  const [outside, inside] = [true, false].map((side) => (1 / steepestCurvature(side, limits)).toFixed(1));
  const wide = (2 * limits.blankRadiusMm).toFixed(1);
  return `does its job best with surfaces too steep to make: under ${outside} mm of radius outside or ${inside} mm inside, for glass ${wide} mm wide`;
}

const lensOf = ({ media, d }: Workpiece, clearDiameterMm: number): Lens => ({
  radiiMm: Array.from(d.curvature, (c) => 1 / c),
  thicknessesMm: Array.from(d.gap.subarray(1)),
  media,
  semiAperturesMm: Array.from(d.curvature, () => clearDiameterMm / 2),
});
