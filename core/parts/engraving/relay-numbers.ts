import type { Relay, RelayKind } from '../relay.ts';
import { type Ask, blanked, joined, number } from './reading.ts';

/**
 * A bare number in a relay's line may be a power, a thread, a focal length or an f-number. Where what a
 * relay can be leaves one meaning, it is that; where it leaves several, they are asked about.
 * The limits are common practice, without a source.
 */
export interface Bare {
  value: number;
  /** As it stands in the text. */
  typed: string;
  at: number;
  /** Said to be a length in mm. */
  mm: boolean;
  /** What stands before it: nothing, `f`, or `f =`. */
  f: '' | 'f' | 'f=';
}

export interface Meaning {
  words: string;
  /** As it would be typed so that it means nothing else. */
  text: string;
  part: Partial<Relay>;
}

/** On its own between blanks: never a part of `200/4` or of `-5`, nor across anything. */
const PATTERN = /(?<=^|[\s,;])(?<![Ø⌀]\s*)(?:(f)\s*(=)?\s*)?(\d+(?:[.,]\d+)?|[.,]\d+)\s*(mm\b)?(?=[\s,;]|$)/gi;

/** The bare numbers of what is left of a line, and what is then left. */
export function bareIn(text: string): { numbers: Bare[]; rest: string } {
  let rest = text;
  const numbers = [...text.matchAll(PATTERN)].map((m): Bare => {
    rest = blanked(rest, m.index, m[0].length);
    return { value: number(m[3]), typed: m[0].trim(), at: m.index, mm: m[4] !== undefined, f: m[1] ? (m[2] ? 'f=' : 'f') : '' };
  });
  return { numbers, rest };
}

/** Weaker than this a bare number is a power in dioptres: no relay is so short. */
const SHORTEST_MM = 25;
const WIDEST_THREAD_MM = 127;
export const FASTEST = 0.7;
export const SLOWEST = 32;
export const SHORTEST_AT_ALL_MM = 5;

const isPower = ({ value, mm, f }: Bare): boolean => !mm && f === '' && value < SHORTEST_MM;
const isThread = ({ value, f }: Bare): boolean => f === '' && value >= SHORTEST_MM && value <= WIDEST_THREAD_MM;
const isFNumber = ({ value, mm, f }: Bare): boolean => !mm && f !== 'f=' && value >= FASTEST && value <= SLOWEST;
const isLength = ({ value, mm, f }: Bare): boolean => value >= (mm || f !== '' ? SHORTEST_AT_ALL_MM : SHORTEST_MM);

const KINDS: readonly RelayKind[] = ['supplementary', 'camera-lens', 'tube-lens'];
const WORD: Record<RelayKind, string> = { supplementary: 'close-up', 'camera-lens': 'camera lens', 'tube-lens': 'tube lens' };
const A: Record<RelayKind, string> = { supplementary: 'a close-up lens', 'camera-lens': 'a camera lens', 'tube-lens': 'a tube lens' };

/** What the bare numbers can mean beside what the line says otherwise; `used` are those that it is about. */
export function meaningsOf(told: Partial<Relay>, numbers: readonly Bare[]): { used: readonly Bare[]; meanings: Meaning[] } {
  const aperture = numbers.find((n) => n.f === 'f' && isFNumber(n));
  const others = numbers.filter((n) => n !== aperture);
  // Beside another length f 4 is the f-number.
  if (aperture && told.fNumber === undefined && (told.focalLengthMm !== undefined || told.focalLengthRangeMm || others.length > 0)) {
    const with_ = { ...told, kind: told.kind ?? ('camera-lens' as const), fNumber: aperture.value };
    const { used, meanings } = meaningsOf(with_, others);
    const stop = { kind: with_.kind, fNumber: aperture.value };
    const whole = meanings.map((m) => ({ ...m, text: `${m.text} f/${aperture.value}`, part: { ...stop, ...m.part } }));
    return { used: [...used, aperture], meanings: whole.length > 0 ? whole : [{ words: '', text: '', part: stop }] };
  }
  const [one, two] = numbers;
  if (!one) return { used: [], meanings: [] };
  if (told.powerDioptre !== undefined || told.focalLengthMm !== undefined || told.focalLengthRangeMm) {
    const known = told.powerDioptre !== undefined || (told.focalLengthMm !== undefined && told.fNumber !== undefined);
    const fits = isThread(one) && told.maleThread === undefined && known;
    return fits ? { used: [one], meanings: [{ words: '', text: '', part: threadOf(one) }] } : { used: [], meanings: [] };
  }
  const both = two ? pairOf(told, one, two) : [];
  return both.length > 0 ? { used: numbers.slice(0, 2), meanings: both } : { used: [one], meanings: singleOf(told, one) };
}

