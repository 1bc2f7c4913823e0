import { useEffect } from 'preact/hooks';
import '../styles/glass.css';
import { RELAY_LINE } from '../lines/kinds.ts';
import { Line } from '../lines/line.tsx';
import { answered } from '../state/draft.ts';
import { fetchWorks } from '../state/works.ts';
import { Cautions } from './cautions.tsx';
import { Detail } from './detail.tsx';
import { GlassFields } from './glass-fields.tsx';
import { GlassFigures } from './glass-figures.tsx';
import { InSection } from './in-section.tsx';
import { Says } from './says.tsx';
import { followSearch } from './search.ts';
import { Spacing } from './spacing.tsx';
import { Spots } from './spots.tsx';
import { Stands } from './stands.tsx';
import { followStudy, studied } from './studied.ts';

/** The view of the relay's glass: what to do with it, what it is, how it draws. */
export function GlassView() {
  useEffect(() => {
    // Whoever opens this view may type glass at once.
    fetchWorks().catch(() => undefined);
    const ends = [followStudy(), followSearch()];
    return () => {
      for (const end of ends) end();
    };
  }, []);
  // The plate stands before the fields: they wait for it, so that it does not push them down.
  if (answered.value.pairing.relay.glass && !studied.value) return <Says />;
  return (
    <>
      <Says />
      {studied.value && (
        <section aria-labelledby="section-title">
          <h2 id="section-title">In section</h2>
          <InSection studied={studied.value} />
        </section>
      )}
      <div class="glass-inputs">
        <div>
          <div class="lines one">
            <Line kind={RELAY_LINE} />
          </div>
          <Stands />
        </div>
        <section class="setting" aria-labelledby="glass-title">
          <h2 id="glass-title">Its glass</h2>
          <GlassFields />
        </section>
      </div>
      {studied.value && (
        <section aria-labelledby="spots-title">
          <h2 id="spots-title">A point of light, from the middle to the corner</h2>
          <Spots studied={studied.value} />
        </section>
      )}
      <div class="glass-charts">
        {studied.value && (
          <section aria-labelledby="detail-title">
            <h2 id="detail-title">What is left of the detail</h2>
            <Detail studied={studied.value} />
          </section>
        )}
        <Spacing />
      </div>
      {studied.value && <GlassFigures studied={studied.value} />}
      <Cautions />
    </>
  );
}
