import type { ComponentType } from 'preact';
import { infinitySays, stillnessSays, type TableFigureId } from '../../core/table.ts';
import { BuildSection, buildSays } from './build/section.tsx';
import { InfinitySection } from './infinity/section.tsx';
import { StackSection } from './stack/section.tsx';
import { StillnessSection } from './stillness/section.tsx';
import { tabled } from './tabled.ts';

/** What the printed sheet takes of a section. */
export interface OnSheet {
  /** Its sentence, and what else is said beside it. */
  readonly says: readonly string[];
  readonly figures: readonly TableFigureId[];
}

export interface Section {
  /** Its anchor on the page. */
  readonly id: string;
  readonly title: string;
  readonly Body: ComponentType;
  readonly onSheet?: () => OnSheet;
}

/** What is done on the table, in the order in which it is done. */
export const SECTIONS: readonly Section[] = [
  {
    id: 'build',
    title: 'What to screw together',
    Body: BuildSection,
    onSheet: () => ({ says: [buildSays()], figures: ['tubeLengthMm', 'shoulderFromFlangeMm', 'subjectToSensorMm'] }),
  },
  {
    id: 'infinity',
    title: 'Setting infinity',
    Body: InfinitySection,
    onSheet: () => ({ says: [infinitySays(tabled.value)], figures: ['tubeShorterMm', 'tubeLongerMm'] }),
  },
  {
    id: 'stack',
    title: 'Frames for this subject',
    Body: StackSection,
    onSheet: () => ({ says: [], figures: ['frameStepUm'] }),
  },
  {
    id: 'stillness',
    title: 'Light and stillness',
    Body: StillnessSection,
    onSheet: () => ({ says: [stillnessSays(tabled.value)], figures: ['stillUm'] }),
  },
];
