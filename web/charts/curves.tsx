import { CornerLight } from './corner-light.tsx';
import { FocalLengths } from './focal-lengths.tsx';

/** What comes after the first answer, in one piece: both curves, and the figures in full. */
export { Figures } from '../figures/figures.tsx';

export function Curves() {
  return (
    <>
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
