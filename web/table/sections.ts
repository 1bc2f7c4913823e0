import type { ComponentType } from 'preact';
import { closeUpSays, infinityBrief, infinitySteps, lightSentence, stackSentence, stillnessSays } from '../../core/table.ts';
import { BuildSection, buildOnSheet } from './build/section.tsx';
import { CloseUpSection, closeUpOnSheet } from './close-up/section.tsx';
import { InfinitySection } from './infinity/section.tsx';
import { LightSection } from './light/section.tsx';
import type { OnSheet } from './on-sheet.ts';
import { sawOnSheet } from './saw/on-sheet.ts';
import { SawSection } from './saw/section.tsx';
import { StackSection } from './stack/section.tsx';
import { StillnessSection } from './stillness/section.tsx';
import { tabled } from './tabled.ts';

export interface Section {
  /** Its anchor on the page. */
  readonly id: string;
  readonly title: string;
  readonly Body: ComponentType;
  readonly onSheet?: () => OnSheet;
  /** What it says where a phone shows no more of it; the sheet's first sentence unless told. */
  readonly inBrief?: () => string | undefined;
}

/** What is done on the table, in the order in which it is done. */
export const SECTIONS: readonly Section[] = [
  {
    id: 'build',
    title: 'What to screw together',
    Body: BuildSection,
    onSheet: buildOnSheet,
  },
  {
    id: 'infinity',
    title: 'Setting infinity',
    Body: InfinitySection,
    onSheet: () => ({ says: [infinityBrief(tabled.value)], list: infinitySteps(tabled.value), figures: [] }),
  },
  { id: 'saw', title: 'What you saw', Body: SawSection, onSheet: sawOnSheet },
  {
    id: 'light',
    title: 'Room for light',
    Body: LightSection,
    onSheet: () => ({ says: [lightSentence(tabled.value)], figures: [] }),
  },
  {
    id: 'stillness',
    title: 'Light and stillness',
    Body: StillnessSection,
    onSheet: () => ({ says: [stillnessSays(tabled.value)], figures: [] }),
  },
  {
    id: 'stack',
    title: 'Frames for this subject',
    Body: StackSection,
    onSheet: () => ({
      says: [stackSentence(tabled.value)],
      figures: ['framesInAll', 'frameStepUm', 'railTravelMm', 'stackTimeS'],
    }),
  },
];

/** What the relay's lens does on other lenses: another job, told last. */
export const ELSEWHERE: Section = {
  id: 'close-up',
  title: 'The close-up lens elsewhere',
  Body: CloseUpSection,
  onSheet: closeUpOnSheet,
  inBrief: () => closeUpSays(tabled.value)[0],
};
