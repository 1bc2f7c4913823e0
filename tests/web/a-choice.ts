import type { Choice } from '../../core/choosing.ts';
import { type Answer, FIGURE_IDS, type FigureId, type Pairing, pairingSchema } from '../../core/index.ts';
import opening from '../../data/opening.json';

export const OPENING = pairingSchema.parse(opening.pairing);
export const known = (value: number, unit = 'mm'): Answer => ({ state: 'known', value, unit, origin: 'marked' }) as Answer;

/** A choice that stands where it is told to: the rest of its figures are 1. */
export function choice(
  values: Partial<Record<FigureId, number>>,
  more: Partial<Choice> & { na?: number; spaceMm?: number; relay?: string } = {},
): Choice {
  const { na = 0.25, spaceMm = 60, relay = 'relay', ...rest } = more;
  const pairing: Pairing = {
    ...OPENING,
    objective: { ...OPENING.objective, na },
    relay: { ...OPENING.relay, name: relay },
    infinitySpaceMm: spaceMm,
  };
  const figures = Object.fromEntries(FIGURE_IDS.map((id) => [id, known(values[id] ?? 1)])) as Choice['figures'];
  return { pairing, ids: {}, figures, limits: [], unknown: [], line: '', cautions: [], ...rest };
}
