import { type Problem, shown } from '../errors.ts';
import { RULES } from './alternatives.ts';

/** The parts that a name can stand for, by kind and id. */
export interface Shelf {
  readonly objectives: ReadonlyMap<string, object>;
  readonly relays: ReadonlyMap<string, object>;
  readonly sensors: ReadonlyMap<string, object>;
}

const KINDS = { objective: 'objectives', relay: 'relays', sensor: 'sensors' } as const;
export type PartKind = keyof typeof KINDS;

/**
 * A pairing with its parts written out: an id becomes the part, `{from: id, ...}` the part with what
 * differs, and anything else stays as it is for the schema to judge. Never throws.
 */
export function resolveParts(pairing: unknown, shelf: Shelf): { pairing: unknown; problems: Problem[] } {
  if (typeof pairing !== 'object' || pairing === null || Array.isArray(pairing)) return { pairing, problems: [] };
  const problems: Problem[] = [];
  const resolved: Record<string, unknown> = { ...pairing };
  for (const kind of Object.keys(KINDS) as PartKind[]) {
    if (!Object.hasOwn(pairing, kind)) continue;
    const given = (pairing as Record<string, unknown>)[kind];
    const { id, differs } = reference(given);
    if (id === undefined) continue;
    const part = shelf[KINDS[kind]].get(id as string);
    const path = typeof given === 'string' ? `/${kind}` : `/${kind}/from`;
    if (part) resolved[kind] = merged(kind, part, differs);
    else
      problems.push({
        path,
        code: 'unknownPart',
        message: `names no ${kind} of the catalogue or your own`,
        given: shown(id),
        expected: 'an id that GET /api/parts lists',
      });
  }
  return { pairing: resolved, problems };
}

function reference(given: unknown): { id: unknown; differs: object } {
  if (typeof given === 'string') return { id: given, differs: {} };
  if (typeof given !== 'object' || given === null || !Object.hasOwn(given, 'from')) return { id: undefined, differs: {} };
  const { from, ...differs } = given as { from: unknown };
  return { id: from, differs };
}

/** What differs wins, and with it goes what the catalogue says of the same thing in another way. */
function merged(kind: PartKind, part: object, differs: object): object {
  const unsaid = RULES.filter((rule) => rule.of === kind && rule.names.some((name) => Object.hasOwn(differs, name))).flatMap(
    (rule) => rule.names,
  );
  return { ...Object.fromEntries(Object.entries(part).filter(([name]) => !unsaid.includes(name))), ...differs };
}
