import { z } from 'zod';
import { name, quantity } from './quantity.ts';

/** A ring, a tube's end, a diaphragm: round, centred, at a place told from one end or the other. */
export const stopSchema = z.strictObject({
  label: name.optional(),
  diameterMm: quantity('diameterMm'),
  fromShoulderMm: quantity('fromShoulderMm').optional(),
  fromSensorMm: quantity('fromSensorMm').optional(),
});

export type Stop = z.infer<typeof stopSchema>;
