import type { Objective } from './objective.ts';
import type { Relay } from './relay.ts';
import type { Sensor } from './sensor.ts';

/**
 * Parts typed as they are engraved. Reads what is there, names what it could not read and what is
 * still needed, and guesses nothing.
 */
export interface Reading<Part> {
  part: Partial<Part>;
  /** Pieces of the text that mean nothing here. */
  unread: string[];
  /** What the part still needs, in words; empty when it is whole. */
  needs: string[];
}

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`;
const number = (text: string | undefined): number => Number((text ?? '').replace(',', '.'));

type Rule<Part> = readonly [pattern: RegExp, read: (match: RegExpMatchArray) => Partial<Part>];

/** Takes the rules in turn out of the text; what is left over is unread. */
function readBy<Part>(text: string, rules: readonly Rule<Part>[]): { part: Partial<Part>; unread: string[] } {
  let rest = ` ${text.trim()} `;
  let part: Partial<Part> = {};
  for (const [pattern, read] of rules) {
    const match = rest.match(pattern);
    if (!match) continue;
    part = { ...part, ...read(match) };
    rest = rest.replace(match[0], '  ');
  }
  return { part, unread: rest.split(/[\s,;]+/).filter(Boolean) };
}

const OIL = 1.518;
const WATER = 1.333;

const OBJECTIVE: readonly Rule<Objective>[] = [
  [
    new RegExp(String.raw`(?:∞|\binf(?:inity)?\b)\s*/\s*(?:${NUMBER}|[-−–])`, 'i'),
    (m) => (m[1] === undefined ? {} : { coverGlassMm: number(m[1]) }),
  ],
  [new RegExp(String.raw`${NUMBER}\s*[x×]\s*[/\s]\s*(?:NA\s*)?${NUMBER}`, 'i'), (m) => ({ magnification: number(m[1]), na: number(m[2]) })],
  [new RegExp(String.raw`\b(?:W\.?D\.?)\s*=?\s*${NUMBER}(?:\s*mm)?`, 'i'), (m) => ({ workingDistanceMm: number(m[1]) })],
  [new RegExp(String.raw`\b(?:O?FN|F\.N\.)\s*=?\s*${NUMBER}`, 'i'), (m) => ({ fieldNumberMm: number(m[1]) })],
  [new RegExp(String.raw`\bf(?:_?ref)?\s*=?\s*${NUMBER}(?:\s*mm)?`, 'i'), (m) => ({ referenceFocalLengthMm: number(m[1]) })],
  [/\b(200|180|165|164[.,]5)\s*(?:mm)?\b/, (m) => ({ referenceFocalLengthMm: number(m[1]) })],
  [/\b(?:oil|oel|öl)\b/i, () => ({ immersionIndex: OIL })],
  [/\b(?:water|w)\b/i, () => ({ immersionIndex: WATER })],
  [/\bsemi-?\s?apo(?:chromat)?\b/i, () => ({ correction: 'semi-apochromat' })],
  [/\b(?:plan\s?)?apo(?:chromat)?\b/i, (m) => ({ correction: 'apochromat', ...(/plan/i.test(m[0]) ? { flatField: true } : {}) })],
  [/\bplan\b/i, () => ({ flatField: true })],
  [/\bachro(?:mat)?\b/i, () => ({ correction: 'achromat' })],
];

/** `10x/0.25 ∞/0.17 200`, with `WD 10.6` and `FN 22` where they are known. */
export function readObjective(text: string): Reading<Objective> {
  const { part, unread } = readBy(text, OBJECTIVE);
  const needs = [
    ...(part.magnification === undefined ? ['magnification and aperture, as in 10x/0.25'] : []),
    ...(part.referenceFocalLengthMm === undefined ? ['the tube lens that the engraving is for: add 200, 180, 165 or 164.5'] : []),
  ];
  return { part, unread, needs };
}

const RELAY: readonly Rule<Relay>[] = [
  [new RegExp(String.raw`\bf\s*/\s*${NUMBER}`, 'i'), (m) => ({ kind: 'camera-lens', fNumber: number(m[1]) })],
  [new RegExp(String.raw`\+?${NUMBER}\s*(?:D|dpt|dioptres?)\b`, 'i'), (m) => ({ kind: 'supplementary', powerDioptre: number(m[1]) })],
  [new RegExp(String.raw`(?:Ø|⌀|\bclear)\s*${NUMBER}(?:\s*mm)?`, 'i'), (m) => ({ clearApertureMm: number(m[1]) })],
  [/\bM?(\d+(?:\.\d+)?)\s*[x×]\s*(1|0?\.\d+)\b/i, (m) => ({ maleThread: `${m[1]} x ${m[2]}` })],
  [/\btube(?:\s?lens)?\b/i, () => ({ kind: 'tube-lens' })],
];

/** `5 D 58 mm` (a close-up lens and its thread), `200 mm f/4` (a camera lens), `tube lens 180 mm Ø 24`. */
export function readRelay(text: string): Reading<Relay> {
  const first = readBy(text, RELAY);
  // What a bare length means depends on what else is there: beside dioptres it is the thread.
  const byPower = first.part.powerDioptre !== undefined;
  const length: Rule<Relay> = [
    new RegExp(String.raw`\b(?:f\s*=?\s*)?${NUMBER}\s*(?:mm)?(?=\s)`, 'i'),
    (m) => (byPower ? { maleThread: `${number(m[1])} x 0.75` } : { focalLengthMm: number(m[1]) }),
  ];
  const { part, unread } = readBy(text, [...RELAY, length]);
  return {
    part: { kind: 'supplementary', ...part },
    unread,
    needs:
      part.powerDioptre === undefined && part.focalLengthMm === undefined
        ? ['a power or a focal length, as in 5 D 58 mm or 200 mm f/4']
        : [],
  };
}

const SENSOR: readonly Rule<Sensor>[] = [
  [new RegExp(String.raw`${NUMBER}\s*(?:µm|μm|um)`, 'i'), (m) => ({ pixelPitchUm: number(m[1]) })],
  [/\b(\d{3,6})\s*[x×]\s*(\d{3,6})\b/, (m) => ({ columns: number(m[1]), rows: number(m[2]) })],
  [new RegExp(String.raw`${NUMBER}\s*[x×]\s*${NUMBER}(?:\s*mm)?`, 'i'), (m) => ({ widthMm: number(m[1]), heightMm: number(m[2]) })],
  [new RegExp(String.raw`\b${NUMBER}(?=\s)`), (m) => ({ pixelPitchUm: number(m[1]) })],
];

/** `36 x 24 mm 4.35 µm`, or with the pixels counted, `36 x 24 8256 x 5504`. */
export function readSensor(text: string): Reading<Sensor> {
  const { part, unread } = readBy(text, SENSOR);
  const needs = [
    ...(part.widthMm === undefined ? ['width and height, as in 36 x 24'] : []),
    ...(part.pixelPitchUm === undefined && part.columns === undefined
      ? ['a pixel pitch such as 4.35 µm, or pixels such as 8256 x 5504']
      : []),
  ];
  return { part, unread, needs };
}
