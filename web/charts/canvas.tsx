import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import type { Drawn } from './draw.ts';
import type { Drawing } from './drawing.ts';
import { inkOf, PRINTED } from './ink.ts';
import '../styles/curves.css';

/** The library is fetched once the first answer stands. */
let library: Promise<typeof import('./draw.ts')> | undefined;
const whenIdle = (): Promise<void> => new Promise((ready) => setTimeout(ready, 60));
const drawer = () => {
  library ??= whenIdle().then(() => import('./draw.ts'));
  return library;
};

const THEMES = ['(prefers-color-scheme: dark)', '(forced-colors: active)', 'print'];

/** A chart and the sentence that it shows; its numbers stand in a table beside it. */
export function Canvas({ drawing, says }: { drawing: Drawing; says: string }) {
  const box = useRef<HTMLDivElement>(null);
  const show = useRef<((drawing: Drawing) => void) | undefined>(undefined);
  const latest = useRef(drawing);
  latest.current = drawing;
  useEffect(() => {
    const element = box.current;
    const canvas = element?.querySelector('canvas');
    if (!element || !canvas) return;
    const leave = new AbortController();
    let drawn: Drawn | undefined;
    let ink = inkOf(element);
    const anew = (printing: boolean): void => {
      ink = printing ? { ...inkOf(element), ...PRINTED } : inkOf(element);
      drawn?.show(latest.current, ink);
    };
    const asMedia = (): void => anew(matchMedia('print').matches);
    for (const query of THEMES) matchMedia(query).addEventListener('change', asMedia, { signal: leave.signal });
    // Before a page is printed it still has the screen's colours, and the media change may come too late for a canvas.
    addEventListener('beforeprint', () => anew(true), { signal: leave.signal });
    addEventListener('afterprint', () => anew(false), { signal: leave.signal });
    drawer()
      .then(async ({ draw }) => {
        await document.fonts.ready;
        if (leave.signal.aborted) return;
        drawn = draw(canvas);
        show.current = (drawing) => drawn?.show(drawing, ink);
        asMedia();
      })
      .catch(() => {
        element.hidden = true;
      });
    return () => {
      leave.abort();
      show.current = undefined;
      drawn?.destroy();
    };
  }, []);
  // In the frame in which the rest of the page changes.
  useLayoutEffect(() => show.current?.(drawing), [drawing]);
  return (
    <div class="canvas" ref={box}>
      <canvas role="img" aria-label={[says, ...marked(drawing)].join(' ')} />
    </div>
  );
}

/** What is marked in the picture, for those who do not see it. */
const marked = ({ marks }: Drawing): string[] => (marks.length > 0 ? [`Marked: ${marks.map(({ text }) => text).join('; ')}.`] : []);
