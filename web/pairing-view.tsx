import { Answer } from './answer.tsx';
import { PARTS, Part } from './fields/part.tsx';
import { Setting } from './fields/setting.tsx';
import { Later } from './later.tsx';
import { LightPath } from './plates/light-path.tsx';

const seen = () => import('./seen.tsx').then((piece) => piece.Seen);
const figures = () => import('./seen.tsx').then((piece) => piece.Figures);

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
        <Later load={seen} what="What is seen on the sensor" />
      </div>
      <Later load={figures} what="The figures" />
    </>
  );
}
