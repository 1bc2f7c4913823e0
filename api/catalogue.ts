import { objectiveSchema, relaySchema, type Shelf, sensorSchema } from '../core/index.ts';
import objectives from '../data/objectives.json' with { type: 'json' };
import relays from '../data/relays.json' with { type: 'json' };
import sensors from '../data/sensors.json' with { type: 'json' };

/** A part with its id and where its numbers come from. */
export interface Entry<Part> {
  id: string;
  provenance: string;
  part: Part;
}

const read = <Part>(file: { parts: { id: string; provenance: string; part: unknown }[] }, schema: { parse(part: unknown): Part }) =>
  file.parts.map(({ id, provenance, part }): Entry<Part> => ({ id, provenance, part: schema.parse(part) }));

/** The built-in parts, read once by the schema of the user's own input. */
export const CATALOGUE = {
  objectives: read(objectives, objectiveSchema),
  relays: read(relays, relaySchema),
  sensors: read(sensors, sensorSchema),
};

const byId = (entries: readonly Entry<object>[]): ReadonlyMap<string, object> => new Map(entries.map(({ id, part }) => [id, part]));

/** Where the ids of a pairing are looked up. */
export const SHELF: Shelf = {
  objectives: byId(CATALOGUE.objectives),
  relays: byId(CATALOGUE.relays),
  sensors: byId(CATALOGUE.sensors),
};
