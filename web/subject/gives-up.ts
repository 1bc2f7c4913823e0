import type { Choice } from '../../core/choosing.ts';
import { type Answer, BETTER, type FigureId, numberIn } from '../../core/index.ts';
import { lower } from '../fields/names.ts';
import { FIGURE_NAMES } from '../figures/names.ts';
import { toldAs } from '../figures/value.ts';
import { type Entry, placeOf } from './entries.ts';

/** Closer than this part nobody sees a difference. */
const ALIKE = 0.01;

/** What one gives up for what along the frontier, in a sentence: its two ends, by the first figure and by the second. */
export function givesUp(choices: readonly Choice[], entries: readonly Entry<Choice>[], [a, b]: readonly [FigureId, FigureId]): string {
  const on = choices.filter(
    ({ onFrontier, figures }) => onFrontier && Number.isFinite(numberIn(figures[a])) && Number.isFinite(numberIn(figures[b])),
  );
  const [first, ...rest] = on;
  if (!first) return '';
  const bestIn = (id: FigureId, other: FigureId): Choice =>
    rest.reduce((best, one) => (beats(one, best, id) || (level(one, best, id) && beats(one, best, other)) ? one : best), first);
  const [one, two] = [bestIn(a, b), bestIn(b, a)];
  const number = (choice: Choice): number => placeOf(entries, choice) + 1;
  if (level(one, two, a) || level(one, two, b))
    return `Here nothing has to be given up: ${number(one)} is as good as any in ${called(a)} and in ${called(b)} at once.`;
  return `From ${number(one)} to ${number(two)} ${called(b)} goes from ${told(one, b)} to ${told(two, b)}, and ${called(a)} from ${told(one, a)} to ${told(two, a)}: who wants more of one gives up some of the other.`;
}

const value = (choice: Choice, id: FigureId): number => numberIn(choice.figures[id]) as number;
const beats = (one: Choice, other: Choice, id: FigureId): boolean =>
  BETTER[id] === 'less' ? value(one, id) < value(other, id) : value(one, id) > value(other, id);
const level = (one: Choice, other: Choice, id: FigureId): boolean =>
  Math.abs(value(one, id) - value(other, id)) <= ALIKE * Math.max(Math.abs(value(one, id)), Math.abs(value(other, id)));

const called = (id: FigureId): string => lower(FIGURE_NAMES[id]).replace(/^f-number/, 'the f-number');

/** A figure as it is read in a sentence. */
export function answerSaid(id: FigureId, answer: Answer): string {
  if (answer.state !== 'known') return answer.state === 'unlimited' ? 'without limit' : answer.state === 'none' ? 'none' : 'not known';
  const { text, unit } = toldAs(id, answer);
  return `${id === 'workingFNumber' ? 'f/' : ''}${text}${unit === '' || unit === '×' || unit === '°' ? unit : ` ${unit}`}`;
}

export const told = ({ figures }: Pick<Choice, 'figures'>, id: FigureId): string => answerSaid(id, figures[id]);
