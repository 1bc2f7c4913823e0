import type { Relay, RelayKind } from '../relay.ts';
import { NUMBER, number, piecesOf, type Reading, type Rule, readBy } from './reading.ts';
import { askAbout, type Bare, bareIn, FASTEST, meaningsOf, SHORTEST_AT_ALL_MM, SLOWEST } from './relay-numbers.ts';

/** Before anything else: what is said in words outranks what numbers make likely. */
const WORDS: readonly Rule<Relay>[] = [
  [/\b(?:close[\s-]?up|supplementary)(?:\s+(?:achromat|lens))?\b/i, () => ({ kind: 'supplementary' })],
  [/\btube(?:\s?lens)?\b/i, () => ({ kind: 'tube-lens' })],
  [/\b(?:(?:camera|macro|enlarger|process)\s?lens|tele(?:photo)?(?:\s+(?:lens|prime))?|zoom|prime)\b/i, () => ({ kind: 'camera-lens' })],
  [/\bachromat(?:\s+lens)?\b/i, (_, { kind = 'supplementary' }) => ({ kind })],
];

/** `135/3.5`, as older lenses are written: the focal length over the f-number. */
const lengthOverStop = (length: string | undefined, stop: string | undefined, kind: RelayKind): Partial<Relay> | undefined => {
  const [focalLengthMm, fNumber] = [number(length), number(stop)];
  const likely =
    kind !== 'supplementary' && fNumber >= FASTEST && fNumber <= SLOWEST && focalLengthMm >= SHORTEST_AT_ALL_MM && focalLengthMm > fNumber;
  return likely ? { kind, focalLengthMm, fNumber } : undefined;
};

const RULES: readonly Rule<Relay>[] = [
  ...WORDS,
  [
    /(?<![\w.,/:+−–-])(?:f\s*=?\s*)?(1\s*:\s*)?(\d+(?:[.,]\d+)?)\s*(?:mm)?\s*\/\s*(\d+(?:[.,]\d+)?)(?:\s*mm\b)?(?![\w.,/])/i,
    (m, { kind = 'camera-lens' }) => (m[1] ? lengthOverStop(m[3], m[2], kind) : lengthOverStop(m[2], m[3], kind)),
  ],
  [
    new RegExp(String.raw`(?:\bf\s*/|(?<![\w.,/:])1\s*:)\s*${NUMBER}`, 'i'),
    (m, { kind = 'camera-lens' }) => ({ kind, fNumber: number(m[1]) }),
  ],
  [
    new RegExp(String.raw`\+\s*${NUMBER}\s*(?:(?:D|dpt|diopt(?:re|er)s?)\b)?|(?<![\w−–-])${NUMBER}\s*(?:D|dpt|diopt(?:re|er)s?)\b`, 'i'),
    (m) => ({ powerDioptre: number(m[1] ?? m[2]) }),
  ],
  [new RegExp(String.raw`(?:Ø|⌀|\bclear)\s*${NUMBER}(?:\s*mm\b)?`, 'i'), (m) => ({ clearApertureMm: number(m[1]) })],
  [/(?<![\d.,])M?(\d+(?:\.\d+)?)\s*[x×]\s*(1|0?\.\d+)\b/i, (m) => ({ maleThread: `${m[1]} x ${m[2]}` })],
  [/\bM(\d+(?:\.\d+)?)\b|\bthread\s*(\d+(?:\.\d+)?)(?:\s*mm\b)?/i, (m) => ({ maleThread: `${m[1] ?? m[2]} x 0.75` })],
  [/(?<![\d.,])(\d+(?:\.\d+)?)(?:\s*mm)?\s*thread\b/i, (m) => ({ maleThread: `${m[1]} x 0.75` })],
  [new RegExp(String.raw`\b(?:at|set\s+to)\s+${NUMBER}\s*(?:mm\b)?`, 'i'), (m) => ({ focalLengthMm: number(m[1]) })],
  [
    new RegExp(String.raw`${NUMBER}\s*[-–]\s*${NUMBER}(?:\s*mm\b)?(?:\s*/\s*${NUMBER}(?![\w.,/–-]))?`, 'i'),
    (m, { kind = 'camera-lens' }) =>
      number(m[1]) < number(m[2])
        ? { kind, focalLengthRangeMm: [number(m[1]), number(m[2])], ...(m[3] ? { fNumber: number(m[3]) } : {}) }
        : undefined,
  ],
];

