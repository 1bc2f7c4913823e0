import { Setting } from './fields/setting.tsx';
import { Figures } from './figures/figures.tsx';
import { LightPath } from './plates/light-path.tsx';
import { Seen } from './seen.tsx';

/** All that is fetched once the first answer stands, in one piece and from top to bottom: nothing that stands is moved by it. */
export function Drawn() {
  return (
    <>
      <section class="path-section" aria-labelledby="path-title">
        <h2 id="path-title">The light path</h2>
        <LightPath />
        <Setting />
      </section>
      <Seen />
      <Figures />
    </>
  );
}
