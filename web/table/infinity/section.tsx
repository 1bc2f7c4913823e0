import { infinitySays, type TableFigureId } from '../../../core/table.ts';
import { SectionCautions } from '../cautions.tsx';
import { SettingFields } from '../fields.tsx';
import { FigureList } from '../figure-list.tsx';
import { tabled } from '../tabled.ts';
import { TubeRule } from './rule.tsx';

const PARTS: readonly { title: string; ids: readonly TableFigureId<'infinity'>[] }[] = [
  {
    title: 'How wrong the tube may be',
    ids: ['tubeShorterMm', 'tubeLongerMm', 'magnificationToleranceMm', 'sharpShorterMm', 'sharpLongerMm'],
  },
  {
    title: 'With the tube as wrong as that',
    ids: ['tubeMagnification', 'tubeMagnificationChange', 'tubeSubjectShiftMm', 'tubeWavesRms', 'tubeWaves', 'tubeStrehl'],
  },
  {
    title: 'Focused on a far thing instead',
    ids: [
      'farErrorMm',
      'farMagnification',
      'farMagnificationChange',
      'farSubjectShiftMm',
      'farWavesRms',
      'farWaves',
      'farStrehl',
      'nearestThingM',
    ],
  },
  { title: 'Off infinity on purpose', ids: ['longestOffsetMm', 'longestMagnification', 'shortestOffsetMm', 'shortestMagnification'] },
  { title: 'What lies over the subject', ids: ['coverWavesRms', 'coverWaves', 'coverStrehl', 'slipToleranceMm'] },
];

/** How wrong the tube may be, and all that is wrong in the same way. */
export const InfinitySection = () => (
  <>
    <p class="sentence">{infinitySays(tabled.value)}</p>
    <TubeRule />
    <SettingFields keys={['tubeErrorMm', 'magnificationTolerance', 'farThingM', 'slipMm', 'resinMm']} />
    <details class="fold">
      <summary>Other limits and indices</summary>
      <SettingFields keys={['strehlLimit', 'shiftLimitMm', 'slipIndex', 'resinIndex']} />
    </details>
    <FigureList ids={['tubeToleranceMm']} />
    <div class="groups">
      {PARTS.map(({ title, ids }) => (
        <section key={title}>
          <h3>{title}</h3>
          <FigureList ids={ids} />
        </section>
      ))}
    </div>
    <SectionCautions group="infinity" />
  </>
);
