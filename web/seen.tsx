import { CornerLight } from './charts/corner-light.tsx';
import { FocalLengths } from './charts/focal-lengths.tsx';
import { OnSensor } from './on-sensor.tsx';
import { phone } from './state/screen.ts';

/** The sensor and the curves; on a phone the sensor stands above, right under the answer. */
export function Seen() {
  return (
    <div class="seen">
      {!phone.value && <OnSensor />}
      <section aria-labelledby="light-title">
        <h2 id="light-title">Toward the corner</h2>
        <CornerLight />
      </section>
      <section aria-labelledby="vary-title">
        <h2 id="vary-title">With other relays</h2>
        <FocalLengths />
      </section>
    </div>
  );
}
