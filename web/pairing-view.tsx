import { Answer } from './answer.tsx';
import { Gear } from './gear.tsx';
import { Later } from './later.tsx';
import { Lines } from './lines/lines.tsx';
import { OnSensor } from './on-sensor.tsx';
import { phone } from './state/screen.ts';

const drawn = () => import('./drawn.tsx').then((piece) => piece.Drawn);

/** The Pairing view: the answer, the parts, the drawings, the figures. */
export function PairingView() {
  return (
    <>
      <Answer />
      {phone.value && <Gear />}
      {phone.value && <OnSensor />}
      <Lines />
      <Later load={drawn} what="The drawings and the figures" last />
    </>
  );
}
