import { amount, type Pairing, short } from '../../core/index.ts';
import { engravedObjective, engravedRelay, engravedSensor, impliedBy } from '../fields/engrave.ts';
import type { Worked } from './compare-task.ts';

/** A pairing's parts and their spacing as they would be engraved, in a row. */
export function engraved(pairing: Pairing, worked?: Pick<Worked, 'answers'>): string[] {
  const { objective, relay, sensor, infinitySpaceMm, stops = [] } = pairing;
  return [
    engravedObjective(objective),
    engravedRelay({ ...(worked ? impliedBy({ pairing, answers: worked.answers }) : {}), ...relay }),
    ...(relay.reversed ? ['turned round'] : []),
    engravedSensor(sensor),
    `infinity space ${short(amount(infinitySpaceMm), 4)} mm`,
    ...(stops.length > 0 ? [stops.length === 1 ? '1 ring' : `${stops.length} rings`] : []),
  ];
}
