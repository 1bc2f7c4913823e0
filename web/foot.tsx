import story from '../data/opening-story.json';
import { ViewLink } from './nav.tsx';

/** What to mind at the table, and what the numbers are and are not. */
export function Foot() {
  return (
    <footer class="foot">
      <section aria-labelledby="mind">
        <h2 id="mind">At the table</h2>
        <p>
          Never point a lens at the sun, nor look at it through one. A long rig is heavy and levers on the camera’s mount: carry it at its
          middle. Approach the subject slowly; the front lens breaks more easily than the subject. Follow the makers’ data and your local
          safety rules for lamps, lasers and chemicals.
        </p>
      </section>
      <section aria-labelledby="are">
        <h2 id="are">What the numbers are</h2>
        <p>
          First-order optics, stops as discs in the exit pupil, diffraction of a round pupil. A relay whose glass is known is traced by real
          rays; any other counts as free of faults, and everything as centred. Each number carries what its inputs leave open; italics over
          a dotted line are guesses typical of a class, not data of any maker. Measure what matters before you buy.
        </p>
        <p>
          <ViewLink name="checked" /> what others print, worked out anew as you read.
        </p>
      </section>
      <section aria-labelledby="example">
        <h2 id="example">The opening example</h2>
        <p>
          {story.title}. {story.story}
        </p>
      </section>
    </footer>
  );
}
