import type { LimitName } from '../../core/choosing.ts';

/** A blank of the wish's sentence: a number that may be filled in. */
export interface Blank {
  /** Where it stands in a wish, as a JSON Pointer. */
  readonly path: string;
  readonly label: string;
  /** Written after it. */
  readonly unit: string;
  /** Told in per cent, kept as a share. */
  readonly percent?: true;
  /** What stands for it where only the blank beside it is filled: the end of its bounds, which asks for nothing. */
  readonly open?: number;
}

/** A part of the sentence. The first ones always stand; the others are put in by their own words and taken out again. */
export interface Clause {
  readonly name: string;
  /** The words that put it in. */
  readonly add?: string;
  readonly words: readonly (string | Blank)[];
}

const blank = (path: string, label: string, unit: string, more: Pick<Blank, 'percent' | 'open'> = {}): Blank => ({
  path,
  label,
  unit,
  ...more,
});
const PERCENT = { percent: true } as const;

/** What the sentence always says. */
export const STANDING: readonly Clause[] = [
  {
    name: 'subject',
    words: [
      'something',
      blank('/subject/widthMm', 'Width of the subject', 'mm'),
      'wide and',
      blank('/subject/heightMm', 'Height of the subject', 'mm'),
      'high,',
      blank('/subject/depthMm', 'Depth of the subject', 'mm'),
      'deep, that fills at least',
      blank('/subject/shareOfFrame', 'Share of the frame that it fills', '%', PERCENT),
      'of the frame, with detail of',
      blank('/finestDetailUm', 'Finest detail told apart', 'µm'),
      'told apart',
    ],
  },
];

/** What may be put in, in the order in which it is told. */
export const FURTHER: readonly Clause[] = [
  {
    name: 'working distance',
    add: 'with room before the lens',
    words: ['with at least', blank('/minWorkingDistanceMm', 'Free before the lens', 'mm'), 'free before the lens'],
  },
  {
    name: 'diffuser',
    add: 'and room for a diffuser',
    words: [
      'and room for a diffuser',
      blank('/lightingClearance/depthMm', 'Depth of the diffuser', 'mm', { open: 0 }),
      'deep and for light up to',
      blank('/lightingClearance/minConeDeg', 'Room for light, above the plane of the subject', '°', { open: 0 }),
      'from its plane',
    ],
  },
  {
    name: 'field',
    add: 'with a field of a given width',
    words: [
      'in a field from',
      blank('/fieldWidthMm/0', 'Field, at least so wide', 'mm', { open: 0.001 }),
      'to',
      blank('/fieldWidthMm/1', 'Field, at most so wide', 'mm', { open: 3000 }),
      'wide',
    ],
  },
  {
    name: 'magnification',
    add: 'at a given magnification',
    words: [
      'magnified from',
      blank('/magnification/0', 'Magnification, at least', '×', { open: 0.01 }),
      'to',
      blank('/magnification/1', 'Magnification, at most', '×', { open: 1000 }),
    ],
  },
  {
    name: 'frame',
    add: 'with the frame covered',
    words: ['with', blank('/minCoveredShare', 'Share of the frame that is covered', '%', PERCENT), 'of the frame covered'],
  },
  {
    name: 'corners',
    add: 'with light in the corners',
    words: [
      'with at least',
      blank('/minCornerIllumination', 'Light left in the corners', '%', PERCENT),
      'of the light left in the corners',
    ],
  },
  {
    name: 'sampling',
    add: 'with pixels that fit the detail',
    words: [
      'on pixels from',
      blank('/samplingRatio/0', 'Oversampling, at least', '×', { open: 0.01 }),
      'to',
      blank('/samplingRatio/1', 'Oversampling, at most', '×', { open: 100 }),
      'as fine as the optics need',
    ],
  },
  {
    name: 'length',
    add: 'with a rig no longer than',
    words: ['on a rig no longer than', blank('/maxLengthMm', 'Greatest length of the rig', 'mm')],
  },
  { name: 'price', add: 'for a price of at most', words: ['for at most', blank('/maxPrice', 'Greatest price', 'in your money')] },
  {
    name: 'cover glass',
    add: 'through a cover glass',
    words: ['through a cover glass of', blank('/coverGlassMm', 'Thickness of the cover glass, 0 for none', 'mm')],
  },
];

const isBlank = (piece: string | Blank): piece is Blank => typeof piece !== 'string';
export const blanksIn = ({ words }: Clause): Blank[] => words.filter(isBlank);
export const BLANKS: readonly Blank[] = [...STANDING, ...FURTHER].flatMap(blanksIn);

/** The blank that sets a limit; the two that no single blank sets hang on the subject's size. */
export const BLANK_OF: Readonly<Record<LimitName | 'price', string>> = {
  subjectFits: '/subject/widthMm',
  subjectFills: '/subject/shareOfFrame',
  subjectCovered: '/subject/widthMm',
  frameCovered: '/minCoveredShare',
  fieldNoNarrower: '/fieldWidthMm/0',
  fieldNoWider: '/fieldWidthMm/1',
  magnificationAtLeast: '/magnification/0',
  magnificationAtMost: '/magnification/1',
  finestDetail: '/finestDetailUm',
  workingDistance: '/minWorkingDistanceMm',
  diffuser: '/lightingClearance/depthMm',
  lightCone: '/lightingClearance/minConeDeg',
  cornerLight: '/minCornerIllumination',
  samplingAtLeast: '/samplingRatio/0',
  samplingAtMost: '/samplingRatio/1',
  length: '/maxLengthMm',
  price: '/maxPrice',
};

/** Limits whose blank is not the limit's own number. */
export const OF_THE_SUBJECT: ReadonlySet<LimitName | 'price'> = new Set(['subjectFits', 'subjectCovered']);
