import { signal } from '@preact/signals';
import { type Objective, objectiveSchema, type Relay, relaySchema, type Sensor, sensorSchema } from '../../core/index.ts';

/** What is said of a part of one's own besides its optics; `version` grows with each change. */
export interface Own {
  owned: boolean;
  price?: number;
  notes?: string;
  version: number;
}

export interface Listed<Part> {
  id: string;
  part: Part;
  /** Only of what lies in the drawer. */
  own?: Own;
}

/** The user's own parts on disk: how it is with their file. */
export type Drawer = { state: 'open'; file: string } | { state: 'refused'; why: string; file: string };

/** The parts to pick from: the user's own first, then the catalogue. Without an answer there is only typing. */
export interface Catalogue {
  objectives: Listed<Objective>[];
  relays: Listed<Relay>[];
  sensors: Listed<Sensor>[];
  /** Undefined where the server keeps none. */
  drawer?: Drawer | undefined;
  /** Whether this is what was last seen, and the server does not answer now. */
  last: boolean;
}

export const catalogue = signal<Catalogue | 'asking' | 'unreachable'>('asking');

/** What the page's worker marks its copies with. */
const COPY = 'pupilwalk-copy';

let asked = 0;
/** The answer that stands, as it came. */
let standing = '';

/** Asks anew; where several are under way the one that was begun last counts. */
export async function askForCatalogue(): Promise<void> {
  const turn = ++asked;
  try {
    const answer = await fetch('/api/parts', { headers: { accept: 'application/json' } });
    if (!answer.ok) throw new Error(String(answer.status));
    const last = answer.headers.has(COPY);
    const text = await answer.text();
    if (turn !== asked) return;
    const known = catalogue.peek();
    if (text === standing && typeof known === 'object' && known.last === last) return;
    const all = JSON.parse(text) as Record<string, unknown>;
    catalogue.value = {
      objectives: listed(all.objectives, objectiveSchema),
      relays: listed(all.relays, relaySchema),
      sensors: listed(all.sensors, sensorSchema),
      drawer: all.drawer as Drawer | undefined,
      last,
    };
    standing = text;
  } catch {
    if (turn !== asked) return;
    const known = catalogue.peek();
    catalogue.value = typeof known === 'object' ? { ...known, last: true } : 'unreachable';
  }
}

/** Asks, and asks again when the page is turned to: another tab may have changed the drawer meanwhile. */
export function followCatalogue(): void {
  askForCatalogue();
  addEventListener('focus', askForCatalogue);
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
    const part = Object.fromEntries(Object.entries(entry).filter(([name]) => Object.hasOwn(schema.shape, name)));
    const read = schema.safeParse(part);
    if (!read.success || typeof entry.id !== 'string') return [];
    return [{ id: entry.id, part: read.data, ...(entry.own ? { own: entry.own as Own } : {}) }];
  });
}
