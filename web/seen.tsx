import { CornerLight } from './charts/corner-light.tsx';
import { FocalLengths } from './charts/focal-lengths.tsx';
import { SensorPlate } from './plates/sensor-plate.tsx';

/** The sensor and the curves. */
export function Seen() {
  return (
    <>
      <section aria-labelledby="sensor-title">
        <h2 id="sensor-title">On the sensor</h2>
        <SensorPlate />
      </section>
      <section aria-labelledby="light-title">
        <h2 id="light-title">Toward the corner</h2>
        <CornerLight />
      </section>
      <section aria-labelledby="vary-title">
        <h2 id="vary-title">With other relays</h2>
        <FocalLengths />
      </section>
    </>
  );
}
