import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { held } from './state/held.ts';
import './styles/spoken.css';

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
    <p class="spoken" aria-live="polite">
      {said}
    </p>
  );
}

const line = signal<ComponentType | undefined>(undefined);

/** The answer in one line, fetched when a handle is first moved; without it the sentence still stands. */
export function Brief() {
  const moving = held.value !== undefined;
  useEffect(() => {
    if (!moving || line.peek()) return;
    import('./measure/brief-line.tsx').then(
      (piece) => {
        line.value = piece.BriefLine;
      },
      () => {},
    );
  }, [moving]);
  const Line = line.value;
  return moving && Line ? <Line /> : null;
}
