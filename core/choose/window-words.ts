import { nameOf } from '../pairing/phrases.ts';
import { UNKNOWN_CIRCLE } from '../pairing/verdict.ts';
import { atLeast, atMost, capital, listed, short } from '../words.ts';
import { smallestCircle } from './ends.ts';
import { asksForCovering, type LimitWindow, type Reader } from './limit-windows.ts';
import type { Limit } from './limits.ts';
import { QUANTITIES } from './quantities.ts';
import type { Span } from './spans.ts';
import type { WindowAnswer } from './window-answer.ts';
import { amountOf, ENDS, holdsOf, LIMIT_WORDS } from './words.ts';

type Told = Omit<WindowAnswer, 'says'>;

/** The answer in words: the window and what closes it, or what excludes what, and what is not known. */
export function windowSays(answer: Told, read: Reader, whyNot: string | undefined): string {
  const noun = QUANTITIES[answer.vary].noun;
  if (whyNot !== undefined) return `There is no such rig with any ${noun}${range(answer)}: ${whyNot}.`;
  if (answer.limits.length === 0) return `Nothing is asked that the ${noun} decides.`;
  return [main(answer, noun, read), ...notKnown(answer)].filter(Boolean).join(' ');
}

const range = ({ from, to }: Told): string => ` from ${short(from)} to ${short(to)} mm`;

function main(answer: Told, noun: string, read: Reader): string {
  const { window, limits, conflict, ends } = answer;
  if (window.length > 0) {
    const [all] = window;
    if (window.length === 1 && all && all[0] === answer.from && all[1] === answer.to) return `Any ${noun}${range(answer)} will do.`;
    const beyond = ends.map(({ side, says }) => `${side} it ${says}`);
    return `Any ${noun} ${where(window, answer)}${beyond.length > 0 ? `; ${beyond.join(', ')}` : ''}.`;
  }
  const counted = limits.filter(({ how }) => how !== 'not known');
  if (counted.length === 0) return '';
  const never = counted.filter(({ intervals }) => intervals.length === 0);
  if (never.length > 0)
    return `No ${noun}${range(answer)} will do: ${never.map((limit) => `${failsOf(limit, read)}${nearestTo(limit)}`).join('; ')}.`;
  if (conflict) {
    const both = conflict.limits.map((name) => limits.find((limit) => limit.name === name) as LimitWindow);
    const told = both.map((limit) => `${holdsOf(limit)} ${where(limit.intervals, answer)}`);
    return `No ${noun} does both: ${told.join(', ')}. That is ${short(conflict.between[1] - conflict.between[0])} mm apart.`;
  }
  return `No ${noun} does all of it: ${counted.map((limit) => `${holdsOf(limit)} ${where(limit.intervals, answer)}`).join('; ')}.`;
}

/** `between 173 and 240 mm`, `up to 240 mm`, `from 173 mm up`: rounded to the safe side where three digits leave something. */
export function where(spans: readonly Span[], { from, to }: Pick<Told, 'from' | 'to'>): string {
  const one = ([low, high]: Span): string => {
    const rounded = [low > 0 ? atLeast(low) : '0', high > 0 ? atMost(high) : '0'] as const;
    const [a, b] = Number(rounded[0]) <= Number(rounded[1]) ? rounded : [short(low, 6), short(high, 6)];
    if (low === from && high === to) return 'everywhere';
    return low === from ? `up to ${b} mm` : high === to ? `from ${a} mm up` : a === b ? `of ${a} mm` : `between ${a} and ${b} mm`;
  };
  return spans.map(one).join(' or ');
}

/** What is lost with each of them; of covering it is the circle that ends. */
function failsOf(limit: LimitWindow, read: Reader): string {
  const circle = asksForCovering(limit) && limit.nearest ? smallestCircle(read, limit.nearest.at) : undefined;
  return circle ? ENDS[circle] : LIMIT_WORDS[limit.name].fails;
}

const nearestTo = (limit: LimitWindow): string =>
  limit.nearest ? ` with each, ${amountOf(limit, limit.nearest.value)} at best` : ' with each';

/** What could not be counted, and for want of what. */
function notKnown({ limits }: Told): string[] {
  const circles = [...new Set(limits.flatMap(({ without = [] }) => without))];
  return [
    ...limits.flatMap((limit) => (limit.unknown ? [unknown(limit, limit.unknown)] : [])),
    ...(circles.length > 0 ? [`${capital(listed(circles.map((c) => UNKNOWN_CIRCLE[c])))} is not known, and not counted.`] : []),
  ];
}

const unknown = (limit: Limit, missing: readonly string[]): string =>
  `Whether ${holdsOf(limit)} is not known without ${listed([...new Set(missing.map(nameOf))])}.`;
