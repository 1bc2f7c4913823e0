import { z } from 'zod';
import { objectiveSchema } from './objective.ts';
import { name } from './quantity.ts';
import { relaySchema } from './relay.ts';
import { sensorSchema } from './sensor.ts';

/** What is said of a part of one's own besides its optics. */
const story = {
  /** Whether it is there, or only thought of. */
  owned: z.boolean(),
  /** In whatever currency its owner keeps; absent where it is not known. */
  price: z.number().min(0).max(1e7).optional(),
  notes: z.string().max(2000).optional(),
};

/** What an id may be made of: it stands in addresses and in a table's cells. */
export const ownId = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,59}$/, 'must be at most 60 small letters, digits and hyphens, the first of them no hyphen');

/** The name under which a person knows it is wanted of a part of one's own. */
const objective = z.strictObject({ kind: z.literal('objective'), ...story, part: z.strictObject({ ...objectiveSchema.shape, name }) });
const relay = z.strictObject({ kind: z.literal('relay'), ...story, part: z.strictObject({ ...relaySchema.shape, name }) });
const sensor = z.strictObject({ kind: z.literal('sensor'), ...story, part: z.strictObject({ ...sensorSchema.shape, name }) });

/**
 * A part of one's own: an objective, relay or sensor with its name, whether it is owned, its price, notes.
 * Numbers that were measured say so in the part itself, with what is engraved beside them.
 */
export const ownPartSchema = z.discriminatedUnion('kind', [objective, relay, sensor]);

export type OwnPart = z.infer<typeof ownPartSchema>;

/** Parts that one drawer holds at most. */
export const MOST_OWN = 2000;
