import { AIR, type Medium } from '../../glass/medium.ts';
import { GLASS_CLASSES } from '../../parts/relay-glass.ts';

/** Kinds of lens that can be made, by their glass. */
export const MADE_KINDS = GLASS_CLASSES;
export type MadeKind = (typeof GLASS_CLASSES)[number];

/** How a lens of a kind is built. */
interface Build {
  readonly words: string;
  /** Between two pieces of glass, which are cemented where there is nothing. */
  readonly between: readonly Medium[];
  readonly glasses: readonly (readonly [crown: string, flint?: string])[];
}

/** Pairs that achromats of this size are made from, from memory. */
const PAIRS = [
  ['N-BK7', 'N-SF5'],
  ['N-BK7', 'F2'],
  ['N-BK7', 'N-SF2'],
  ['N-FK5', 'N-F2'],
  ['N-SK11', 'N-SF5'],
  ['N-BAK1', 'N-SF8'],
  ['N-BAK4', 'N-SF10'],
  ['N-SSK8', 'N-SF10'],
] as const;

export const BUILDS: Readonly<Record<MadeKind, Build>> = {
  singlet: { words: 'single lens', between: [], glasses: [['N-BK7'], ['N-K5'], ['N-BAK4'], ['N-SK16']] },
  'cemented-achromat': { words: 'cemented', between: [], glasses: PAIRS },
  'air-spaced-achromat': { words: 'air-spaced', between: [AIR], glasses: PAIRS },
};
