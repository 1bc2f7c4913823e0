import { short } from '../words.ts';
import type { Law, Value } from './check.ts';
import { agrees, printed, span } from './printed.ts';

/** A number of the outside world beside core's own. */
export interface Judged {
  /** Which of a check's numbers it is; '' where there is one. */
  readonly what: string;
  /** As it is printed; of a law, as it follows. */
  readonly expected: string;
  /** Undefined where nothing came out, or no number: then `fault` says why. */
  readonly computed?: number;
  /** The same in words, with two digits more than were printed. */
  readonly shown: string;
  /** Between these it agrees. */
  readonly low: number;
  readonly high: number;
  /** Where between them: -1 is the low end, 0 the middle, 1 the high end. */
  readonly place: number;
  /** How the tolerance arises. */
  readonly why: string;
  readonly holds: boolean;
  readonly fault?: string;
}

const MORE_DIGITS = 2;

/** A computed number as it stands beside a printed one; a zero has no sign. */
const beside = (value: number, text: string): string =>
  value
    .toFixed(printed(text).decimals + MORE_DIGITS)
    .replace(/^-(?=[0.]+$)/, '')
    .replace('-', '−');

/** A printed number against what core works out now. What goes wrong on the way is told, never thrown. */
export function judge({ what = '', printed: text, of, cutOff = false, slack, not = [] }: Value): Judged {
  const expected = text.replace('-', '−');
  const why = toleranceOf(cutOff, slack?.why, not);
  try {
    const room = { cutOff, slack: slack?.of() ?? 0 };
    // A zero has no sign in an answer either.
    const computed = of() + 0;
    const [low, high] = span(text, room);
    if (!Number.isFinite(computed)) return missed(what, expected, low, high, why, 'no number comes out');
    const other = not.find((elsewhere) => agrees(computed, elsewhere));
    return {
      what,
      expected,
      computed,
      shown: beside(computed, text),
      low,
      high,
      place: placeOf(computed, low, high),
      why,
      holds: agrees(computed, text, room) && other === undefined,
      ...(other === undefined ? {} : { fault: `${other} of another convention comes out` }),
    };
  } catch (error) {
    const [low, high] = span(text, { cutOff });
    return missed(what, expected, low, high, why, error instanceof Error ? error.message : String(error));
  }
}

/** Equal but for what the last digits of the arithmetic leave, of the number itself or of 1. */
const EQUAL = 1e-9;
const LAW_DIGITS = 10;
/** How a law's tolerance arises. */
export const EXACT = 'a thousand-millionth, which the last digits of the arithmetic may take';

/** A law's pairs, each side worked out anew and one after the other. */
export function* judging({ pairs }: Pick<Law, 'pairs'>): Generator<Judged> {
  try {
    for (const [computed, due] of pairs()) yield judgePair(computed + 0, due);
  } catch (error) {
    yield missed('', 'an equality', 0, 0, EXACT, error instanceof Error ? error.message : String(error));
  }
}

function judgePair(computed: number, due: number): Judged {
  const room = EQUAL * Math.max(1, due);
  const [low, high] = [due - room, due + room];
  const [expected, shown] = [short(due, LAW_DIGITS), short(computed, LAW_DIGITS)];
  if (!Number.isFinite(computed)) return missed('', expected, low, high, EXACT, 'no number comes out');
  const holds = Math.abs(computed - due) <= room;
  return { what: '', expected, computed, shown, low, high, place: placeOf(computed, low, high), why: EXACT, holds };
}

const placeOf = (value: number, low: number, high: number): number => (2 * value - low - high) / (high - low);

const missed = (what: string, expected: string, low: number, high: number, why: string, fault: string): Judged => ({
  what,
  expected,
  shown: 'nothing',
  low,
  high,
  place: 0,
  why,
  holds: false,
  fault,
});

/** How most tolerances arise. */
export const USUAL = 'half a unit of its last digit';

/** How a tolerance arises, in words. */
function toleranceOf(cutOff: boolean, slack: string | undefined, not: readonly string[]): string {
  const digits = cutOff ? 'a whole unit of its last digit, upward: digits are cut off' : USUAL;
  return [
    slack ? `${digits}, and what ${slack} adds` : digits,
    ...(not.length > 0 ? [`not ${not.join(' nor ')}, by other conventions`] : []),
  ].join('; ');
}
