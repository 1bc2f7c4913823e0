import type { Problem } from '../errors.ts';
import { ofObjective } from './contradict/objective.ts';
import { ofRelay } from './contradict/relay.ts';
import { ofSensor } from './contradict/sensor.ts';
import { ofFocus, ofStops } from './contradict/spacing.ts';
import { type Glassworks, worked } from './glassworks.ts';
import type { Pairing } from './schema.ts';

/**
 * What no single field is to blame for: each problem still names the field to change and what would do.
 * Glass that is no lens is told alone: what else there is to say hangs on it.
 */
export function contradictions(pairing: Pairing, works?: Glassworks): Problem[] {
  const made = worked(pairing, works);
  const glass = made && 'focalLengthMm' in made ? made : undefined;
  return [
    ...ofObjective(pairing),
    ...(made && !glass ? (made as readonly Problem[]) : ofRelay(pairing, glass)),
    ...ofSensor(pairing, glass),
    ...ofStops(pairing, glass),
    ...ofFocus(pairing, glass),
  ];
}
