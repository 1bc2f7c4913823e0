import type { MadeLens, Residuals, Unmade } from './made.ts';
import { isMade } from './made.ts';

/** A made lens as a relay's glass can list it, and what is left of its faults. */
export interface FamilyLens {
  readonly name: string;
  readonly crown: string;
  readonly flint?: string;
  readonly leading: 'crown' | 'flint';
  /** From the side with the male thread. */
  readonly glass: {
    readonly radiiMm: (number | 'plane')[];
    readonly thicknessesMm: number[];
    readonly glasses: string[];
    readonly semiAperturesMm: number[];
  };
  readonly residuals: { [K in keyof Residuals]: Residuals[K] extends number ? number : number[] };
}

/** The lenses of a class for a focal length and a diameter: those that can be made, and why the others cannot. */
export interface ClassFamily {
  readonly lenses: FamilyLens[];
  readonly unmade: { readonly name: string; readonly why: string }[];
}

/** A class's lenses, told so that each can be sent back as a relay's glass. */
export const familyTold = (tried: readonly (MadeLens | Unmade)[]): ClassFamily => ({
  lenses: tried.flatMap((one) => (isMade(one) ? [told(one)] : [])),
  unmade: tried.flatMap((one) => (isMade(one) ? [] : [{ name: one.name, why: one.why }])),
});

const told = ({ name, crown, flint, leading, lens, residuals }: MadeLens): FamilyLens => ({
  name,
  crown,
  ...(flint === undefined ? {} : { flint }),
  leading,
  glass: {
    radiiMm: lens.radiiMm.map((r) => (Number.isFinite(r) ? r : 'plane')),
    thicknessesMm: [...lens.thicknessesMm],
    glasses: lens.media.map((m) => m.name),
    semiAperturesMm: [...lens.semiAperturesMm],
  },
  residuals: {
    ...residuals,
    centreThicknessesMm: [...residuals.centreThicknessesMm],
    edgeThicknessesMm: [...residuals.edgeThicknessesMm],
  },
});
