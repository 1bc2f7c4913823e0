import type { Asked, Choices, OneMore, Progress } from '../../core/choosing.ts';

/** The two searches, by name. */
export interface Answers {
  choosing: Choices;
  oneMore: OneMore;
}
export type Task<Name extends keyof Answers = keyof Answers> = { name: Name; asked: Asked };

/** What a search says on its way and at its end. */
export type Said = { progress: Progress } | { answer: Answers[keyof Answers] } | { failed: string };
