import { short } from '../../../core/index.ts';
import { byConvention, CONVENTION_WORDS } from '../../../core/table.ts';
import { tabled } from '../tabled.ts';

/** The depth of a frame by each convention, and what it does to the count. */
export function ConventionTable() {
  const all = byConvention(tabled.value);
  if (all.length === 0) return null;
  return (
    <details class="fold">
      <summary>Depth of a frame, by which convention</summary>
      <table class="conventions">
        <thead>
          <tr>
            <th scope="col">What is added up</th>
            <th scope="col">depth of a frame</th>
            <th scope="col">frames</th>
          </tr>
        </thead>
        <tbody>
          {all.map(({ convention, chosen, depthUm, frames }) => (
            <tr key={convention} aria-current={chosen ? 'true' : undefined}>
              <th scope="row">
                {CONVENTION_WORDS[convention]}
                {chosen && <small> chosen</small>}
              </th>
              <td>{short(depthUm)} µm</td>
              <td>{frames ?? '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">The wave terms in use lie up to four times apart. Try a short stack with the step above, and look for soft bands.</p>
    </details>
  );
}
