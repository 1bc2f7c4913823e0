import type { Relay } from '../relay.ts';
import { NUMBER, number, piecesOf, type Reading, type Rule, readBy } from './reading.ts';
import { askAbout, type Bare, bareIn, meaningsOf } from './relay-numbers.ts';

const RULES: readonly Rule<Relay>[] = [
  [new RegExp(String.raw`\bf\s*/\s*${NUMBER}`, 'i'), (m) => ({ kind: 'camera-lens', fNumber: number(m[1]) })],
  [
    new RegExp(String.raw`\+\s*${NUMBER}\s*(?:(?:D|dpt|diopt(?:re|er)s?)\b)?|${NUMBER}\s*(?:D|dpt|diopt(?:re|er)s?)\b`, 'i'),
    (m) => ({ powerDioptre: number(m[1] ?? m[2]) }),
  ],
  [new RegExp(String.raw`(?:Ø|⌀|\bclear)\s*${NUMBER}(?:\s*mm\b)?`, 'i'), (m) => ({ clearApertureMm: number(m[1]) })],
  [/(?<![\d.,])M?(\d+(?:\.\d+)?)\s*[x×]\s*(1|0?\.\d+)\b/i, (m) => ({ maleThread: `${m[1]} x ${m[2]}` })],
  [/\bM(\d+(?:\.\d+)?)\b|\bthread\s*(\d+(?:\.\d+)?)(?:\s*mm\b)?/i, (m) => ({ maleThread: `${m[1] ?? m[2]} x 0.75` })],
  [/(?<![\d.,])(\d+(?:\.\d+)?)(?:\s*mm)?\s*thread\b/i, (m) => ({ maleThread: `${m[1]} x 0.75` })],
  [new RegExp(String.raw`\b(?:at|set\s+to)\s+${NUMBER}\s*(?:mm\b)?`, 'i'), (m) => ({ focalLengthMm: number(m[1]) })],
  [
    new RegExp(String.raw`${NUMBER}\s*[-–]\s*${NUMBER}(?:\s*mm\b)?`, 'i'),
    (m) => ({ kind: 'camera-lens', focalLengthRangeMm: [number(m[1]), number(m[2])] }),
  ],
  [/\b(?:close[\s-]?up|supplementary|achromat)(?:\s+(?:achromat|lens))?\b/i, () => ({ kind: 'supplementary' })],
  [/\b(?:(?:camera|macro|enlarger|process)\s?lens|tele(?:photo)?(?:\s+(?:lens|prime))?|zoom|prime)\b/i, () => ({ kind: 'camera-lens' })],
  [/\btube(?:\s?lens)?\b/i, () => ({ kind: 'tube-lens' })],
];

/** `5 D 58 mm` (a close-up lens and its thread), `200 mm f/4` (a camera lens), `tube lens 180 mm Ø 24`, `70-200 at 135 mm f/4`. */
export function readRelay(text: string): Reading<Relay> {
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
