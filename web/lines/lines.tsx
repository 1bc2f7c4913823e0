import { OBJECTIVE_LINE, RELAY_LINE, SENSOR_LINE } from './kinds.ts';
import { Line } from './line.tsx';

/** The three parts, each as one engraved line. */
export const Lines = () => (
  <div class="lines">
    <Line kind={OBJECTIVE_LINE} />
    <Line kind={RELAY_LINE} />
    <Line kind={SENSOR_LINE} />
  </div>
);
