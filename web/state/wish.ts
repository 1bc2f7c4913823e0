import { batch, effect, signal, untracked } from '@preact/signals';
import { z } from 'zod';
import { DEFAULT_FRONTIER, DEFAULT_SORT, DEFAULT_SPACES_MM, type Want, wantSchema } from '../../core/choosing.ts';
import { BOUNDS, type FigureId, type Pairing, type Problem, problemsOf, sensorSchema } from '../../core/index.ts';
import { clausesIn, type Texts, textsFrom, wantFrom } from '../subject/blanks.ts';
import { commit } from './address.ts';
import { answered } from './draft.ts';
import { read, written } from './link.ts';
import { wishText } from './view.ts';
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

/** The wish that is answered: the last one that could be read. */
export const wish = signal<Wish>(startOf(answered.peek().pairing));
/** What stands in the blanks, whatever was typed. */
export const texts = signal<Texts>(textsFrom(wish.peek().want));
/** The further parts of the sentence that stand there, filled in or not. */
export const clauses = signal<readonly string[]>([]);
/** What is wrong with the blanks, once it is said: half-typed input is given time. */
export const wishTold = signal<readonly Problem[]>([]);
/** Why the address's wish could not be read; '' where all is well. */
export const wishFault = signal('');

let problems: readonly Problem[] = [];
/** What the address holds of this page's own making. */
let mine: string | undefined;
const PATIENCE_MS = 800;
let waiting: ReturnType<typeof setTimeout> | undefined;

/** Follows the address, and where it holds no wish the pairing, as long as the view is open. Returns what ends that. */
export function followWish(): () => void {
  mine = undefined;
  const stop = effect(() => {
    const text = wishText.value;
    const { pairing } = text === '' ? answered.value : answered.peek();
    untracked(() => {
      if (text !== mine || text === '') arriveAt(text, pairing);
    });
  });
  return () => {
    clearTimeout(waiting);
    stop();
  };
}

function arriveAt(text: string, pairing: Pairing): void {
  const found = text === '' ? { wish: startOf(pairing) } : wishIn(text);
  const next = found.wish ?? startOf(pairing);
  mine = text;
  clearTimeout(waiting);
  problems = [];
  batch(() => {
    wishFault.value = found.fault ?? '';
    wish.value = next;
    texts.value = textsFrom(next.want);
    clauses.value = clausesIn(texts.peek());
    wishTold.value = [];
  });
}

/** Takes another wish: the address follows at once, and a commit makes it a step of history. */
export function change(part: Partial<Wish>): void {
  const next = { ...wish.peek(), ...part };
  mine = wishTo(next);
  batch(() => {
    wishFault.value = '';
    wish.value = next;
    wishText.value = mine as string;
  });
}

/** The same as one step of history. */
export function choose(part: Partial<Wish>): void {
  change(part);
  commit();
}

/** Types into blanks: the wish follows where it can be read. */
export function type(typed: Texts): void {
  clearTimeout(waiting);
  const next = { ...texts.peek(), ...typed };
  const found = wantFrom(next);
  problems = found.problems ?? [];
  batch(() => {
    texts.value = next;
    if (found.want && JSON.stringify(found.want) !== JSON.stringify(wish.peek().want)) change({ want: found.want });
    wishTold.value = wishTold.peek().flatMap((old) => problems.find(({ path }) => path === old.path) ?? []);
  });
  if (problems.length > 0) waiting = setTimeout(tellWish, PATIENCE_MS);
}

function tellWish(): void {
  clearTimeout(waiting);
  wishTold.value = problems;
}

/** A blank was left, or Enter pressed: what is wrong is said, what was changed is a step of history. */
export function settleWish(): void {
  tellWish();
  commit();
}

/** What is wanted as a whole, as one step of history. */
export function wantThat(want: Want): void {
  batch(() => {
    texts.value = textsFrom(want);
    clauses.value = [...new Set([...clauses.peek(), ...clausesIn(texts.peek())])];
    problems = [];
    wishTold.value = [];
    change({ want });
  });
  commit();
}
