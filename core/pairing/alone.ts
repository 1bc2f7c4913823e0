import type { Problem } from '../errors.ts';
import type { OwnPart } from '../parts/own.ts';
import { contradictions } from './contradictions.ts';
import type { Glassworks } from './glassworks.ts';
import type { Pairing } from './schema.ts';

/** A pairing with which no part of any kind can quarrel: what is left to complain of is the part's own. */
const BLAND = {
  objective: { magnification: 10, na: 0.1, referenceFocalLengthMm: 200 },
  relay: { kind: 'tube-lens', focalLengthMm: 5000 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
  infinitySpaceMm: 50,
} as const satisfies Pairing;

/**
 * What no single number of a part is to blame for, and every pairing with it would be refused for. Paths as
 * in an own part: `/part/focalLengthMm`.
 *
 * @param works needed where the part is a relay with glass; without it such a relay is not judged
 */
export function contradictionsAlone({ kind, part }: OwnPart, works?: Glassworks): Problem[] {
  if (kind === 'relay' && part.glass && !works) return [];
  const at = `/${kind}`;
  const found = contradictions({ ...BLAND, [kind]: part } as Pairing, works);
  return found.map((problem) => ({ ...problem, path: `/part${problem.path.slice(at.length)}` }));
}
