import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { phone } from '../state/screen.ts';
import { Canvas } from './canvas.tsx';
import type { Drawing } from './drawing.ts';
import { InRows, Table } from './table.tsx';

interface Props {
  /** The caption's id. */
  id: string;
  /** What is seen, in a sentence. */
  says: string;
  /** More that belongs to the caption. */
  more?: ComponentChildren;
  /** Undefined where there is nothing to draw. */
  drawing: Drawing | undefined;
  table: { title: string; columns: readonly string[]; rows: () => readonly (readonly string[])[] };
  /** True while it still follows what is moved. */
  following?: boolean;
}

/** A curve over its caption and its numbers. On a phone the caption stands alone: curve and numbers are behind one fold. */
export function Curve({ id, says, more, drawing, table, following = false }: Props) {
  const narrow = phone.value;
  const [open, setOpen] = useState(false);
  const caption = (
    <figcaption id={id} class={following ? 'following' : undefined}>
      {says}
      {more}
    </figcaption>
  );
  return (
    <figure class="plate chart" aria-labelledby={id} aria-busy={following}>
      {!narrow && drawing && <Canvas drawing={drawing} says={says} />}
      {caption}
      {drawing && !narrow && <Table {...table} />}
      {drawing && narrow && (
        <details class="fold" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
          <summary>See the curve</summary>
          {open && <Canvas drawing={drawing} says={says} />}
          {open && <InRows {...table} />}
        </details>
      )}
    </figure>
  );
}
