import { Answer } from './answer.tsx';
import { PARTS, Part } from './fields/part.tsx';
import { Later } from './later.tsx';

const drawn = () => import('./drawn.tsx').then((piece) => piece.Drawn);

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
      <Later load={drawn} what="The drawings and the figures" />
    </>
  );
}
