import { useEffect, useRef, useState } from 'preact/hooks';
import { briefOf } from '../core/index.ts';
import { answered, report } from './state/draft.ts';
import { held } from './state/held.ts';
import './styles/brief.css';

/** Quiet before the answer is read aloud, and how long it then stays to be read, ms. */
const QUIET_MS = 500;
const STAYS_MS = 10_000;

/**
 * The answer for those who hear the page. The sentence above follows every frame of a drag; here it is
 * told once, when the hand has let go and nothing has changed for a moment, and then taken away again so
 * that nobody who reads on meets it twice.
 */
export function Spoken({ text }: { text: string }) {
  const [said, say] = useState('');
  const last = useRef(text);
  const moving = held.value !== undefined;
  useEffect(() => {
    if (moving || text === last.current) return;
    const soon = setTimeout(() => {
      last.current = text;
      say(text);
    }, QUIET_MS);
    return () => clearTimeout(soon);
  }, [text, moving]);
  useEffect(() => {
    const later = setTimeout(() => say(''), STAYS_MS);
    return () => clearTimeout(later);
  }, [said]);
  return (
    <p class="spoken unseen" aria-live="polite">
      {said}
    </p>
  );
}

/**
 * The answer in one line over the top of a narrow window, while a handle is moved below it. It covers and
 * pushes nothing; the sentence and what is read aloud of it stay where they are.
 */
export function Brief() {
  if (held.value === undefined) return null;
  return (
    <p class="brief" aria-hidden="true">
      {briefOf(answered.value, report.value.coverage)}
    </p>
  );
}
