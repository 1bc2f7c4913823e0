import { Answer } from './answer.tsx';
import { CornerLight } from './charts/corner-light.tsx';
import { FocalLengths } from './charts/focal-lengths.tsx';
import { CopyLink } from './copy-link.tsx';
import { PARTS, Part } from './fields/part.tsx';
import { Setting } from './fields/setting.tsx';
import { Figures } from './figures/figures.tsx';
import { Foot } from './foot.tsx';
import { LightPath } from './plates/light-path.tsx';
import { SensorPlate } from './plates/sensor-plate.tsx';

/** The Pairing view: the answer, the parts, the drawings, the figures. */
export function Page() {
  return (
    <>
      <header class="head">
        <h1>Pupilwalk</h1>
        <p>an objective, a relay, a camera, and what they do together</p>
        <CopyLink />
      </header>
      <main>
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
          <section aria-labelledby="light-title">
            <h2 id="light-title">Toward the corner</h2>
            <CornerLight />
          </section>
          <section aria-labelledby="vary-title">
            <h2 id="vary-title">With other relays</h2>
            <FocalLengths />
          </section>
        </div>
        <Figures />
      </main>
      <Foot />
    </>
  );
}
