import type { ComponentType } from 'preact';
import type { TableFigureId } from '../../core/table.ts';
import { CloseUpSection, closeUpOnSheet } from './close-up/section.tsx';
import { StackSection } from './stack/section.tsx';

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
    id: 'stack',
    title: 'Frames for this subject',
    Body: StackSection,
    onSheet: () => ({ says: [], figures: ['frameStepUm'] }),
  },
  {
    id: 'close-up',
    title: 'The close-up lens elsewhere',
    Body: CloseUpSection,
    onSheet: closeUpOnSheet,
  },
];
