import { z } from 'zod';
import { DEFAULT_FRONTIER, DEFAULT_SORT, DEFAULT_SPACES_MM, wantSchema } from '../../core/choosing.ts';
import { BOUNDS, type FigureId, type Pairing, problemsOf, sensorSchema } from '../../core/index.ts';
import { read, written } from './link.ts';
import { said } from './words.ts';

/** The figures of which a frontier may be drawn, in the order in which they are offered. */
export const AXES = [
  'resolvedDetailUm',
  'goodFieldMm',
  'objectFieldWidthMm',
  'coveredShare',
  'cornerIllumination',
  'recordedDetailMegapixels',
  'workingFNumber',
  'depthOfFieldUm',
  'framesForSubject',
  'clearWorkingDistanceMm',
  'lightConeDeg',
  'totalLengthMm',
] as const satisfies readonly FigureId[];

/** By what the list may be sorted. */
export const SORTS = [...AXES, 'systemMagnification', 'subjectFill', 'samplingRatio', 'price'] as const satisfies readonly (
  | FigureId
  | 'price'
)[];

/** From where objectives or relays are taken. */
export const FROM = ['all', 'owned', 'pairing'] as const;
export type From = (typeof FROM)[number];

export const MOST_SPACES = 8;
const [NEAREST, FARTHEST] = BOUNDS.infinitySpaceMm;
export const spacesSchema = z.array(z.number().min(NEAREST).max(FARTHEST)).min(1).max(MOST_SPACES);

const wishSchema = z.strictObject({
  want: wantSchema,
  /** The camera; the pairing's where it is left out. */
  sensor: sensorSchema.optional(),
  objectives: z.enum(FROM),
  relays: z.enum(FROM),
  infinitySpacesMm: spacesSchema,
  sort: z.strictObject({ by: z.enum(SORTS), first: z.enum(['least', 'greatest']) }),
  frontier: z
    .array(z.enum(AXES))
    .min(2)
    .max(3)
    .refine((ids) => new Set(ids).size === ids.length, { message: 'must be different figures' }),
});

/** What is wished for, from which parts, and how it is told. */
export type Wish = z.infer<typeof wishSchema>;

/** What a pairing is made for: its own subject, before its own camera, all else open. */
export const startOf = ({ subject }: Pairing): Wish => {
  const { widthMm, heightMm, depthMm } = subject ?? {};
  const [width, height] = [widthMm ?? heightMm, heightMm];
  return {
    want:
      width === undefined
        ? {}
        : {
            subject: {
              widthMm: width,
              ...(height === undefined ? {} : { heightMm: height }),
              ...(depthMm === undefined ? {} : { depthMm }),
            },
          },
    objectives: 'all',
    relays: 'all',
    infinitySpacesMm: [...DEFAULT_SPACES_MM],
    sort: { ...DEFAULT_SORT, by: 'resolvedDetailUm' },
    frontier: [...DEFAULT_FRONTIER],
  };
};

/** `1.` and the wish as JSON in base64url: version 1 of what the address holds. */
const MARK = '1.';
/** Far more than a wish with everything in it. */
const LONGEST = 12_000;

export const wishTo = (wish: Wish): string => MARK + written(wish);

/** What an address holds, or in words why it holds no wish. Anybody may have written it. Never throws. */
export function wishIn(text: string): { wish: Wish; fault?: undefined } | { fault: string; wish?: undefined } {
  if (!text.startsWith(MARK)) return { fault: /^\d+\./.test(text) ? 'it comes from another version of this page' : 'it holds none' };
  if (text.length > LONGEST) return { fault: 'it is far too long' };
  try {
    const held = read(text.slice(MARK.length));
    const parsed = wishSchema.safeParse(held);
    if (parsed.success) return { wish: parsed.data };
    const first = problemsOf(parsed.error, held)[0];
    return { fault: first ? said({ ...first, path: first.path.replace(/^\/want/, '') }).replace(/\.$/, '') : 'what it holds is no wish' };
  } catch {
    return { fault: 'it is cut short or damaged' };
  }
}
