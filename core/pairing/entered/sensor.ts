import { Gap } from '../../figure.ts';
import type { Sensor } from '../../parts/sensor.ts';
import * as typical from '../../parts/typical.ts';
import * as leaves from '../leaves.ts';
import type { Entries } from './entries.ts';

export function enterSensor({ values, take, takeIfGiven, takeApart }: Entries, sensor: Sensor): void {
  takeApart(leaves.register, 'registerMm', '/sensor/registerMm', sensor.registerMm, typical.register);
  take(leaves.width, 'widthMm', '/sensor/widthMm', sensor.widthMm);
  take(leaves.height, 'heightMm', '/sensor/heightMm', sensor.heightMm);
  takeIfGiven(leaves.givenPitch, 'pixelPitchUm', '/sensor/pixelPitchUm', sensor.pixelPitchUm);
  values.set(leaves.columns, sensor.columns ?? Gap.unknown('/sensor/columns'));
  values.set(leaves.rows, sensor.rows ?? Gap.unknown('/sensor/rows'));
}
