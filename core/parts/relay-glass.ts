import { z } from 'zod';
import { bounded, name } from './quantity.ts';

/** Surfaces that one relay may have: a second lens behind the first counts with it. */
export const MOST_SURFACES = 16;

/** What a lens's glass is called, 'air' included, or its refractive index. */
const glassName = z.union([name, bounded('index')]);

/** Two or more surfaces as light meets them; one thickness and one glass fewer. Radii are positive where the centre lies behind. */
const surfaces = {
  radiiMm: z
    .array(z.union([z.number().min(-1e6).max(1e6), z.literal('plane')]))
    .min(2)
    .max(MOST_SURFACES),
  thicknessesMm: z
    .array(z.number().min(0).max(500))
    .min(1)
    .max(MOST_SURFACES - 1),
  glasses: z
    .array(glassName)
    .min(1)
    .max(MOST_SURFACES - 1),
  /** The height to which each surface lets light through; where absent, as far as there is glass. */
  semiAperturesMm: z.array(z.number().min(0.05).max(250)).min(2).max(MOST_SURFACES).optional(),
};

/** Surface by surface; `second` is a lens in a row behind the first one, each listed from its own male thread's side. */
const listingSchema = z.strictObject({
  ...surfaces,
  second: z.strictObject({ gapMm: z.number().min(0).max(500), ...surfaces, reversed: z.boolean().optional() }).optional(),
});

/** Kinds of lens that one can be made of where its surfaces are not known. */
export const GLASS_CLASSES = ['singlet', 'cemented-achromat', 'air-spaced-achromat'] as const;

/** Only what kind of lens it is: one is made, of the glasses named or of glasses usual for it. */
const classSchema = z.strictObject({
  class: z.enum(GLASS_CLASSES),
  crown: name.optional(),
  flint: name.optional(),
  /** Which of them stands on the male thread's side. */
  leading: z.enum(['crown', 'flint']).optional(),
});

/**
 * The relay's glass, from the side that faces the objective when `reversed` is false: the side that
 * faces the camera lens in a close-up lens's normal job, the one with the male thread. `reversed` turns
 * all of it round.
 */
export const relayGlassSchema = z.union([listingSchema, classSchema]);

export type GlassListing = z.infer<typeof listingSchema>;
