import type { Reading } from '../../../../core/engravings.ts';

/** What is asked, each with its answers in words and what they would read as. */
export const asked = <Part>(read: (text: string) => Reading<Part>, text: string) =>
  read(text).asks.map(({ question, answers }) => [question, ...answers.map((answer) => read(answer.text).part)]);
export const plain = { unread: [], needs: [], asks: [] };
