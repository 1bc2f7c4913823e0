import type { Medium } from '../../glass/medium.ts';
import type { Lens } from '../../trace/lens.ts';
import type { Value } from '../check.ts';
import { printed } from '../printed.ts';

/** A lens as a source prints it: radii with their digits, 'plane' for a plane. */
export interface PrintedLens {
  readonly radii: readonly string[];
  readonly thicknessesMm: readonly number[];
  readonly media: readonly Medium[];
}

const radius = (text: string): number => (text === 'plane' ? Number.POSITIVE_INFINITY : printed(text).value);

const made = ({ thicknessesMm, media }: PrintedLens, radiiMm: readonly number[]): Lens => ({
  radiiMm,
  thicknessesMm,
  media,
  semiAperturesMm: radiiMm.map(() => Number.POSITIVE_INFINITY),
});

export const lensOf = (lens: PrintedLens): Lens => made(lens, lens.radii.map(radius));

/** How far a value may be off because the source rounds radii: each moved by half a unit of its last digit, the changes added up. */
function carried(lens: PrintedLens, of: (lens: Lens) => number): number {
  const radii = lens.radii.map(radius);
  const here = of(made(lens, radii));
  return lens.radii.reduce((sum, text, k) => {
    if (text === 'plane') return sum;
    const moved = radii.with(k, (radii[k] as number) + printed(text).unit / 2);
    return sum + Math.abs(of(made(lens, moved)) - here);
  }, 0);
}

/** Why a value may be off by more than its own last digit. */
export const ROUNDED_RADII = 'the rounding of its radii';

/** A value that a source prints of a lens whose radii it has rounded. */
export const ofLens = (lens: PrintedLens, what: string, text: string, of: (lens: Lens) => number): Value => ({
  what,
  printed: text,
  of: () => of(lensOf(lens)),
  slack: { of: () => carried(lens, of), why: ROUNDED_RADII },
});
