import { stillnessSays } from '../../../core/table.ts';
import { Figure } from '../../figures/figure.tsx';
import { SectionCautions } from '../cautions.tsx';
import { SettingFields } from '../fields.tsx';
import { FigureList } from '../figure-list.tsx';
import { tabled } from '../tabled.ts';

/** How much light arrives, and how still it must stand. */
export const StillnessSection = () => (
  <div class="table-part">
    <p class="sentence">{stillnessSays(tabled.value)}</p>
    <SettingFields keys={['referenceFNumber', 'exposureS', 'flashMs', 'blurPixels', 'driftUmPerS']} />
    <div class="groups">
      <section>
        <h3>Light</h3>
        <ul class="list">
          <Figure id="workingFNumber" />
        </ul>
        <FigureList ids={['moreExposureEv', 'cornerMoreExposureEv']} />
      </section>
      <section>
        <h3>Stillness</h3>
        <FigureList ids={['stillUm', 'stillSpeedUmPerS', 'flashSpeedUmPerS']} />
      </section>
    </div>
    <p class="hint">
      A first curtain and a mirror shake what stands on the table: an electronic first curtain or none, the mirror up, and a pause before
      each frame keep them out of the picture (common practice, without source). Where flash gives all the light, only what moves during the
      flash is seen.
    </p>
    <details class="fold">
      <summary>The macro lens that it is compared with, and drift</summary>
      <SettingFields keys={['referencePupilRatio']} />
      <div class="groups">
        <section>
          <h3>Light</h3>
          <ul class="list">
            <Figure id="cornerFNumber" />
          </ul>
          <FigureList ids={['referenceWorkingFNumber', 'equalFNumber', 'throughLensBrightness']} />
        </section>
        <section>
          <h3>Drift</h3>
          <FigureList ids={['longestExposureS', 'driftPixels']} />
        </section>
      </div>
    </details>
    <details class="fold">
      <summary>Where it swings: a stalk, a long arm, a floor that gives</summary>
      <SettingFields keys={['swingUm', 'swingHz']} />
      <FigureList ids={['swingPixels', 'flashSwingPixels', 'swingExposureS']} />
    </details>
    <SectionCautions group="stillness" />
  </div>
);
