import { diagonalOf, short } from '../../core/index.ts';
import { Lead } from '../fields/lead.tsx';
import { answered } from '../state/draft.ts';

/** Difference of scale between the colours that an objective may leave to its maker's tube lens, as a share; from memory, the usual order. */
const LEFT_TO_TUBE_LENS = 0.005;

/** What no trace of the relay can know. */
export function Cautions() {
  const { objective, sensor } = answered.value.pairing;
  const corner = diagonalOf(sensor) / 2;
  const fringe = `half a per cent of scale is ${short(1000 * LEFT_TO_TUBE_LENS * corner)} µm in the corner`;
  return (
    <section aria-labelledby="cautions-title">
      <h2 id="cautions-title">What the trace cannot know</h2>
      <ul class="cautions">
        <li>The objective counts as perfect and everything as centred: what they do wrong comes on top.</li>
        <li>
          {objective.tubeLensCorrectsColour === true
            ? `This objective leaves its lateral colour to its maker's own tube lens: behind a neutral relay the corners fringe, whatever is told here; ${fringe}.`
            : objective.tubeLensCorrectsColour === false
              ? 'This objective is free of lateral colour without its maker’s tube lens: the relay’s is all there is.'
              : `Some objectives are free of lateral colour only with their maker's own tube lens; ${fringe}. `}
          {objective.tubeLensCorrectsColour === undefined && <Lead path="/objective/tubeLensCorrectsColour">Say whether yours is.</Lead>}
        </li>
        <li>
          {objective.flatField
            ? 'The objective is engraved as flat-field: what is left of its own curvature adds to the relay’s.'
            : 'The objective is not engraved as flat-field: its own curvature adds to the relay’s, and may be the greater.'}
        </li>
      </ul>
    </section>
  );
}
