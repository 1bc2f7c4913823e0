// The one table that core reads, as constants: dispersion is measured, not derived.
import table from '../../data/glasses.json' with { type: 'json' };
import { sellmeier } from './dispersion.ts';
import { AIR, type Medium } from './medium.ts';
import { glassOfCode } from './normal.ts';

const GLASSES: readonly Medium[] = table.glasses.map(({ name, B, C, rangeUm }) =>
  sellmeier({ name, B, C, rangeUm: rangeUm as [number, number] }),
);
const BY_NAME: ReadonlyMap<string, Medium> = new Map([AIR, ...GLASSES].map((medium) => [medium.name.toUpperCase(), medium]));

/** As catalogues write them, in the table's order. */
export const GLASS_NAMES: readonly string[] = GLASSES.map((glass) => glass.name);

/**
 * The glass, or air, of this name in capitals or not; for a six-digit code a glass on the normal line;
 * undefined where there is none.
 */
export const glassNamed = (name: string): Medium | undefined => {
  const trimmed = name.trim();
  return BY_NAME.get(trimmed.toUpperCase()) ?? glassOfCode(trimmed);
};
