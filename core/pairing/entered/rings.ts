import { type Bounded, type QuantityInput, quantityOf } from '../../parts/quantity.ts';
import type { PlacedStop } from '../../pupil/stops.ts';
import * as leaves from '../leaves.ts';
import type { Pairing } from '../schema.ts';
import { type Entries, guessed } from './entries.ts';

/** Rings and the mount's throat as one leaf, each of their numbers an input of its own. */
export function enterRings({ values, enter }: Entries, { stops = [], sensor }: Pairing): void {
  const rings: PlacedStop[] = [];
  const add = (
    label: string,
    place: 'shoulder' | 'sensor',
    opening: readonly [string, Bounded, QuantityInput],
    at: readonly [string, Bounded, QuantityInput],
  ): void => {
    const i = rings.length;
    const diameter = quantityOf(opening[2]);
    const position = quantityOf(at[2]);
    rings.push({ label, path: opening[0], diameterMm: diameter.value, place, atMm: position.value });
    const change = (key: 'diameterMm' | 'atMm') => (current: unknown, x: number) =>
      (current as PlacedStop[]).map((ring, j) => (j === i ? { ...ring, [key]: x } : ring));
    enter(leaves.rings, opening[1], opening[0], diameter, guessed(diameter), change('diameterMm'));
    enter(leaves.rings, at[1], at[0], position, guessed(position), change('atMm'));
  };
  stops.forEach((stop, i) => {
    const path = `/stops/${i}`;
    const front = stop.fromShoulderMm !== undefined;
    const at = front ? 'fromShoulderMm' : 'fromSensorMm';
    add(
      stop.label ?? `ring ${i + 1}`,
      front ? 'shoulder' : 'sensor',
      [`${path}/diameterMm`, 'diameterMm', stop.diameterMm],
      [`${path}/${at}`, at, (stop.fromShoulderMm ?? stop.fromSensorMm) as QuantityInput],
    );
  });
  if (sensor.throatDiameterMm !== undefined && sensor.registerMm !== undefined)
    add(
      "the mount's throat",
      'sensor',
      ['/sensor/throatDiameterMm', 'throatDiameterMm', sensor.throatDiameterMm],
      ['/sensor/registerMm', 'registerMm', sensor.registerMm],
    );
  values.set(leaves.rings, rings);
}
