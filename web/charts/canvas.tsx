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
  const show = useRef<(() => void) | undefined>(undefined);
  const latest = useRef(drawing);
  latest.current = drawing;
  useEffect(() => {
    const element = box.current;
    const canvas = element?.querySelector('canvas');
    if (!element || !canvas) return;
    const leave = new AbortController();
    let drawn: Drawn | undefined;
    let ink = inkOf(element);
    // What is out of sight is drawn when it comes near: two or three charts that are not seen would cost every frame.
    let near = false;
    let waits = true;
    const draw = (always = false): void => {
      waits = !near && !always;
      if (!waits) drawn?.show(latest.current, ink);
    };
    const watch = new IntersectionObserver(
      (seen) => {
        near = seen.at(-1)?.isIntersecting ?? true;
        if (near && waits) draw();
      },
      { rootMargin: '150px' },
    );
    watch.observe(element);
    const anew = (printing: boolean, first = false): void => {
      ink = printing ? { ...inkOf(element), ...PRINTED } : inkOf(element);
      draw(printing || first);
    };
    const asMedia = (): void => anew(matchMedia('print').matches);
    for (const query of THEMES) matchMedia(query).addEventListener('change', asMedia, { signal: leave.signal });
    // Before a page is printed it still has the screen's colours, and the media change may come too late for a canvas.
    addEventListener('beforeprint', () => anew(true), { signal: leave.signal });
    addEventListener('afterprint', () => anew(false), { signal: leave.signal });
    drawer()
      .then(async (library) => {
        await document.fonts.ready;
        if (leave.signal.aborted) return;
        drawn = library.draw(canvas);
        show.current = () => draw();
        anew(matchMedia('print').matches, true);
      })
      .catch(() => {
        element.hidden = true;
      });
    return () => {
      leave.abort();
      watch.disconnect();
      show.current = undefined;
      drawn?.destroy();
    };
  }, []);
  // In the frame in which the rest of the page changes.
  useLayoutEffect(() => show.current?.(), [drawing]);
  return (
    <div class="canvas" ref={box}>
      <canvas role="img" aria-label={[says, ...marked(drawing)].join(' ')} />
    </div>
  );
}

/** What is marked in the picture, for those who do not see it. */
const marked = ({ marks }: Drawing): string[] => (marks.length > 0 ? [`Marked: ${marks.map(({ text }) => text).join('; ')}.`] : []);
