import { Contrast } from './charts/contrast.tsx';
import { CornerLight } from './charts/corner-light.tsx';
import { FocalLengths } from './charts/focal-lengths.tsx';
import { OnSensor } from './on-sensor.tsx';
import { phone } from './state/screen.ts';

/**
 * Two columns where there is room: the sensor with what is left of the subject's detail, and the curves of
 * light and focal length. On a phone the sensor stands above, right under the answer.
 */
export function Seen() {
  return (
    <div class="seen">
      <div class="column">
        {!phone.value && <OnSensor />}
        <section aria-labelledby="contrast-title">
          <h2 id="contrast-title">Contrast at the subject</h2>
          <Contrast />
        </section>
      </div>
      <div class="column">
        <section aria-labelledby="light-title">
          <h2 id="light-title">Toward the corner</h2>
          <CornerLight />
        </section>
        <section aria-labelledby="vary-title">
          <h2 id="vary-title">With other relays</h2>
          <FocalLengths />
        </section>
      </div>
    </div>
  );
}
