import { findingInWords, inconsistentInWords, type Saw, seenInWords, unsolvedInWords } from '../../../core/table.ts';
import { isTaken, looked, putBack, takeFinding } from './state.ts';

/** What follows from what was seen: the sentence, each finding to be taken, and what did not come out. */
export function FoundOf({ saw }: { saw: Saw }) {
  const { sightings, rows } = looked.value;
  return (
    <div class="saw-found">
      {saw.magnification && <p class="sentence">{seenInWords(saw.magnification)}</p>}
      <ul class="saw-findings">
        {saw.results.map((finding) => {
          const taken = isTaken(finding);
          return (
            <li key={finding.path}>
              <p class={saw.magnification ? '' : 'sentence'}>{findingInWords(finding)}</p>
              <p class="choices">
                {taken ? (
                  <>
                    <em role="status">Taken.</em>
                    <button type="button" class="lead" onClick={() => putBack(finding)}>
                      put back what stood there
                    </button>
                  </>
                ) : (
                  <button type="button" class="plain" onClick={() => takeFinding(finding)}>
                    Take it
                  </button>
                )}
              </p>
            </li>
          );
        })}
      </ul>
      {saw.unsolved.map((one) => (
        <p key={one.path} class="notice">
          {unsolvedInWords(one, sightings)}
        </p>
      ))}
      {saw.inconsistent.length > 0 && (
        <div class="notice" role="status">
          <p>These do not agree, and the ± has been widened until they do:</p>
          <ul>
            {saw.inconsistent.map((one) => (
              <li key={one.sighting}>
                {inconsistentInWords({ ...one, sighting: one.sighting }, sightings).replace(
                  /^Sighting \d+/,
                  `Sighting ${(rows[one.sighting] as number) + 1}`,
                )}
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
