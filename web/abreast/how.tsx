import { COMPARED, DIRECTIONS } from '../../core/index.ts';
import { FIGURE_NAMES } from '../figures/names.ts';
import { question } from './compared.ts';
import { sidesOf } from './field-geometry.ts';

/** How it was compared: what is one for all, what moves together, what counts as a difference. */
export function How() {
  const { one, unlike } = question.value;
  const sides = sidesOf(one.subject);
  const reasons = COMPARED.flatMap((id) => {
    const direction = DIRECTIONS[id];
    return direction ? [{ id, ...direction }] : [];
  });
  return (
    <section class="how" aria-labelledby="how-title">
      <h2 id="how-title">How it was compared</h2>
      <p>
        Each pairing as it stands, with its own spacing and rings, before one subject
        {sides ? ` of ${sides[0]} × ${sides[1]} mm` : ''}, {one.subject.depthMm} mm deep{one.depthGiven ? '' : ' until you give its depth'}.
        A part or a setting that two have in common is one and the same: where it is doubtful it moves in both at once, so that its ±
        cancels as far as it acts alike. What is less than the ± of the difference, or less than one part in a hundred, is told as level.
        There is no sum of it all: what matters most is yours to say.
      </p>
      {unlike.length > 0 && (
        <p class="notice" role="status">
          They are not judged alike: {unlike.join(', ')} differ{unlike.length === 1 ? 's' : ''} between them. Figures that hang on it tell
          the judging and not only the glass.
        </p>
      )}
      <details class="fold">
        <summary>Which way a figure is better, and why</summary>
        <ul class="reasons">
          {reasons.map(({ id, way, why }) => (
            <li key={id}>
              {FIGURE_NAMES[id]}: {way}; {why}.
            </li>
          ))}
        </ul>
        <p>Magnification and oversampling have no better way: of each, too little and too much cost something.</p>
      </details>
    </section>
  );
}
