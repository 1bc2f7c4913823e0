import { z } from 'zod';
import { adapterSchema, endSchema, threadText, tubeSchema } from '../threads/adapter.ts';
import { SEXES } from '../threads/thread.ts';

const MOST_OWNED = 24;

/** The ring that the camera's mount ends in. Where its seat stands before the sensor is known of T, C and M42 x 1. */
const cameraEndSchema = z.strictObject({
  thread: threadText,
  sex: z.enum(SEXES).optional(),
  fromSensorMm: z.number().min(0).max(300).optional(),
});

/** What may be told beside the settings: rings and tubes in the box, and ends that the pairing does not tell. */
export const buildAskShape = {
  adapters: z.array(adapterSchema).max(MOST_OWNED).optional(),
  tubes: z.array(tubeSchema).max(MOST_OWNED).optional(),
  camera: cameraEndSchema.optional(),
  relayFront: endSchema.optional(),
  relayRear: endSchema.optional(),
  /** Nothing is bought. */
  ownedOnly: z.boolean().optional(),
  /** Fewest to buy before fewest in all. */
  preferOwned: z.boolean().optional(),
};

export const buildAskSchema = z.strictObject(buildAskShape);
export type BuildAsk = z.infer<typeof buildAskSchema>;
