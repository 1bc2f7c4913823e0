import type { Problem } from '../../errors.ts';
import { hypot2 } from '../../numeric.ts';
import { imageScale } from '../../paraxial/conjugates.ts';
import { amount } from '../../parts/quantity.ts';
import type { GlassRelay } from '../glassworks.ts';
import type { Pairing } from '../schema.ts';
import { problem, relayFocalLength, rounded, spread } from './statement.ts';

export function ofStops({ stops = [], infinitySpaceMm, ...pairing }: Pairing, glass?: GlassRelay): Problem[] {
  const space = amount(infinitySpaceMm);
  const behind = relayFocalLength(pairing.relay, glass) + amount(pairing.sensorOffsetMm ?? 0);
  return stops.flatMap((stop, i): Problem[] => {
    const { fromShoulderMm: front, fromSensorMm: back } = stop;
    const path = `/stops/${i}`;
    if (front === undefined && back === undefined)
      return [
        problem(
          'missing',
          `${path}/fromShoulderMm`,
          front,
          'is missing, and so is fromSensorMm',
          "the distance from the objective's shoulder, or from the sensor",
        ),
      ];
    if (front !== undefined && back !== undefined)
      return [
        problem(
          'contradiction',
          `${path}/fromSensorMm`,
          back,
          'is given beside fromShoulderMm: a ring stands on one side of the relay',
          'only one of the two',
        ),
      ];
    if (front !== undefined && amount(front) > space)
      return [
        problem(
          'contradiction',
          `${path}/fromShoulderMm`,
          front,
          `lies beyond the relay's rim, which is ${space} mm from the shoulder`,
          `at most ${space}, or a longer infinitySpaceMm`,
        ),
      ];
    if (back !== undefined && amount(back) >= behind)
      return [
        problem(
          'contradiction',
          `${path}/fromSensorMm`,
          back,
          `lies before the relay, which is ${rounded(behind)} mm from the sensor`,
          `less than ${rounded(behind)}, or fromShoulderMm`,
        ),
      ];
    return [];
  });
}

/** The sensor may not come near the image of the exit pupil, where all magnifications end. */
export function ofFocus({ sensorOffsetMm, relay, infinitySpaceMm, objective }: Pairing, glass?: GlassRelay): Problem[] {
  const s = amount(sensorOffsetMm ?? 0);
  const f = relayFocalLength(relay, glass);
  if (!Number.isFinite(f)) return [];
  const z =
    amount(infinitySpaceMm) -
    amount(objective.exitPupilFromShoulderMm ?? 0) +
    amount(relay.frontPrincipalPlaneFromRimMm ?? glass?.frontPrincipalPlaneMm ?? 0);
  const play = hypot2(
    spread(infinitySpaceMm),
    objective.exitPupilFromShoulderMm === undefined ? 60 : spread(objective.exitPupilFromShoulderMm),
  );
  const least = Math.min(...[-1, 1].flatMap((a) => [-1, 1].map((b) => imageScale(f, s + a * spread(sensorOffsetMm), z + b * play))));
  if (least > 0.1 * f) return [];
  return [
    problem(
      'contradiction',
      '/sensorOffsetMm',
      sensorOffsetMm,
      'puts the sensor at or beyond the image of the exit pupil: there is no picture there',
      'a smaller distance from the focus',
    ),
  ];
}
