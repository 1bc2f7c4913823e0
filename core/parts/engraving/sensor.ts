import { amount, type QuantityInput } from '../quantity.ts';
import type { Sensor } from '../sensor.ts';
import { type Ask, blanked, joined, NUMBER, number, piecesOf, type Reading, type Rule, readBy } from './reading.ts';

type Size = readonly [widthMm: number, heightMm: number];

/** Names of formats as the trade uses them, and their sizes: common practice, without a source. Some names stand for two. */
const FORMATS: readonly (readonly [RegExp, readonly Size[]])[] = [
  [/\bmedium[\s-]format\b/i, [[43.8, 32.9], [53.4, 40]]], // biome-ignore format: sizes in a row
  [/\bfull[\s-]?frame\b/i, [[36, 24]]],
  [/\bAPS-?C\b/i, [[23.5, 15.6], [22.3, 14.9]]], // biome-ignore format: sizes in a row
  [/\bfour[\s-]thirds(?:\s+type)?\b/i, [[17.3, 13]]],
  [/(?<![\d/.,])1[\s-]?(?:inch|in\b|″|")(?:[\s-]type\b)?/i, [[13.2, 8.8]]],
  [/(?<![\d/.,])2\/3[\s-]?(?:inch|in\b|″|")(?:[\s-]type\b)?/i, [[8.8, 6.6]]],
];

interface Told extends Sensor {
  /** Millions of pixels, and half a unit of the last digit told. */
  megapixels?: readonly [count: number, half: number];
}

const megapixels = (text: string): Pick<Told, 'megapixels'> => {
  const digits = text.split(/[.,]/)[1]?.length ?? 0;
  return { megapixels: [number(text), 0.5 * 10 ** -digits] };
};

const UM = String.raw`\s*(?:µm|μm|um\b)`;

const RULES: readonly Rule<Told>[] = [
  // A pixel as wide as high. Micrometres beside the second side of anything else say neither a pitch nor a size.
  [
    new RegExp(String.raw`${NUMBER}(?:${UM})?\s*[x×]\s*${NUMBER}${UM}`, 'i'),
    (m) => (number(m[1]) === number(m[2]) ? { pixelPitchUm: number(m[1]) } : undefined),
  ],
  [new RegExp(String.raw`(?<![x×]\s*)${NUMBER}${UM}(?!\s*[x×])`, 'i'), (m) => ({ pixelPitchUm: number(m[1]) })],
  [new RegExp(String.raw`${NUMBER}\s*(?:MP|Mpx|Mpix|megapixels?)\b`, 'i'), (m) => megapixels(m[1] ?? '')],
  [/(?<![\d.,])(\d{3,6})\s*[x×]\s*(\d{3,6})(?![\d.,])/i, (m) => ({ columns: number(m[1]), rows: number(m[2]) })],
  [
    new RegExp(
      String.raw`(?<!\d\s*(?:[mµμu]m)?\s*[x×]\s*)${NUMBER}\s*(?:mm)?\s*[x×]\s*${NUMBER}(?!\d|[.,]\d|${UM}|\s*[x×])(?:\s*mm\b)?`,
      'i',
    ),
    (m) => ({ widthMm: number(m[1]), heightMm: number(m[2]) }),
  ],
  [/\bmono(?:chrome)?\b/i, () => ({ colourFilter: false })],
];

/** Two bare numbers are the sides of the picture where it could have such sides. */
const SIDES: Rule<Told> = [
  new RegExp(String.raw`${NUMBER}\s*(?:mm)?[\s,;]+${NUMBER}(?:\s*mm\b)?(?![\w.])`, 'i'),
  (m) => ({ widthMm: number(m[1]), heightMm: number(m[2]) }),
];
const THREE = new RegExp(String.raw`${NUMBER}\s*(?:mm)?[\s,;]+${NUMBER}\s*(?:mm)?[\s,;]+${NUMBER}(?:\s*mm\b)?(?![\w.])`, 'i');
/** Width over height of pictures. */
const SHAPES = [1.1, 1.9] as const;
const areSides = (text: string): boolean => {
  const { widthMm, heightMm } = readBy(text, [SIDES]).part;
  const [, , second, third] = text.match(THREE) ?? [];
  // Three numbers whose last two could be the sides as well as the first two tell neither.
  const shape = number(second) / number(third);
  if (shape >= SHAPES[0] && shape <= SHAPES[1]) return false;
  return widthMm !== undefined && heightMm !== undefined && amount(heightMm) >= 2 && amount(widthMm) / amount(heightMm) < 3;
};

/**
 * Beside its size a whole number up to this may be a pitch in µm or millions of pixels. With decimals it is a
 * pitch up to the fewest millions that are told so, millions of pixels above the coarsest pitch: common practice, without a source.
 */
const COARSEST_WHOLE_UM = 30;
const FEWEST_MP = 10;
const COARSEST_UM = 12;
const BARE = /(?<=^|[\s,;])(?<![x×]\s*)(\d+(?:[.,]\d+)?|[.,]\d+)(?=[\s,;]|$)(?!\s*[x×])/i;

/** `36 x 24 mm 4.35 µm`, with the pixels counted, `36 x 24 8256 x 5504`, or `full frame 24 MP`. */
export function readSensor(text: string): Reading<Sensor> {
  const first = readBy(text, RULES);
  let { megapixels: count, ...part } = first.part;
  let { rest } = first;
  const asks: Ask[] = [];

  const format = part.widthMm === undefined ? FORMATS.find(([pattern]) => pattern.test(rest)) : undefined;
  if (format) {
    const [pattern, sizes] = format;
    const [name = ''] = rest.match(pattern) ?? [];
    const at = rest.search(pattern);
    const words = ([w, h]: Size): string => `${w} x ${h} mm`;
    const [only] = sizes;
    if (only && sizes.length === 1) part = { ...part, widthMm: only[0], heightMm: only[1] };
    // In front, where no number before it is taken for one of its sides.
    else
      asks.push({
        question: `which size of ${name} it is`,
        answers: sizes.map((size) => ({ words: words(size), text: joined(words(size), text.slice(0, at), text.slice(at + name.length)) })),
      });
    rest = blanked(rest, at, name.length);
  }
  const sized = part.widthMm !== undefined || asks.length > 0;
  if (!sized && areSides(rest)) {
    const sides = readBy(rest, [SIDES]);
    part = { ...part, ...sides.part };
    rest = sides.rest;
  }

  const bare = rest.match(BARE);
  if (bare?.index !== undefined && count === undefined) {
    const [typed] = bare;
    const counted = part.pixelPitchUm !== undefined || part.columns !== undefined;
    const as = (unit: string): string =>
      joined(text.slice(0, bare.index), `${typed} ${unit}`, text.slice((bare.index ?? 0) + typed.length));
    const value = number(typed);
    const knows = part.widthMm !== undefined;
    const whole = Number.isInteger(value);
    const many = value > (whole ? COARSEST_WHOLE_UM : COARSEST_UM);
    if (counted) count = many ? megapixels(typed).megapixels : undefined;
    else if (!whole && value < FEWEST_MP) part = { ...part, pixelPitchUm: value };
    else if (many && (knows || !whole)) count = megapixels(typed).megapixels;
    else if (knows)
      asks.push({
        question: `what ‘${typed}’ is`,
        answers: [
          { words: `${typed} µm: the pixel pitch`, text: as('µm') },
          { words: `${typed} MP: millions of pixels`, text: as('MP') },
        ],
      });
    if (counted ? count : knows || part.pixelPitchUm !== undefined || count) rest = blanked(rest, bare.index, typed.length);
  }

  const unread = piecesOf(rest);
  const pitch = count && pitchOf(part, count);
  const open = part.pixelPitchUm === undefined && part.columns === undefined;
  if (open && pitch) part = { ...part, pixelPitchUm: pitch };
  else if (pitch && count && differs(part, amount(pitch))) unread.push(`${count[0]} MP`);
  const needs = [
    ...(part.widthMm === undefined && asks.length === 0 ? ['width and height, as in 36 x 24'] : []),
    ...(open && count === undefined && !asks.some(({ question }) => question.startsWith('what'))
      ? ['a pixel pitch such as 4.35 µm, or how many pixels, such as 45 MP']
      : []),
  ];
  return { part, unread, needs, asks };
}

/** How far from the true sides those of a format are told, as a share: common practice. */
const LOOSE_SIDES = 0.01;

/** The pitch that so many pixels have on the picture's area: as loose as their number is rounded and its sides are told. */
function pitchOf({ widthMm, heightMm }: Partial<Sensor>, [count, half]: readonly [number, number]): QuantityInput | undefined {
  if (widthMm === undefined || heightMm === undefined || count === 0) return undefined;
  const um = Math.sqrt((amount(widthMm) * amount(heightMm)) / count);
  const loose = half / count / 2 + LOOSE_SIDES;
  return { value: Number(um.toPrecision(3)), plusMinus: Number((um * loose).toPrecision(2)), origin: 'marked' };
}

const ROUNDED = 0.05;
const differs = ({ pixelPitchUm, widthMm, columns }: Partial<Sensor>, um: number): boolean => {
  const said = pixelPitchUm !== undefined ? amount(pixelPitchUm) : (1000 * amount(widthMm ?? 0)) / (columns ?? 1);
  return Math.abs(said / um - 1) > ROUNDED;
};
