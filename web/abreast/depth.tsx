import { useState } from 'preact/hooks';
import { BOUNDS, short } from '../../core/index.ts';
import { Typed } from '../fields/typed.tsx';
import { deepen, isDepth } from '../state/abreast.ts';
import { numberTyped } from '../state/json.ts';
import { question } from './compared.ts';

/** The one depth for which all count their frames. */
export function Depth() {
  const [wrong, setWrong] = useState(false);
  const { subject, depthGiven } = question.value.one;
  const [least, most] = BOUNDS.subjectDepthMm;
  return (
    <div class={`field depth${depthGiven ? '' : ' assumed'}`}>
      <label for="abreast-depth">Depth of the subject, for all</label>
      <div class="quantity">
        <Typed
          id="abreast-depth"
          value={depthGiven ? String(subject.depthMm) : ''}
          placeholder={short(subject.depthMm)}
          wrong={wrong ? 'abreast-depth-wrong' : undefined}
          onType={(text) => {
            const typed = numberTyped(text);
            setWrong(typed !== undefined && !isDepth(typed));
            if (typed === undefined || isDepth(typed)) deepen(typed);
          }}
        />
        <span class="unit">mm</span>
      </div>
      {wrong && (
        <p class="complaint" id="abreast-depth-wrong" role="alert">
          Put in a number from {least} to {most} mm. The frames are still those for {short(subject.depthMm)} mm.
        </p>
      )}
    </div>
  );
}
