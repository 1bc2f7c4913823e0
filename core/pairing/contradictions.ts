import type { Problem } from '../errors.ts';
import { ofObjective } from './contradict/objective.ts';
import { ofRelay } from './contradict/relay.ts';
import { ofSensor } from './contradict/sensor.ts';
import { ofFocus, ofStops } from './contradict/spacing.ts';
import type { Pairing } from './schema.ts';

/** What no single field is to blame for: each problem still names the field to change and what would do. */
export const contradictions = (pairing: Pairing): Problem[] => [
  ...ofObjective(pairing),
  ...ofRelay(pairing),
  ...ofSensor(pairing),
  ...ofStops(pairing),
  ...ofFocus(pairing),
];
