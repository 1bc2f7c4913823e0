import { signal } from '@preact/signals';

/** That the notes have been put away is all that the page ever keeps on a machine. */
const KEY = 'pupilwalk.notes';
const AWAY = 'away';

function kept(): boolean {
  try {
    return localStorage.getItem(KEY) === AWAY;
  } catch {
    // A browser that keeps nothing shows the notes at every visit.
    return false;
  }
}

const away = signal(kept());

function putAway(): void {
  away.value = true;
  try {
    localStorage.setItem(KEY, AWAY);
  } catch {
    // Then they come back at the next visit.
  }
}

/** For a first visit: three notes in the lower margin of the plate, until they are put away. */
export function Notes() {
  if (away.value) return null;
  return (
    <aside class="notes" aria-label="Notes on this plate">
      <p>Slide a rider along the bench, or type its number: the answer follows.</p>
      <p>Pull the small circle at the sensor: its beam is drawn.</p>
      <p>
        Numbers in italics over dots are guesses: type yours.{' '}
        <button type="button" class="lead" onClick={putAway}>
          Put the notes away
        </button>
      </p>
    </aside>
  );
}
