import type { Objective } from '../objective.ts';
import { joined, NUMBER, number, piecesOf, type Reading, type Rule, readBy } from './reading.ts';

const OIL = 1.518;
const WATER = 1.333;

/** An aperture as it is engraved, never a whole number: 10x 200 tells none. */
const NA = String.raw`([01]?[.,]\d+)`;

/** What may stand after the x of a thread: a pitch in mm, below 2. */
const PITCH = String.raw`([01]?[.,]\d+|1)(?![\d.,])`;
const thread = (m: RegExpMatchArray): Partial<Objective> => ({
  mountThread: `${(m[1] ?? '').toUpperCase()}${number(m[2])} x ${number(m[3])}`,
});

const REFERENCES = ['200', '180', '165', '164.5'] as const;

/** Mounting threads: `M25 x 0.75`, `W26 x 0.706`, `20.32 x 0.706`, `0.8 in x 36 TPI`. No aperture is 0.706, no magnification 20.32. */
const THREADS: readonly Rule<Objective>[] = [
  [
    /(?<![\w.,])(?:RMS\s*\(?\s*)?(M?)(\d+(?:[.,]\d+)?)\s*(in\b|inch\b|″|")?\s*[x×]\s*(\d+)\s*TPI\b\)?/i,
    (m) => ({ mountThread: `${(m[1] ?? '').toUpperCase()}${number(m[2])}${m[3] ? ' in' : ''} x ${m[4]} TPI` }),
  ],
  [new RegExp(String.raw`(?<![\w.,])([MW])(\d+(?:[.,]\d+)?)\s*(?:mm)?\s*[x×]\s*${PITCH}`, 'i'), thread],
  [/(?<![\w.,])([MW]?)\s*(\d+(?:[.,]\d+)?)\s*(?:mm)?\s*[x×]\s*(0?[.,]70[56]\d*)(?![\d.,])/i, thread],
  [new RegExp(String.raw`(?<![\w.,])(M?)\s*([2-9]\d[.,]\d+)\s*(?:mm)?\s*[x×]\s*${PITCH}`, 'i'), thread],
  [new RegExp(String.raw`(?<![\w.,])(M?)\s*(\d\d)\s*mm\s*[x×]\s*${PITCH}`, 'i'), thread],
  [/\bRMS\b/i, (_, { mountThread = 'RMS' }) => ({ mountThread })],
  [/(?<![\w.,])(M\d\d)(?![\w.,])/i, (m) => ({ mountThread: (m[1] ?? '').toUpperCase() })],
];

const RULES: readonly Rule<Objective>[] = [
  [
    new RegExp(String.raw`(?:∞|\binf(?:inity)?\b)\s*/\s*(?:${NUMBER}|[-−–])`, 'i'),
    (m) => (m[1] === undefined ? {} : { coverGlassMm: number(m[1]) }),
  ],
  ...THREADS,
  // Where both are marked as such nothing else is: the rest may be a thread, and `160/0.17` the tube and the cover glass.
  [
    new RegExp(String.raw`${NUMBER}\s*[x×]\s*(?:/\s*(?:NA\s*)?|NA\s*)${NA}`, 'i'),
    (m) => ({ magnification: number(m[1]), na: number(m[2]) }),
  ],
  [new RegExp(String.raw`${NUMBER}\s*/\s*${NA}`, 'i'), (m) => ({ magnification: number(m[1]), na: number(m[2]) })],
  [/(?<![\w.,])(M?)\s*(\d\d)(?:\s+[x×]\s*|[x×])(0?[.,]75|0?[.,]5|1)(?![\d.,])/i, (m, { na }) => (na === undefined ? undefined : thread(m))],
  [new RegExp(String.raw`${NUMBER}\s*[x×]\s*${NA}`, 'i'), (m) => ({ magnification: number(m[1]), na: number(m[2]) })],
  [new RegExp(String.raw`\bNA\s*=?\s*${NA}`, 'i'), (m) => ({ na: number(m[1]) })],
  [new RegExp(String.raw`${NUMBER}\s*[x×](?![\w.])`, 'i'), (m) => ({ magnification: number(m[1]) })],
  [new RegExp(String.raw`\bW\.?D\.?\s*=?\s*${NUMBER}(?:\s*mm)?`, 'i'), (m) => ({ workingDistanceMm: number(m[1]) })],
  [new RegExp(String.raw`\b(?:O?FN|F\.N\.)\s*=?\s*${NUMBER}`, 'i'), (m) => ({ fieldNumberMm: number(m[1]) })],
  [new RegExp(String.raw`\bf(?:_?ref)?\s*=?\s*${NUMBER}(?:\s*mm)?`, 'i'), (m) => ({ referenceFocalLengthMm: number(m[1]) })],
  [/(?<![\w.,])(200|180|165|164[.,]5)\s*(?:mm\b)?(?![\d.,/])/i, (m) => ({ referenceFocalLengthMm: number(m[1]) })],
  [new RegExp(String.raw`\bn\s*=?\s*${NUMBER}`, 'i'), (m) => ({ immersionIndex: number(m[1]) })],
  // An index in figures outranks the word.
  [/\b(?:oil|oel)\b|öl(?!\w)/i, (_, { immersionIndex = OIL }) => ({ immersionIndex })],
  [/\b(?:water|w)\b/i, (_, { immersionIndex = WATER }) => ({ immersionIndex })],
  [/\bsemi-?\s?apo(?:chromat)?\b/i, () => ({ correction: 'semi-apochromat' })],
  [/\b(?:plan\s?)?apo(?:chromat)?\b/i, (m) => ({ correction: 'apochromat', ...(/plan/i.test(m[0]) ? { flatField: true } : {}) })],
  [/\bplan\b/i, () => ({ flatField: true })],
  [/\bachro(?:mat)?\b/i, () => ({ correction: 'achromat' })],
];

/** The mechanical tube that a finite objective is made for, mm, with its cover glass or a dash: `160/0.17`. */
const FINITE = /(?<![\w.,/])(160|170|210)\s*(?:mm\b)?(?:\s*\/\s*(?:\d+(?:[.,]\d+)?|[-−–]))?(?![\d.,/])/i;

/** `10x/0.25 ∞/0.17 200`, with `WD 10.6` and `FN 22` where they are known. */
export function readObjective(text: string): Reading<Objective> {
  const tube = readBy(text, RULES).part.referenceFocalLengthMm === undefined ? text.match(FINITE) : null;
  const { part, rest } = readBy(text, tube ? [[FINITE, () => ({})], ...RULES] : RULES);
  const marked = part.magnification !== undefined && part.na !== undefined;
  const open = part.referenceFocalLengthMm === undefined && !tube;
  const needs = [
    ...(part.magnification === undefined
      ? [part.na === undefined ? 'magnification and aperture, as in 10x/0.25' : 'its magnification, as in 10x/0.25']
      : part.na === undefined
        ? [`its aperture, as in ${part.magnification}x/0.25`]
        : []),
    ...(tube ? [`an objective corrected for infinity (∞): ${tube[1]} marks one for a tube of ${tube[1]} mm, which needs no relay`] : []),
    ...(open && !marked ? ['the tube lens that the engraving is for, as in 10x/0.25 200'] : []),
  ];
  const asks = open && marked ? [{ question: `the tube lens that the engraving is for: ${listed}`, answers: forTubeLens(text, rest) }] : [];
  return { part, unread: piecesOf(rest), needs, asks };
}

const listed = `${REFERENCES.slice(0, -1).join(', ')} or ${REFERENCES.at(-1)}`;

/** The line with each of the usual tube lenses; a number that was begun is finished. */
function forTubeLens(text: string, rest: string) {
  const last = piecesOf(rest).at(-1) ?? '';
  const begun = last !== '' && text.trimEnd().endsWith(last);
  return REFERENCES.map((f) => ({
    words: `${f} mm`,
    text: joined(begun && f.startsWith(last) ? text.trimEnd().slice(0, -last.length) : text, `f ${f}`),
  }));
}
