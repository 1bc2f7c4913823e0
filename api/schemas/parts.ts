import { z } from '@hono/zod-openapi';
import { objectiveSchema, relaySchema, sensorSchema } from '../../core/index.ts';

/** The three parts, as core reads them, and the two other ways in which a request may name one. */
export const objective = objectiveSchema.openapi('Objective');
export const relay = relaySchema.openapi('Relay');
export const sensor = sensorSchema.openapi('Sensor');

export const partId = z.string().min(1).max(120).openapi('PartId', { description: 'the id of a part that GET /api/parts lists' });

const threeWays = <S extends z.ZodObject>(part: S, name: string) =>
  z.union([
    partId,
    part.partial().extend({ from: partId }).openapi(`${name}From`, { description: 'a listed part with what differs' }),
    part,
  ]);

export const anyObjective = threeWays(objective, 'Objective');
export const anyRelay = threeWays(relay, 'Relay');
export const anySensor = threeWays(sensor, 'Sensor');

const entry = <S extends z.ZodType>(part: S, name: string) =>
  z.strictObject({ id: partId, provenance: z.string(), part }).openapi(`${name}Entry`);

export const partsSchema = z
  .strictObject({
    objectives: z.array(entry(objective, 'Objective')),
    relays: z.array(entry(relay, 'Relay')),
    sensors: z.array(entry(sensor, 'Sensor')),
  })
  .openapi('Parts');
