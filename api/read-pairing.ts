import { contradictions, type Pairing, type Problem, pairingSchema, problemsOf, resolveParts, type Shelf } from '../core/index.ts';
import { under } from './problems.ts';
import { WORKS } from './works.ts';

/** A pairing as sent, with its parts written out and judged; `at` is where it stands in the body. */
export type Read = { pairing: Pairing; problems: [] } | { pairing: undefined; problems: Problem[] };

/** Shape and bounds only: what contradicts itself is told by `contradictionsOf`. Ids are looked up on the shelf. */
export function readPairing(given: unknown, shelf: Shelf, at = ''): Read {
  const { pairing, problems: unknownParts } = resolveParts(given, shelf);
  const parsed = pairingSchema.safeParse(pairing);
  if (parsed.success && unknownParts.length === 0) return { pairing: parsed.data, problems: [] };
  // A part that is not there cannot be judged: its own complaint stands alone.
  const blamed = unknownParts.map((p) => p.path.replace(/\/from$/, ''));
  const others = parsed.success
    ? []
    : problemsOf(parsed.error, pairing).filter((p) => !blamed.some((b) => p.path === b || p.path.startsWith(`${b}/`)));
  return { pairing: undefined, problems: under(at, [...unknownParts, ...others]) };
}

export const contradictionsOf = (pairing: Pairing, at = ''): Problem[] => under(at, contradictions(pairing, WORKS));
