import { z } from '@hono/zod-openapi';
import { BOUNDS, FIGURE_IDS, MOST_ABREAST, MOST_STEPS, settingShape } from '../../core/index.ts';
import { anyObjective, anyRelay, anySensor } from './parts.ts';

/** A pairing as a request may write it. Requests are described by this and judged by `readPairing`. */
export const pairingRequest = z
  .strictObject({ objective: anyObjective, relay: anyRelay, sensor: anySensor, ...settingShape })
  .openapi('Pairing');

/** The widest bounds that any quantity has. */
const ends = Object.values(BOUNDS).flat();
const swept = z
  .number()
  .min(Math.min(...ends))
  .max(Math.max(...ends));

const sweepShape = {
  vary: z.string().min(1).max(200).openapi({ description: 'JSON Pointer into the pairing', example: '/relay/focalLengthMm' }),
  from: swept,
  to: swept,
  steps: z.number().int().min(2).max(MOST_STEPS).openapi({ description: 'how many values, both ends included' }),
  figures: z.array(z.enum(FIGURE_IDS)).min(1).max(FIGURE_IDS.length).optional(),
};

export const sweepRequest = z.strictObject({ pairing: pairingRequest, ...sweepShape }).openapi('SweepRequest');
export const compareRequest = z.strictObject({ pairings: z.array(pairingRequest).min(2).max(MOST_ABREAST) }).openapi('CompareRequest');

/** What surrounds the pairings: these are judged on their own, so that a problem names its exact field. */
export const sweepEnvelope = z.strictObject({ pairing: z.unknown().optional(), ...sweepShape });
export const compareEnvelope = z.strictObject({ pairings: z.array(z.unknown()).min(2).max(MOST_ABREAST) });
