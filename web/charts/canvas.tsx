import { useEffect, useRef } from 'preact/hooks';
import type { Drawn } from './draw.ts';
import type { Drawing } from './drawing.ts';
import { inkOf } from './ink.ts';

/** The library is fetched once the first answer stands. */
let library: Promise<typeof import('./draw.ts')> | undefined;
const whenIdle = (): Promise<void> => new Promise((ready) => setTimeout(ready, 60));
const drawer = () => {
  library ??= whenIdle().then(() => import('./draw.ts'));
  return library;
};

const THEMES = ['(prefers-color-scheme: dark)', '(forced-colors: active)'];

/** A chart and the sentence that it shows; its numbers stand in a table beside it. */
export function Canvas({ drawing, says }: { drawing: Drawing; says: string }) {
  const box = useRef<HTMLDivElement>(null);
  const drawn = useRef<Drawn | undefined>(undefined);
  const latest = useRef(drawing);
  latest.current = drawing;
  useEffect(() => {
    let gone = false;
    const element = box.current;
    const canvas = element?.querySelector('canvas');
    if (!element || !canvas) return;
    const show = (): void => drawn.current?.show(latest.current, inkOf(element));
    const themes = THEMES.map((query) => matchMedia(query));
    for (const theme of themes) theme.addEventListener('change', show);
    drawer()
      .then(async ({ draw }) => {
        await document.fonts.ready;
        if (gone) return;
        drawn.current = draw(canvas);
        show();
      })
      .catch(() => {
        element.hidden = true;
      });
    return () => {
      gone = true;
      for (const theme of themes) theme.removeEventListener('change', show);
      drawn.current?.destroy();
    };
  }, []);
  useEffect(() => {
    if (box.current) drawn.current?.show(drawing, inkOf(box.current));
  }, [drawing]);
  return (
    <div class="canvas" ref={box}>
      <canvas role="img" aria-label={says} />
    </div>
  );
}
