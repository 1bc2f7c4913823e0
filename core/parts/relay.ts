import { z } from 'zod';
import { bounded, name, quantity } from './quantity.ts';
import { relayGlassSchema } from './relay-glass.ts';

export const RELAY_KINDS = ['supplementary', 'camera-lens', 'tube-lens'] as const;
export type RelayKind = (typeof RELAY_KINDS)[number];

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
  /** From the front rim to the sensor with the relay set to infinity. */
  rimToSensorMm: quantity('rimToSensorMm').optional(),
  glass: relayGlassSchema.optional(),
  reversed: z.boolean().optional(),
});

export type Relay = z.infer<typeof relaySchema>;
