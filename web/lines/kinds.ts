import type { Objective, Relay, Sensor } from '../../core/index.ts';
import { engravedObjective, engravedRelay, engravedSensor, impliedBy } from '../fields/engrave.ts';
import { answered, draft } from '../state/draft.ts';

/** One of the three parts of a pairing, as its line shows it. */
export interface Kind {
  name: 'objective' | 'relay' | 'sensor';
  title: string;
  example: string;
  shelf: 'objectives' | 'relays' | 'sensors';
  engraved(part: never): string;
}

export const OBJECTIVE_LINE: Kind = {
  name: 'objective',
  title: 'Objective',
  example: '10x/0.25 ∞/0.17 200',
  shelf: 'objectives',
  engraved: (part: Objective) => engravedObjective(part),
};

export const RELAY_LINE: Kind = {
  name: 'relay',
  title: 'Relay',
  example: '5 D 58 mm, or 200 mm f/4',
  shelf: 'relays',
  engraved: (part: Relay) => engravedRelay(part),
};

export const SENSOR_LINE: Kind = {
  name: 'sensor',
  title: 'Camera',
  example: '36 x 24 4.35, or full frame 45 MP',
  shelf: 'sensors',
  engraved: (part: Sensor) => engravedSensor(part),
};

/** What stands in the draft for the part, whatever was typed. */
export const partIn = ({ name }: Kind): object => (draft.value as Record<string, object>)[name] ?? {};

/** The line of the part that is answered; a relay's glass may be all that tells its focal length. */
export const lineOf = (kind: Kind): string => {
  const part = answered.value.pairing[kind.name];
  return kind.engraved((kind.name === 'relay' ? { ...impliedBy(answered.value), ...part } : part) as never);
};
