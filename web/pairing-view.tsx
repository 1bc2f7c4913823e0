import { Answer } from './answer.tsx';
import { PARTS, Part } from './fields/part.tsx';
import { Later } from './later.tsx';
import { OnSensor } from './on-sensor.tsx';
import { phone } from './state/screen.ts';

const drawn = () => import('./drawn.tsx').then((piece) => piece.Drawn);

/** The Pairing view: the answer, the parts, the drawings, the figures. */
export function PairingView() {
  return (
    <>
      <Answer />
      {phone.value && <OnSensor />}
      <div class="parts">
        {PARTS.map((kind) => (
          <Part key={kind.name} kind={kind} />
        ))}
      </div>
      <Later load={drawn} what="The drawings and the figures" last />
    </>
  );
}
