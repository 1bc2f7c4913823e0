import { useEffect, useState } from 'preact/hooks';
import { limitsOf, type Want, type WindowAnswer, windowing } from '../../core/choosing.ts';
import type { Pairing } from '../../core/index.ts';
import { WindowBars } from '../charts/window-bars.tsx';
import { ownMarks } from '../charts/window-geometry.ts';
import { catalogue } from '../state/catalogue.ts';
import { fetchWorks, hasGlass, worksNow } from '../state/works.ts';
import { asksOf } from './blanks.ts';

const SLICE_MS = 12;

/** Which focal lengths of the relay would give the wish, all else of this pairing held: worked out when it is opened. */
export function OtherRelays({ pairing, want, id }: { pairing: Pairing; want: Want; id: string }) {
  const [open, setOpen] = useState(false);
  return (
    <details class="fold" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>Which relays would do</summary>
      {open && <Window pairing={pairing} want={want} id={id} />}
    </details>
  );
}

function Window({ pairing, want, id }: { pairing: Pairing; want: Want; id: string }) {
  const [answer, setAnswer] = useState<WindowAnswer | 'failed' | undefined>(undefined);
  const key = JSON.stringify([pairing, want]);
  useEffect(() => {
    let ended = false;
    // A little at a time, so that nothing else on the page has to wait.
    const work = async (): Promise<void> => {
      if (hasGlass(pairing)) await fetchWorks();
      const steps = windowing({ pairing, vary: '/relay/focalLengthMm', limits: limitsOf(want).filter(asksOf) }, worksNow());
      let until = performance.now() + SLICE_MS;
      for (const found of steps) {
        if (ended) return;
        if (found) setAnswer(found);
        if (performance.now() < until) continue;
        await new Promise((next) => setTimeout(next));
        until = performance.now() + SLICE_MS;
      }
    };
    work().catch(() => {
      if (!ended) setAnswer('failed');
    });
    return () => {
      ended = true;
    };
  }, [key]);
  if (answer === undefined) return <p class="hint">Other focal lengths are being tried.</p>;
  if (answer === 'failed') return <p class="hint">Other focal lengths could not be tried: load the page again.</p>;
  const shelf = catalogue.value;
  const own = typeof shelf === 'string' ? [] : shelf.relays.filter((entry) => entry.own?.owned);
  return <WindowBars answer={answer} marks={ownMarks(own)} id={`${id}-window`} />;
}
