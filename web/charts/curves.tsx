import { CornerLight } from './corner-light.tsx';
import { FocalLengths } from './focal-lengths.tsx';

/** Both curves, in a piece of their own that comes after the first answer. */
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
