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

interface Props {
  /** Where a note has room beside the rider of the relay, and under the sensor, px; undefined on a narrow plate, where the notes stand under it. */
  rider: { x: number; y: number; before: boolean } | undefined;
  sensor: { x: number; y: number } | undefined;
  width: number;
}

/** For a first visit: three notes in the margin of the plate, until they are put away. */
export function Notes({ rider, sensor, width }: Props) {
  if (away.value) return null;
  return (
    <aside class={`notes${rider ? ' on-plate' : ''}`} aria-label="Notes on this plate">
      <p style={rider && { [rider.before ? 'right' : 'left']: `${rider.before ? width - rider.x : rider.x}px`, top: `${rider.y}px` }}>
        Slide a rider along the bench: the answer follows.
      </p>
      <p style={sensor && { right: `${width - sensor.x}px`, top: `${sensor.y}px` }}>
        Pull the small circle at the sensor: its beam is drawn.
      </p>
      <p class="last">
        Numbers over dots are guesses; type yours.{' '}
        <button type="button" class="lead" onClick={putAway}>
          Put the notes away
        </button>
      </p>
    </aside>
  );
}
