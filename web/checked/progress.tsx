import '../styles/progress.css';
import { goOn, type Run, stop } from './run.ts';

/** How far the checks have come, and a way to end or to take up the work. */
export function Progress({ now: { state, done, of } }: { now: Exclude<Run, { state: 'done' }> }) {
  const running = state === 'running';
  return (
    <div class="progress">
      <p>
        {running
          ? 'What others print is being worked out anew'
          : `Stopped after ${done} of ${of}: nothing is said before all is worked out`}
      </p>
      <progress max={of} value={done} aria-label={`${done} of ${of} worked out`} />
      <button type="button" class="plain" onClick={running ? stop : goOn}>
        {running ? 'Stop' : 'Go on'}
      </button>
    </div>
  );
}
