import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { short } from '../../core/index.ts';
import { giveUp, hold, letGo } from '../state/gesture.ts';
import { byHand, held } from '../state/held.ts';

/** What a handle needs to know of the quantity that it moves. */
export interface Moved {
  name: string;
  label: string;
  unit: string;
  value: number;
  least: number;
  greatest: number;
  step: number;
  leap: number;
  along: 'axis' | 'height';
  set(value: number): void;
  /** The reading in words, where there is more to say than value and unit. */
  told?: string | undefined;
}

interface Props {
  moved: Moved;
  /** Where its mark stands on the stage, px. */
  x: number;
  y: number;
  /** The value that would bring the mark to a place on the stage, px from its left and its top. */
  follow(x: number, y: number): number;
  /** Values under the hand are multiples of this. */
  grain: number;
  /** A look of its own, by the mark that is its child. */
  class?: string;
  children?: ComponentChildren;
}

/** How long after the last key a move by keys counts as done, ms. */
const QUIET_MS = 700;

/**
 * A mark that moves a quantity: dragged, touched or by arrow keys (Page keys for more, Home and End for the
 * ends, Escape gives up). A slider to whoever does not see it. It lies over the drawing, which shows it.
 */
export function Handle({ moved, x, y, follow, grain, children, ...rest }: Props) {
  const grip = useRef<{ dx: number; dy: number } | undefined>(undefined);
  const quiet = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const { name, label, unit, value, least, greatest, along } = moved;
  const set = (to: number): void => moved.set(Math.min(greatest, Math.max(least, to)));
  const stage = (event: PointerEvent): readonly [number, number] => {
    const box = (event.currentTarget as HTMLElement).parentElement?.getBoundingClientRect();
    return [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)];
  };
  const down = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    const [px, py] = stage(event);
    grip.current = { dx: px - x, dy: py - y };
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    (event.currentTarget as HTMLElement).focus({ preventScroll: true });
    hold(name, 'hand');
    event.preventDefault();
  };
  const move = (event: PointerEvent): void => {
    if (!grip.current || held.peek() !== name) return;
    const [px, py] = stage(event);
    const to = follow(px - grip.current.dx, py - grip.current.dy);
    if (Number.isFinite(to)) set(Number((Math.round(to / grain) * grain).toPrecision(6)));
  };
  const end = (how: () => void): void => {
    if (!grip.current) return;
    grip.current = undefined;
    how();
  };
  const key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && held.peek() === name) {
      clearTimeout(quiet.current);
      grip.current = undefined;
      giveUp();
      return;
    }
    const to = keyed(moved, event);
    if (to === undefined || grip.current) return;
    event.preventDefault();
    hold(name, 'keys');
    set(to);
    clearTimeout(quiet.current);
    quiet.current = setTimeout(letGo, QUIET_MS);
  };
  const mine = held.value === name;
  const reading = moved.told ?? [short(value, 4), unit].filter(Boolean).join(' ');
  return (
    <div
      class={`${rest.class ?? `handle ${along}`}${mine ? ' held' : ''}${mine && byHand.value ? ' in-hand' : ''}`}
      role="slider"
      tabIndex={0}
      data-handle={name}
      aria-label={label}
      aria-orientation={along === 'axis' ? 'horizontal' : 'vertical'}
      aria-valuemin={least}
      aria-valuemax={greatest}
      aria-valuenow={Number(value.toPrecision(6))}
      aria-valuetext={reading}
      style={{ left: `${x}px`, top: `${y}px` }}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={() => end(letGo)}
      onPointerCancel={() => end(giveUp)}
      onKeyDown={key}
      onBlur={() => {
        clearTimeout(quiet.current);
        if (held.peek() === name && !grip.current) letGo();
      }}
    >
      {children}
      {mine && byHand.value && (
        <span class="reading" aria-hidden="true">
          {reading}
        </span>
      )}
    </div>
  );
}

/** Where a key takes the value; undefined for keys that do not move it. */
function keyed(
  { value, step, leap, least, greatest }: Moved,
  { key, shiftKey, altKey, ctrlKey, metaKey }: KeyboardEvent,
): number | undefined {
  if (altKey || ctrlKey || metaKey) return undefined;
  const by = (n: number): number => Number((value + n).toPrecision(6));
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return by(shiftKey ? leap : step);
    case 'ArrowLeft':
    case 'ArrowDown':
      return by(-(shiftKey ? leap : step));
    case 'PageUp':
      return by(leap);
    case 'PageDown':
      return by(-leap);
    case 'Home':
      return least;
    case 'End':
      return greatest;
    default:
      return undefined;
  }
}
