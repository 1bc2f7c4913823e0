import { z } from '@hono/zod-openapi';
import { FIGURE_IDS, type Pairing, pairingSchema } from '../../core/index.ts';
import { type Saw, sawShape } from '../../core/table.ts';
import { answerSchema } from './answer.ts';
import { exactly } from './exactly.ts';
import { pairingRequest } from './requests.ts';

export const sightingsRequest = z.strictObject({ pairing: pairingRequest, ...sawShape }).openapi('SightingsRequest');
export const sightingsEnvelope = z.strictObject({ pairing: z.unknown().optional(), ...sawShape });

const place = z.number().int().min(0);
const ends = { value: z.number(), low: z.number(), high: z.number() };

/** What core tells, each of it with its sentence. */
type Told<T> = T & { says: string };
export interface SightingsAnswer extends Omit<Saw, 'results' | 'unsolved' | 'inconsistent' | 'magnification'> {
  results: Told<Saw['results'][number]>[];
  unsolved: Told<Saw['unsolved'][number]>[];
  inconsistent: Told<Saw['inconsistent'][number]>[];
  magnification?: Told<NonNullable<Saw['magnification']>>;
}

export const sightingsAnswer = exactly<SightingsAnswer>()(
  z
    .strictObject({
      results: z.array(
        z.strictObject({
          path: z.string(),
          ...ends,
          plusMinus: z.number().openapi({ description: 'half-width of the 95 %' }),
          from: z.array(place),
          restsOn: z.array(z.strictObject({ path: z.string(), share: z.number() })),
          asTheyStand: z.array(z.string()),
          also: z.array(z.strictObject(ends)),
          cut: z.boolean(),
          beyond: z.boolean(),
          clash: z
            .strictObject({ value: z.number(), path: z.string() })
            .optional()
            .openapi({ description: 'what stood there as exact, where it is far from this' }),
          fit: z.strictObject({ chiSquare: z.number(), freedom: z.number().int(), birge: z.number() }).optional(),
          says: z.string(),
        }),
      ),
      unsolved: z.array(
        z.strictObject({
          path: z.string(),
          from: z.array(place),
          why: z.enum(['missing', 'unmet', 'nothing learnt', 'contradicts']),
          missing: z.array(z.string()).optional(),
          spans: z.array(z.strictObject({ place, least: z.number().optional(), greatest: z.number().optional() })).optional(),
          message: z.string().optional(),
          says: z.string(),
        }),
      ),
      inconsistent: z.array(
        z.strictObject({ sighting: place, reads: z.number(), expected: z.number().optional(), off: z.number(), says: z.string() }),
      ),
      magnification: z.strictObject({ ...ends, from: z.array(place), says: z.string() }).optional(),
      pairing: pairingSchema as z.ZodType<Pairing>,
      figures: z.array(z.strictObject({ id: z.enum(FIGURE_IDS), before: answerSchema, after: answerSchema })),
      cautions: z.array(z.string()),
    })
    .openapi('SightingsAnswer'),
);
