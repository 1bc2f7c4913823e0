import { signal } from '@preact/signals';
import { Answer } from './answer.tsx';
import { Gear } from './gear.tsx';
import { Later } from './later.tsx';
import { Lines } from './lines/lines.tsx';
import { phone } from './state/screen.ts';

const onSensor = () => import('./on-sensor.tsx').then((piece) => piece.OnSensor);
const drawn = () => import('./drawn.tsx').then((piece) => piece.Drawn);

/** Whether the picture of the sensor stands, which on a phone comes before the lines. */
const seen = signal(false);
const show = (): void => {
  seen.value = true;
};

/** The Pairing view: the answer, the parts, the drawings, the figures. */
export function PairingView() {
  return (
    <>
      <Answer />
      {phone.value && <Gear />}
      {phone.value && <Later load={onSensor} what="The picture of the sensor" then={show} />}
      {(seen.value || !phone.value) && <Below key="below" />}
    </>
  );
}

const Below = () => (
  <>
    <Lines />
    <Later load={drawn} what="The drawings and the figures" last />
  </>
);
