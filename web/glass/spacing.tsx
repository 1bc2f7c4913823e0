import { useState } from 'preact/hooks';
import { Radios } from '../fields/radios.tsx';
import { adviceNow } from './advice-now.ts';
import { BandCurves } from './band-curves.tsx';
import { search } from './search.ts';
import type { Shown } from './shown.ts';
import { WayCurves } from './way-curves.tsx';

const SHOWN: Record<Shown, string> = { contrast: 'contrast of the worst point', blur: 'blur of the worst point' };

/** The worst of the picture against the infinity space, both ways round. */
export function Spacing() {
  const [shown, setShown] = useState<Shown>('contrast');
  const now = search.value;
  const found = now?.state === 'done' ? now.found : undefined;
  return (
    <section aria-labelledby="spacing-title">
      <h2 id="spacing-title">Nearer or farther, and turned round</h2>
      {found ? (
        <>
          <Radios legend="Shown" name="shown" options={SHOWN} value={shown} onChoose={(name) => setShown(name)} />
          {found.advice ? (
            <WayCurves advice={adviceNow.value ?? found.advice} shown={shown} />
          ) : (
            <BandCurves band={found.band} shown={shown} />
          )}
        </>
      ) : (
        <p class="hint spacing-waits">
          {now === undefined || now.state === 'running' ? 'Both ways round are being tried.' : 'Not worked out.'}
        </p>
      )}
    </section>
  );
}