const threadOf = ({ value }: Bare): Partial<Relay> => ({ maleThread: `${value} x 0.75` });

function singleOf({ kind, fNumber, maleThread }: Partial<Relay>, n: Bare): Meaning[] {
  const { value } = n;
  const maybeCloseUp = fNumber === undefined && (kind === undefined || kind === 'supplementary');
  if (maybeCloseUp && isPower(n))
    return [
      { words: `${value} D: the power of a close-up lens`, text: `${value} D`, part: { kind: 'supplementary', powerDioptre: value } },
    ];
  const closeUp = kind === undefined ? 'close-up ' : '';
  const thread: Meaning = {
    words: `${value} mm: the thread of a close-up lens`,
    text: `${closeUp}${value} x 0.75`,
    part: { kind: 'supplementary', ...threadOf(n) },
  };
  const stop: Meaning = {
    words: `f/${value}: the f-number of a camera lens`,
    text: `f/${value}`,
    part: { kind: 'camera-lens', fNumber: value },
  };
  const length = (of: RelayKind): Meaning => ({
    words: `${value} mm: the focal length of ${A[of]}`,
    text: `${kind === undefined ? `${WORD[of]} ` : ''}f ${value} mm`,
    part: { kind: of, focalLengthMm: value },
  });
  const known = kind === undefined ? KINDS : [kind];
  return [
    ...(maybeCloseUp && isThread(n) && maleThread === undefined ? [thread] : []),
    ...(n.f === 'f' && fNumber === undefined && kind !== 'tube-lens' && isFNumber(n) ? [stop] : []),
    ...(isLength(n) || (!maybeCloseUp && value >= SHORTEST_AT_ALL_MM) ? known.map(length) : []),
  ];
}

/** Two bare numbers: power and thread, power and the focal length that it comes to, focal length and f-number, focal length and thread. */
function pairOf({ kind, fNumber, maleThread }: Partial<Relay>, one: Bare, two: Bare): Meaning[] {
  const [small, large] = one.value < two.value ? [one, two] : [two, one];
  const closeUp = fNumber === undefined && (kind === undefined || kind === 'supplementary');
  const camera = kind === undefined || kind === 'camera-lens';
  const found: Meaning[] = [];
  if (closeUp && maleThread === undefined && isPower(small) && isThread(large))
    found.push({
      words: `${small.value} D and a thread of ${large.value} mm: a close-up lens`,
      text: `${small.value} D ${large.value} mm`,
      part: { kind: 'supplementary', powerDioptre: small.value, ...threadOf(large) },
    });
  if (closeUp && isPower(small) && Math.abs((small.value * large.value) / 1000 - 1) <= 0.01)
    found.push({
      words: `${small.value} D, which is ${large.value} mm: a close-up lens`,
      text: `${small.value} D`,
      part: { kind: 'supplementary', powerDioptre: small.value },
    });
  if (camera && fNumber === undefined && isFNumber(small) && small.value < SHORTEST_MM && isLength(large))
    found.push({
      words: `${large.value} mm f/${small.value}: a camera lens`,
      text: `${large.value} mm f/${small.value}`,
      part: { kind: 'camera-lens', focalLengthMm: large.value, fNumber: small.value },
    });
  if (maleThread !== undefined || !isThread(small)) return found;
  // Either may be the thread where both could be.
  const ways = [[large, small], ...(isThread(large) ? [[small, large]] : [])] as const;
  for (const of of kind === undefined ? KINDS : [kind])
    for (const [length, thread] of of === 'tube-lens' ? [] : ways)
      found.push({
        words: `${length.value} mm with a thread of ${thread.value} mm: ${A[of]}`,
        text: `${kind === undefined ? `${WORD[of]} ` : ''}f ${length.value} mm ${thread.value} x 0.75`,
        part: { kind: of, focalLengthMm: length.value, ...threadOf(thread) },
      });
  return found;
}

/** The line with each meaning in the place of the numbers that it is about. */
export function askAbout(text: string, used: readonly Bare[], meanings: readonly Meaning[]): Ask {
  const left = used.reduce((rest, { at, typed }) => {
    const start = rest.indexOf(typed, at);
    return blanked(rest, start, typed.length);
  }, text);
  const what = used.length > 0 ? used.map(({ typed }) => typed).join(' ') : text.trim();
  return {
    question: `what ‘${what}’ is`,
    answers: meanings.map(({ words, text: piece }) => ({ words, text: joined(piece, left) })),
  };
}
