import { z } from 'zod';
import { bounded, name, quantity } from './quantity.ts';

export const RELAY_KINDS = ['supplementary', 'camera-lens', 'tube-lens'] as const;
export type RelayKind = (typeof RELAY_KINDS)[number];

/**
 * The relay's glass, from the side that faces the objective when `reversed` is false: the side that
 * faces the camera lens in a close-up lens's normal job, the one with the male thread.
 */
const glassSchema = z.strictObject({
  radiiMm: z
    .array(z.union([z.number().min(-1e6).max(1e6), z.literal('plane')]))
    .min(2)
    .max(16),
  thicknessesMm: z.array(z.number().min(0).max(500)).min(1).max(15),
  glasses: z.array(name).min(1).max(15),
});

/** What acts as the tube lens: a close-up achromat, a camera lens set to infinity, a tube lens. */
export const relaySchema = z.strictObject({
  name: name.optional(),
  kind: z.enum(RELAY_KINDS),
  focalLengthMm: quantity('focalLengthMm').optional(),
  powerDioptre: quantity('powerDioptre').optional(),
  focalLengthRangeMm: z.tuple([bounded('focalLengthMm'), bounded('focalLengthMm')]).optional(),
  maleThread: name.optional(),
  femaleThread: name.optional(),
  clearApertureMm: quantity('clearApertureMm').optional(),
  entrancePupilDiameterMm: quantity('entrancePupilDiameterMm').optional(),
  fNumber: quantity('fNumber').optional(),
  entrancePupilDepthMm: quantity('entrancePupilDepthMm').optional(),
  imageCircleMm: quantity('imageCircleMm').optional(),
  frontPrincipalPlaneFromRimMm: quantity('frontPrincipalPlaneFromRimMm').optional(),
  backFocalLengthMm: quantity('backFocalLengthMm').optional(),
  glass: glassSchema.optional(),
  reversed: z.boolean().optional(),
});

export type Relay = z.infer<typeof relaySchema>;
