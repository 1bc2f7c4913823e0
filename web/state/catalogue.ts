import { signal } from '@preact/signals';
import { type Objective, objectiveSchema, type Relay, relaySchema, type Sensor, sensorSchema } from '../../core/index.ts';

export interface Listed<Part> {
  id: string;
  part: Part;
}

/** The parts to pick from: the catalogue and the user's own. Without an answer there is only typing. */
export interface Catalogue {
  objectives: Listed<Objective>[];
  relays: Listed<Relay>[];
  sensors: Listed<Sensor>[];
}

export const catalogue = signal<Catalogue | 'asking' | 'unreachable'>('asking');

export async function askForCatalogue(): Promise<void> {
  try {
    const answer = await fetch('/api/parts', { headers: { accept: 'application/json' } });
    if (!answer.ok) throw new Error(String(answer.status));
    const all = (await answer.json()) as Record<string, unknown>;
    catalogue.value = {
      objectives: listed(all.objectives, objectiveSchema),
      relays: listed(all.relays, relaySchema),
      sensors: listed(all.sensors, sensorSchema),
    };
  } catch {
    catalogue.value = 'unreachable';
  }
}

interface Schema<Part> {
  shape: object;
  safeParse(value: unknown): { success: true; data: Part } | { success: false };
}

/** Of each entry what the part's schema knows; an entry that is no part is passed over. */
function listed<Part>(entries: unknown, schema: Schema<Part>): Listed<Part>[] {
  if (!Array.isArray(entries)) return [];
  return entries.flatMap((entry): Listed<Part>[] => {
    if (typeof entry !== 'object' || entry === null) return [];
    const own = Object.fromEntries(Object.entries(entry).filter(([name]) => Object.hasOwn(schema.shape, name)));
    const read = schema.safeParse(own);
    return read.success && typeof entry.id === 'string' ? [{ id: entry.id, part: read.data }] : [];
  });
}
