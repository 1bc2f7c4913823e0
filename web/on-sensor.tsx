import { SensorPlate } from './plates/sensor-plate.tsx';

export function OnSensor() {
  return (
    <section class="on-sensor" aria-labelledby="sensor-title">
      <h2 id="sensor-title">On the sensor</h2>
      <SensorPlate />
    </section>
  );
}
