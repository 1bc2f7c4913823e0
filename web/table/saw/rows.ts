import { type Problem, problemsOf } from '../../../core/index.ts';
import { type Sighting, type SightingKind, sawSchema } from '../../../core/table.ts';
import { numberTyped } from '../../state/json.ts';

/** A sighting as it is typed: whatever stands in its blanks. */
export interface Row {
  readonly kind: SightingKind;
  readonly texts: Readonly<Record<string, string>>;
}

/** A number to be filled in in the middle of a sentence. */
export interface Gap {
  readonly key: string;
  readonly label: string;
  /** May stay empty. */
  readonly free?: true;
}

/** One of several ways to go on, in words. */
export interface Pick {
  readonly pick: string;
  readonly label: string;
  readonly ways: readonly (readonly [value: string, words: string])[];
}

export type Piece = string | Gap | Pick;

const SPACE: readonly Piece[] = [' The infinity space was ', { key: 'space', label: 'Infinity space then, in mm', free: true }, ' mm.'];

const GIVES: readonly Piece[] = [
  ' It tells of ',
  {
    pick: 'gives',
    label: 'Which number the magnification is to tell',
    ways: [
      ['', 'relay or objective, the less sure'],
      ['relay', 'the relay'],
      ['objective', 'the objective'],
    ],
  },
  '.',
];

/** What each way to read a wall is told in. */
const WALL_UNITS: Record<string, string> = {
  cornerLossEv: 'stops than the middle',
  cornerShare: "of the middle's light",
  onsetRadiusMm: 'mm from the middle, on the sensor',
  halfRadiusMm: 'mm from the middle, on the sensor',
};

const pm = (key: string, label: string): Gap => ({ key, label: `± of ${label}` });

/** The sentence of a row, piece by piece. */
export function sentenceOf({ kind, texts }: Row): readonly Piece[] {
  switch (kind) {
    case 'ruler':
      return [
        'Across the picture I see ',
        { key: 'across', label: 'Ruler across the picture, in mm' },
        ' ± ',
        pm('acrossPm', 'the ruler across the picture, in mm'),
        ' mm of the ruler.',
        ...GIVES,
      ];
    case 'micrometer':
      return [
        { key: 'divisions', label: 'Divisions of the stage micrometer' },
        ' divisions of ',
        { key: 'division', label: 'One division, in µm' },
        ' µm take ',
        { key: 'pixels', label: 'Pixels that they take' },
        ' ± ',
        pm('pixelsPm', 'the pixels'),
        ' pixels.',
        ...GIVES,
      ];
    case 'wall':
      return [
        'On an even wall ',
        {
          pick: 'reading',
          label: 'What is seen of the wall',
          ways: [
            ['halfRadiusMm', 'half of the light is left at'],
            ['cornerLossEv', 'the corner is darker by'],
            ['cornerShare', 'the corner keeps a share of'],
            ['onsetRadiusMm', 'the light begins to fall at'],
          ],
        },
        ' ',
        { key: 'read', label: 'What is read of the wall' },
        ' ± ',
        pm('readPm', 'what is read of the wall'),
        ` ${WALL_UNITS[texts.reading || 'halfRadiusMm'] ?? ''}.`,
        ...SPACE,
      ];
    case 'far':
      return [
        'Alone, the relay casts the sharp picture of a thing ',
        { key: 'thing', label: 'Distance of the far thing, in m' },
        ' m away ',
        { key: 'image', label: 'Distance of its picture, in mm' },
        ' ± ',
        pm('imagePm', 'the distance of its picture, in mm'),
        ' mm behind its own middle.',
      ];
    case 'extensions':
      return [
        'Alone on the camera, the relay shows ',
        { key: 'first', label: 'Ruler across the picture at the shorter extension, in mm' },
        ' ± ',
        pm('firstPm', 'the ruler at the shorter extension, in mm'),
        ' mm of the ruler, and with ',
        { key: 'apart', label: 'Further extension, in mm' },
        ' mm more of extension ',
        { key: 'second', label: 'Ruler across the picture at the longer extension, in mm' },
        ' ± ',
        pm('secondPm', 'the ruler at the longer extension, in mm'),
        ' mm.',
      ];
  }
}

/** What is said beside a row: how it is read. */
export const HINTS: Record<SightingKind, string> = {
  ruler:
    "A ruler's lines, or the rows of a phone's screen, across the whole width of the picture. The ± is how far off the reading surely is not.",
  micrometer: 'Count between the same edges of two lines, as far apart as the picture allows.',
  wall: 'Raw and linear, with every correction of shading off, at the lens as it will be used. Distances are pixels from the middle times the pixel pitch. Where no space is told it is the one of the pairing. Where light begins to fall is seen late: give it a wide ±.',
  far: 'Without the objective. Never the sun, a lamp or a laser: a lens burns and blinds. Measure to the middle of the glass and let the ± hold how well that is known.',
  extensions:
    'The relay alone in front of the camera, the ruler refocused each time by moving it. Which kind of tubes they are does not matter, only by how much they differ.',
};

export const isGap = (piece: Piece): piece is Gap => typeof piece === 'object' && 'key' in piece;

export type Read =
  | { sighting: Sighting; problems?: undefined; blank?: undefined }
  | { problems: readonly Problem[]; sighting?: undefined; blank?: undefined }
  | { blank: true; sighting?: undefined; problems?: undefined };

/** A row as a sighting, what is wrong with it, or that it is not filled in yet. */
export function readRow(row: Row): Read {
  const { texts } = row;
  if (sentenceOf(row).some((piece) => isGap(piece) && !piece.free && !texts[piece.key]?.trim())) return { blank: true };
  const candidate = candidateOf(row);
  const parsed = sawSchema.safeParse({ sightings: [candidate] });
  return parsed.success
    ? { sighting: parsed.data.sightings[0] as Sighting }
    : { problems: problemsOf(parsed.error, { sightings: [candidate] }).slice(0, 1) };
}

function candidateOf({ kind, texts }: Row): object {
  const n = (key: string): unknown => numberTyped(texts[key] ?? '');
  const q = (key: string): object => ({ value: n(key), plusMinus: n(`${key}Pm`) });
  const given = (name: string, value: unknown): object => (value === undefined || value === '' ? {} : { [name]: value });
  switch (kind) {
    case 'ruler':
      return { kind, acrossMm: q('across'), ...given('gives', texts.gives) };
    case 'micrometer':
      return { kind, divisions: n('divisions'), divisionUm: n('division'), pixels: q('pixels'), ...given('gives', texts.gives) };
    case 'wall':
      return { kind, [texts.reading || 'halfRadiusMm']: q('read'), ...given('infinitySpaceMm', n('space')) };
    case 'far': {
      const metres = n('thing');
      return { kind, imageMm: q('image'), thingMm: typeof metres === 'number' ? 1000 * metres : metres };
    }
    case 'extensions':
      return { kind, firstAcrossMm: q('first'), secondAcrossMm: q('second'), apartMm: n('apart') };
  }
}

/** The rows that one may add, as they are offered. */
export const OFFERED: Record<SightingKind, string> = {
  ruler: 'a ruler',
  micrometer: 'a stage micrometer',
  wall: 'an even wall',
  far: 'a far thing, through the relay alone',
  extensions: 'a ruler at two extensions, through the relay alone',
};
