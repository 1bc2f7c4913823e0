import { briefOf } from '../../core/index.ts';
import { answered, report } from '../state/draft.ts';
import '../styles/brief.css';

/**
 * The answer in one line over the top of a narrow window, while a handle is moved below it. It covers and
 * pushes nothing; the sentence and what is read aloud of it stay where they are.
 */
export function BriefLine() {
  return (
    <p class="brief" aria-hidden="true">
      {briefOf(answered.value, report.value.coverage)}
    </p>
  );
}
