import { short } from '../words.ts';
import type { Law, Value } from './check.ts';
import { agrees, printed, roomOf } from './printed.ts';

type Room = readonly [below: number, above: number];

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
  /** By how much it may lie below and above what is expected. */
  readonly room: Room;
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
    const rounding = { cutOff, slack: slack?.of() ?? 0 };
    // A zero has no sign in an answer either.
    const computed = of() + 0;
    const room = roomOf(text, rounding);
    if (!Number.isFinite(computed)) return missed(what, expected, room, why, 'no number comes out');
    const other = not.find((elsewhere) => agrees(computed, elsewhere));
    return {
      what,
      expected,
      computed,
      shown: beside(computed, text),
      room,
      place: placeOf(computed - printed(text).value, room),
      why,
      holds: agrees(computed, text, rounding) && other === undefined,
      ...(other === undefined ? {} : { fault: `${other} of another convention comes out` }),
    };
  } catch (error) {
    return missed(what, expected, roomOf(text, { cutOff }), why, error instanceof Error ? error.message : String(error));
  }
}

/** Equal but for what the last digits of the arithmetic leave, of the number itself or of 1. */
const EQUAL = 1e-9;
const LAW_DIGITS = 10;
/** How a law's tolerance arises. */
export const EXACT = 'a thousand-millionth, for the last digits of the arithmetic';

/** A law's pairs, each side worked out anew and one after the other. */
export function* judging({ pairs }: Pick<Law, 'pairs'>): Generator<Judged> {
  try {
    for (const [computed, due] of pairs()) yield judgePair(computed + 0, due);
  } catch (error) {
    yield missed('', 'an equality', [EQUAL, EQUAL], EXACT, error instanceof Error ? error.message : String(error));
  }
}

function judgePair(computed: number, due: number): Judged {
  const most = EQUAL * Math.max(1, due);
  const room: Room = [most, most];
  const [expected, shown] = [short(due, LAW_DIGITS), short(computed, LAW_DIGITS)];
  if (!Number.isFinite(computed)) return missed('', expected, room, EXACT, 'no number comes out');
  const holds = Math.abs(computed - due) <= most;
  return { what: '', expected, computed, shown, room, place: placeOf(computed - due, room), why: EXACT, holds };
}

const placeOf = (off: number, [below, above]: Room): number => (2 * off + below - above) / (below + above);

const missed = (what: string, expected: string, room: Room, why: string, fault: string): Judged => ({
  what,
  expected,
  shown: 'nothing',
  room,
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
