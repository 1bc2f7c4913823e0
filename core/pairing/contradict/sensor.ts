import type { Problem } from '../../errors.ts';
import { amount, isMeasured } from '../../parts/quantity.ts';
import { UM_PER_MM } from '../../units.ts';
import type { GlassRelay } from '../glassworks.ts';
import type { Pairing } from '../schema.ts';
import { disagree, problem, relayFocalLength, rounded } from './statement.ts';

export function ofSensor({ sensor, relay, sensorOffsetMm }: Pairing, glass?: GlassRelay): Problem[] {
  const { columns, rows, pixelPitchUm: pitch, throatDiameterMm: throat, registerMm: register } = sensor;
  const found: Problem[] = [];
  if (throat !== undefined && register === undefined)
    found.push(
      problem('missing', '/sensor/registerMm', register, 'is missing: without it the throat has no place', "the mount's register in mm"),
    );
  const behind = relayFocalLength(relay, glass) + amount(sensorOffsetMm ?? 0);
  if (throat !== undefined && register !== undefined && amount(register) >= behind)
    found.push(
      problem(
        'contradiction',
        '/sensor/registerMm',
        register,
        `puts the throat before the relay, which is ${rounded(behind)} mm from the sensor`,
        `less than ${rounded(behind)}, or no throatDiameterMm`,
      ),
    );
  if (columns === undefined && rows === undefined) {
    if (pitch === undefined)
      found.push(
        problem(
          'missing',
          '/sensor/pixelPitchUm',
          pitch,
          'is missing, and so are columns and rows',
          'the pixel pitch in µm, or columns and rows',
        ),
      );
    return found;
  }
  if (columns === undefined)
    return [...found, problem('missing', '/sensor/columns', columns, 'is missing beside rows', 'the pixels in a row')];
  if (rows === undefined)
    return [...found, problem('missing', '/sensor/rows', rows, 'is missing beside columns', 'the pixels in a column')];
  const across = (UM_PER_MM * amount(sensor.widthMm)) / columns;
  const down = (UM_PER_MM * amount(sensor.heightMm)) / rows;
  if (pitch !== undefined && !isMeasured(pitch) && disagree(across, amount(pitch))) {
    const would = rounded(across);
    found.push(
      problem(
        'contradiction',
        '/sensor/pixelPitchUm',
        pitch,
        `contradicts ${columns} columns on ${amount(sensor.widthMm)} mm, which is ${would} µm`,
        `${would}, or no columns and rows`,
      ),
    );
  } else if (disagree(down, across)) {
    const would = Math.round((UM_PER_MM * amount(sensor.heightMm)) / across);
    found.push(
      problem(
        'contradiction',
        '/sensor/rows',
        rows,
        `makes pixels of ${rounded(across)} by ${rounded(down)} µm, and pixels are square`,
        `about ${would}`,
      ),
    );
  }
  return found;
}
