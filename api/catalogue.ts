import { objectiveSchema, relaySchema, type Shelf, sensorSchema } from '../core/index.ts';
import objectives from '../data/objectives.json' with { type: 'json' };
import relays from '../data/relays.json' with { type: 'json' };
import sensors from '../data/sensors.json' with { type: 'json' };

/** A part with its id and where its numbers come from, as they stand in `data/`. */
interface Entry<Part> {
  id: string;
  provenance: string;
  part: Part;
}

const read = <Part>(file: { parts: { id: string; provenance: string; part: unknown }[] }, schema: { parse(part: unknown): Part }) =>
  file.parts.map(({ id, provenance, part }): Entry<Part> => ({ id, provenance, part: schema.parse(part) }));

/** The built-in parts, read once by the schema of the user's own input. */
const BUILT_IN = {
  objectives: read(objectives, objectiveSchema),
  relays: read(relays, relaySchema),
  sensors: read(sensors, sensorSchema),
};

const listed = <Part extends object>(entries: readonly Entry<Part>[]) =>
  entries.map(({ id, provenance, part }) => ({ id, provenance, ...part }));

/** The parts as GET /api/parts lists them: id and provenance beside the part's own fields. */
export const LISTED = { objectives: listed(BUILT_IN.objectives), relays: listed(BUILT_IN.relays), sensors: listed(BUILT_IN.sensors) };

const byId = (entries: readonly Entry<object>[]): ReadonlyMap<string, object> => new Map(entries.map(({ id, part }) => [id, part]));

/** Where the ids of a pairing are looked up. */
export const SHELF: Shelf = {
  objectives: byId(BUILT_IN.objectives),
  relays: byId(BUILT_IN.relays),
  sensors: byId(BUILT_IN.sensors),
};
