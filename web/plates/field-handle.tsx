import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';

/** Where a pointer is, in px of the drawing that the handle lies on. */
interface Place {
  x: number;
  y: number;
}

interface Props {
  class: string;
  label: string;
  /** Where the handle stands, px of the drawing. */
  at: Place;
  value: number;
  least: number;
  greatest: number;
  /** What an arrow key moves it by, and one with Shift or a page key. */
  step: number;
  stride: number;
  /** The value in words. */
  says: string;
  /** The value that a place of the drawing stands for. */
  valueAt(place: Place): number;
  onMove(value: number): void;
  children: ComponentChildren;
}

const UP = ['ArrowRight', 'ArrowUp'];
const DOWN = ['ArrowLeft', 'ArrowDown'];

/**
 * A handle that lies on a drawing and is moved along one line: by pointer and touch from where it is gripped,
 * by keyboard in steps. Its parent is as large as the drawing, and the handle is placed within it.
 */
export function FieldHandle(props: Props) {
  const { at, value, least, greatest, step, stride, valueAt, onMove } = props;
  /** What the value is off from the place that is gripped; undefined while nothing is. */
  const grip = useRef<number | undefined>(undefined);
  const read = ({ clientX, clientY, currentTarget }: PointerEvent): number => {
    const sheet = ((currentTarget as HTMLElement).parentElement as HTMLElement).getBoundingClientRect();
    return valueAt({ x: clientX - sheet.left, y: clientY - sheet.top });
  };
  const move = (to: number): void => onMove(Math.min(greatest, Math.max(least, to)));
  return (
    <div
      class={props.class}
      role="slider"
      tabIndex={0}
      aria-label={props.label}
      aria-valuemin={least}
      aria-valuemax={greatest}
      aria-valuenow={value}
      aria-valuetext={props.says}
      style={{ left: `${at.x}px`, top: `${at.y}px` }}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        grip.current = value - read(event);
      }}
      onPointerMove={(event) => {
        if (grip.current !== undefined) move(read(event) + grip.current);
      }}
      onLostPointerCapture={() => {
        grip.current = undefined;
      }}
      onKeyDown={(event) => {
        const to = keyed(event, value, { least, greatest, step, stride });
        if (to === undefined) return;
        event.preventDefault();
        move(to);
      }}
    >
      {props.children}
    </div>
  );
}

function keyed(
  { key, shiftKey, altKey, ctrlKey, metaKey }: KeyboardEvent,
  value: number,
  { least, greatest, step, stride }: Pick<Props, 'least' | 'greatest' | 'step' | 'stride'>,
): number | undefined {
  if (altKey || ctrlKey || metaKey) return undefined;
  const by = shiftKey ? stride : step;
  if (UP.includes(key)) return value + by;
  if (DOWN.includes(key)) return value - by;
  if (key === 'PageUp') return value + stride;
  if (key === 'PageDown') return value - stride;
  if (key === 'Home') return least;
  if (key === 'End') return greatest;
  return undefined;
}
