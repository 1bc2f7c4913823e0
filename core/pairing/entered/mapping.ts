import { imageScale } from '../../paraxial/conjugates.ts';
import { diagonalOf } from '../../parts/sensor.ts';
import type { GlassRelay } from '../glassworks.ts';
import { GLASS } from '../input.ts';
import * as leaves from '../leaves.ts';
import type { Pairing } from '../schema.ts';
import type { Entries } from './entries.ts';

/** What the relay's way of mapping angles takes from the corner: from 0 to what its glass says, or anything up to cos⁴θ. */
export function enterMapping({ values, list }: Entries, pairing: Pairing, glass: GlassRelay | undefined): void {
  values.set(leaves.mapping, 0);
  const mapped = glass ? mappingOf(pairing, glass, values) : 1;
  list.push({
    path: GLASS,
    leaf: leaves.mapping,
    value: 0,
    plusMinus: Math.abs(mapped),
    least: Math.min(0, mapped),
    greatest: Math.max(0, mapped),
    origin: 'marked',
    guess: undefined,
    apart: undefined,
    put: (_, x) => x,
  });
}

/** How far the relay's way of mapping angles takes the corner from 0, all as the shared area, to 1, cos⁴θ less. */
function mappingOf({ sensor }: Pairing, glass: GlassRelay, values: Entries['values']): number {
  const distance = (values.get(leaves.infinitySpace) as number) - (values.get(leaves.exitPupilFromShoulder) as number);
  const plane = distance + (values.get(leaves.principalPlane) as number);
  const slope = diagonalOf(sensor) / 2 / imageScale(glass.focalLengthMm, values.get(leaves.sensorOffset) as number, plane);
  return (1 - glass.mappingFactor(distance, slope)) / (1 - 1 / (1 + slope * slope) ** 2);
}
