import { z } from '@hono/zod-openapi';
import { objectiveSchema, relaySchema, sensorSchema } from '../../core/index.ts';

/**
 * The three parts, as core reads them, and the two other ways in which a request may name one. They are
 * made anew from core's fields: core's own schemas may be older than the `openapi` method.
 */
const objective = z.strictObject(objectiveSchema.shape).openapi('Objective');
const relay = z.strictObject(relaySchema.shape).openapi('Relay');
const sensor = z.strictObject(sensorSchema.shape).openapi('Sensor');

const partId = z.string().min(1).max(120).openapi('PartId', { description: 'the id of a part that GET /api/parts lists' });

const threeWays = <S extends z.ZodObject>(part: S, name: string) =>
  z.union([
    partId,
    part.partial().extend({ from: partId }).openapi(`${name}From`, { description: 'a listed part with what differs' }),
    part,
  ]);

export const anyObjective = threeWays(objective, 'Objective');
export const anyRelay = threeWays(relay, 'Relay');
export const anySensor = threeWays(sensor, 'Sensor');

const listed = <S extends z.ZodObject>(part: S, name: string) =>
  part
    .extend({ id: partId, provenance: z.string() })
    .openapi(`Listed${name}`, { description: 'the part itself is all but id and provenance' });

export const partsSchema = z
  .strictObject({
    objectives: z.array(listed(objective, 'Objective')),
    relays: z.array(listed(relay, 'Relay')),
    sensors: z.array(listed(sensor, 'Sensor')),
  })
  .openapi('Parts');
