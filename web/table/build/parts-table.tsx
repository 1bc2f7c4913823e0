import { short } from '../../../core/index.ts';
import { Scroll } from '../../charts/scroll.tsx';
import { built } from './box.ts';

const STANDING = { 'in the pairing': 'in the pairing', owned: 'you have it', 'to buy': 'to buy', missing: 'missing' } as const;

/** What is screwed together, from the objective to the camera. */
export function PartsTable() {
  return (
    <>
      <Scroll title="Parts in order">
        <table class="wide parts">
          <caption class="unseen">Parts in order, from the objective to the camera</caption>
          <thead>
            <tr>
              <th scope="col">no.</th>
              <th scope="col">part</th>
              <th scope="col">toward the objective</th>
              <th scope="col">toward the camera</th>
              <th scope="col">long, mm</th>
              <th scope="col">open, mm</th>
              <th scope="col">from where</th>
            </tr>
          </thead>
          <tbody>
            {built.value.parts.map(({ what, front, rear, lengthMm, clearMm, supposed, standing, remark }, i) => (
              <tr key={`${i} ${what}`} data-part={standing}>
                <td class="no">{i + 1}</td>
                <th scope="row">
                  {what}
                  {remark && <small class="remark">{remark}</small>}
                </th>
                <td class="end">{front ?? ''}</td>
                <td class="end">{rear ?? ''}</td>
                <td class={supposed?.includes('lengthMm') ? 'long supposed' : 'long'}>
                  {lengthMm === undefined ? '' : short(lengthMm, 4)}
                </td>
                <td class={supposed?.includes('clearMm') ? 'open supposed' : 'open'}>{clearMm === undefined ? '' : short(clearMm, 3)}</td>
                <td class="from">{STANDING[standing]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {built.value.parts.some(({ supposed }) => supposed) && (
        <p class="hint">In italics: the usual length of such a ring, and the opening that its threads leave. Measure yours.</p>
      )}
    </>
  );
}
