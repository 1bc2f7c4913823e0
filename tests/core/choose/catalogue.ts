import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Objective, objectiveSchema, type Relay, relaySchema, type Sensor, sensorSchema } from '../../../core/index.ts';

/** The built-in parts, by id, read without the API. */
const read = <Part>(file: string, schema: { parse(part: unknown): Part }): { id: string; part: Part }[] =>
  (
    JSON.parse(readFileSync(join(import.meta.dirname, '../../../data', file), 'utf8')) as { parts: { id: string; part: unknown }[] }
  ).parts.map(({ id, part }) => ({ id, part: schema.parse(part) }));

export const OBJECTIVES = read<Objective>('objectives.json', objectiveSchema);
export const RELAYS = read<Relay>('relays.json', relaySchema);
export const SENSORS = read<Sensor>('sensors.json', sensorSchema);
/** Those whose glass has not to be looked through. */
export const PLAIN_RELAYS = RELAYS.filter(({ part }) => part.glass === undefined);
