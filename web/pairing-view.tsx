import { Answer } from './answer.tsx';
import { PARTS, Part } from './fields/part.tsx';
import { Setting } from './fields/setting.tsx';
import { Later } from './later.tsx';
import { LightPath } from './plates/light-path.tsx';
import { SensorPlate } from './plates/sensor-plate.tsx';

const curves = () => import('./charts/curves.tsx').then((piece) => piece.Curves);
const figures = () => import('./charts/curves.tsx').then((piece) => piece.Figures);

/** The Pairing view: the answer, the parts, the drawings, the figures. */
export function PairingView() {
  return (
    <>
      <Answer />
      <div class="parts">
        {PARTS.map((kind) => (
          <Part key={kind.name} kind={kind} />
        ))}
      </div>
      <Setting />
      <section aria-labelledby="path-title">
        <h2 id="path-title">The light path</h2>
        <LightPath />
      </section>
      <div class="seen">
        <section aria-labelledby="sensor-title">
          <h2 id="sensor-title">On the sensor</h2>
          <SensorPlate />
        </section>
        <Later load={curves} what="The curves" />
      </div>
      <Later load={figures} what="The figures" />
    </>
  );
}
