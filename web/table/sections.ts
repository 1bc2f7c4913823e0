import type { ComponentType } from 'preact';
import { SawSection } from './saw/section.tsx';
import { StackSection } from './stack/section.tsx';

export interface Section {
  /** Its anchor on the page. */
  readonly id: string;
  readonly title: string;
  readonly Body: ComponentType;
}

/** What is done on the table, in the order in which it is done. */
export const SECTIONS: readonly Section[] = [
  { id: 'saw', title: 'What you saw', Body: SawSection },
  { id: 'stack', title: 'Frames for this subject', Body: StackSection },
];
