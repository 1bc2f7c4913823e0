import type { Evaluation, PartKind } from '../../core/index.ts';
import { engravedObjective, engravedRelay, engravedSensor, impliedBy } from '../fields/engrave.ts';
import { partsOf } from '../fields/whole.ts';
import { type Kind, OBJECTIVE_LINE, RELAY_LINE, SENSOR_LINE } from '../lines/kinds.ts';

/** Names for parts that have none, and for second ones. */

export const LINES: Record<PartKind, Kind> = { objective: OBJECTIVE_LINE, relay: RELAY_LINE, sensor: SENSOR_LINE };

/** A part as it is engraved: by what stands on it, where that was measured otherwise. */
export function engraved(kind: PartKind, part: object): string {
  const marked = Object.entries(part).map(([name, value]) => [name, (partsOf(value) as { marked?: number }).marked ?? value]);
  return LINES[kind].engraved(Object.fromEntries(marked) as never);
}

/** A part of the pairing as it would be engraved; a relay's glass may be all that tells its focal length. */
export function engravingOf(kind: PartKind, of: Evaluation): string {
  const { objective, relay, sensor } = of.pairing;
  if (kind === 'objective') return engravedObjective(objective);
  return kind === 'sensor' ? engravedSensor(sensor) : engravedRelay({ ...impliedBy(of), ...relay });
}

const LONGEST = 120;

/** A name that none of the others has: `Mine (2)`. */
export function spareName(name: string, taken: readonly string[]): string {
  const stem = name.replace(/ \(\d+\)$/, '').slice(0, LONGEST - 7);
  for (let n = 2; ; n++) {
    const next = `${stem} (${n})`;
    if (!taken.includes(next)) return next;
  }
}
