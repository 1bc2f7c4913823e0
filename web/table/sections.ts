import type { ComponentType } from 'preact';
import { StackSection } from './stack/section.tsx';

export interface Section {
  /** Its anchor on the page. */
  readonly id: string;
  readonly title: string;
  readonly Body: ComponentType;
}

/** What is done on the table, in the order in which it is done. */
export const SECTIONS: readonly Section[] = [{ id: 'stack', title: 'Frames for this subject', Body: StackSection }];