/** `-5 D`, its minus close before it or at the beginning of the line; elsewhere a dash between blanks parts two things. */
const NEGATIVE =
  /^\s*[-−–]\s*[.,]?\d[\d.,]*(?:\s*(?:D|dpt|diopt(?:re|er)s?|mm)\b)?|(?<=[\s,;(+])[-−–][.,]?\d[\d.,]*\s*(?:D|dpt|diopt(?:re|er)s?)\b/i;

const minus = (typed: string): string => typed.trim().replace(/^[-−–]\s*/, '−');

/** `5 D 58 mm` (a close-up lens and its thread), `200 mm f/4` (a camera lens), `tube lens 180 mm Ø 24`, `70-200 at 135 mm f/4`. */
export function readRelay(text: string): Reading<Relay> {
  const [negative] = text.match(NEGATIVE) ?? [];
  if (negative) return { part: {}, unread: [], needs: [`a lens that gathers light: one of ${minus(negative)} spreads it`], asks: [] };
  const { part: told, rest: after } = readBy(text, RULES);
  const { numbers, rest } = bareIn(after);
  const { used, meanings } = meaningsOf(told, numbers);
  const [only] = meanings;
  const part = { ...told, ...(meanings.length === 1 ? only?.part : {}) };
  if (part.kind === undefined && part.powerDioptre !== undefined) part.kind = 'supplementary';
  // A camera lens takes filters into its thread.
  if (part.kind === 'camera-lens' && part.maleThread !== undefined) {
    part.femaleThread = part.maleThread;
    delete part.maleThread;
  }
  const asks = meanings.length > 1 ? [askAbout(text, used, meanings)] : zoomAsk(text, part);
  asks.push(...acrossAsk(text, part));
  const lengthKnown = part.powerDioptre !== undefined || part.focalLengthMm !== undefined;
  if (asks.length === 0 && lengthKnown && part.kind === undefined) asks.push(askAbout(text, [], kindsOf(part)));
  return {
    part,
    unread: [...piecesOf(rest), ...numbers.filter((n) => !used.includes(n)).map((n: Bare) => n.typed)],
    needs: lengthKnown || asks.length > 0 ? [] : ['a power or a focal length, as in 5 D 58 mm or 200 mm f/4'],
    asks,
  };
}

const KINDS = [
  ['close-up', 'a close-up lens'],
  ['camera lens', 'a camera lens'],
  ['tube lens', 'a tube lens'],
] as const;

const kindsOf = ({ focalLengthMm }: Partial<Relay>) =>
  KINDS.map(([text, words]) => ({ words: `${focalLengthMm} mm: ${words}`, text, part: {} }));

/** A zoom is used at one focal length. */
function zoomAsk(text: string, { focalLengthRangeMm: range, focalLengthMm }: Partial<Relay>) {
  if (!range || focalLengthMm !== undefined) return [];
  const answers = range.map((f) => ({ words: `set to ${f} mm`, text: `${text.trim()} at ${f} mm` }));
  return [{ question: 'the focal length that the zoom is set to', answers }];
}

/** Filter threads as they are made, mm. */
const THREADS = [37, 39, 40.5, 43, 46, 49, 52, 55, 58, 62, 67, 72, 77, 82, 86, 95, 105, 112];
const ACROSS = new RegExp(String.raw`[Ø⌀]\s*${NUMBER}(?:\s*mm\b)?`);

/** Beside f-number or dioptres `Ø 58` marks the thread, in a list of lenses what is clear: asked, and taken out of the part. */
function acrossAsk(text: string, part: Partial<Relay>) {
  const [typed, digits] = text.match(ACROSS) ?? [];
  const across = number(digits);
  const threaded = part.maleThread !== undefined || part.femaleThread !== undefined;
  if (!typed || threaded || part.kind === 'tube-lens' || !THREADS.includes(across)) return [];
  delete part.clearApertureMm;
  const answers = [
    { words: `${across} mm: its thread`, text: text.replace(typed, `${across} x 0.75`).trim() },
    { words: `${across} mm: its clear opening`, text: text.replace(typed, `clear ${across}`).trim() },
  ];
  return [{ question: `what ‘${typed}’ is`, answers }];
}
