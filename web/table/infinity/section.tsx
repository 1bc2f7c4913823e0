import { infinitySays, infinitySteps, type TableFigureId } from '../../../core/table.ts';
import { SectionCautions } from '../cautions.tsx';
import { SettingFields } from '../fields.tsx';
import { FigureList } from '../figure-list.tsx';
import { tabled } from '../tabled.ts';
import { TubeRule } from './rule.tsx';

/** What matters, told at once; the rest of each chain is behind a fold. */
const FIRST: readonly TableFigureId<'infinity'>[] = [
  'sharpShorterMm',
  'sharpLongerMm',
  'magnificationToleranceMm',
  'tubeMagnificationChange',
  'tubeStrehl',
  'nearestThingM',
];

const PARTS: readonly { title: string; ids: readonly TableFigureId<'infinity'>[] }[] = [
  {
    title: 'How far the sensor may be out of place',
    ids: ['tubeToleranceMm', 'tubeShorterMm', 'tubeLongerMm'],
  },
  {
    title: 'With the sensor out of place by as much as is set',
    ids: ['tubeMagnification', 'tubeSubjectShiftMm', 'tubeWavesRms', 'tubeWaves'],
  },
  {
    title: 'Focused on the far thing instead',
    ids: ['farErrorMm', 'farMagnification', 'farMagnificationChange', 'farSubjectShiftMm', 'farWavesRms', 'farWaves', 'farStrehl'],
  },
  { title: 'Off infinity on purpose', ids: ['longestOffsetMm', 'longestMagnification', 'shortestOffsetMm', 'shortestMagnification'] },
  { title: 'What lies over the subject', ids: ['coverStrehl', 'coverWavesRms', 'coverWaves', 'slipToleranceMm'] },
];

/** How infinity is set, how wrong it may be, and all that is wrong in the same way. */
export const InfinitySection = () => (
  <div class="table-part">
    <p class="sentence">{infinitySays(tabled.value)}</p>
    <ol class="infinity-steps">
      {infinitySteps(tabled.value).map((step) => (
        <li key={step}>{step}</li>
      ))}
    </ol>
    <TubeRule />
    <SettingFields keys={['tubeErrorMm', 'magnificationTolerance', 'farThingM', 'slipMm', 'resinMm']} />
    <FigureList ids={FIRST} />
    <details class="fold">
      <summary>All that goes with it, and its other limits</summary>
      <SettingFields keys={['strehlLimit', 'shiftLimitMm', 'slipIndex', 'resinIndex']} />
      <div class="groups">
        {PARTS.map(({ title, ids }) => (
          <section key={title}>
            <h3>{title}</h3>
            <FigureList ids={ids} />
          </section>
        ))}
      </div>
    </details>
    <SectionCautions group="infinity" />
  </div>
);
