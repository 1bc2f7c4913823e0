import type { Circle } from '../pairing/image-circles.ts';
import { percent, short } from '../words.ts';
import type { Limit, LimitName } from './limits.ts';

/** What a limit of a wish is called, and what is said where it is met and where it is not. */
export interface LimitWords {
  /** In a list and beside a bar. */
  readonly short: string;
  /** A sentence without its end, of the limit's own number with its unit: true where the limit is met. */
  readonly holds: (limit: string) => string;
  /** A sentence without its end: true where it is not met. Of the two covered ones the circle that ends says it (`ENDS`). */
  readonly fails: string;
}

const words = (short: string, holds: LimitWords['holds'], fails: string): LimitWords => ({ short, holds, fails });

export const LIMIT_WORDS: Readonly<Record<LimitName, LimitWords>> = {
  subjectFits: words('subject in the frame', () => 'the subject fits', 'the subject no longer fits the frame'),
  subjectFills: words('subject large in the frame', (l) => `the subject fills ${l} of the frame`, 'the subject stays small in the frame'),
  subjectCovered: words('subject covered', () => 'the subject is covered to its corners', 'the subject is not covered to its corners'),
  frameCovered: words('frame covered', (l) => `${l} of the frame is covered`, 'too little of the frame is covered'),
  fieldNoNarrower: words('field wide enough', (l) => `the field is at least ${l} wide`, 'the field grows too narrow'),
  fieldNoWider: words('field narrow enough', (l) => `the field is at most ${l} wide`, 'the field grows too wide'),
  magnificationAtLeast: words('magnified enough', (l) => `${l} is reached`, 'the magnification is too low'),
  magnificationAtMost: words('magnified no more', (l) => `${l} is not passed`, 'the magnification is too high'),
  finestDetail: words('finest detail', (l) => `detail of ${l} is recorded`, 'the finest detail is lost'),
  workingDistance: words('working distance', (l) => `${l} stay free before the objective`, 'the objective comes too near'),
  diffuser: words('room for the diffuser', (l) => `a diffuser ${l} deep goes in`, 'the diffuser no longer goes in'),
  lightCone: words('room for light', (l) => `light has ${l} of room`, 'the rig stands in the way of the light'),
  cornerLight: words('light in the corners', (l) => `the corners keep ${l} of the light`, 'the corners go dark'),
  samplingAtLeast: words('pixels fine enough', () => 'the pixels are fine enough', 'your pixels are too coarse for what the optics show'),
  samplingAtMost: words('pixels coarse enough', () => 'the pixels are no finer than you want', 'your pixels only magnify blur'),
  length: words('length', (l) => `the rig stays within ${l}`, 'the rig grows too long'),
};

/** What ends where a circle no longer reaches. */
export const ENDS: Readonly<Record<Circle, string>> = {
  corrected: 'the corrected field runs out',
  lit: 'the light runs out',
  sharp: "the relay's sharp circle runs out",
};

const UNIT: Readonly<Partial<Record<Limit['figure'], string>>> = {
  systemMagnification: '×',
  samplingRatio: '',
  resolvedDetailUm: ' µm',
  lightConeDeg: '°',
};
const SHARES: ReadonlySet<Limit['figure']> = new Set(['subjectFill', 'coveredShare', 'cornerIllumination']);

/** The number that a limit asks for, or a value of its figure, with its unit; with more digits where it would read like `beside` and is not. */
export function amountOf({ figure }: Pick<Limit, 'figure'>, value: number, beside = value): string {
  const share = SHARES.has(figure);
  const told = (x: number, digits?: number): string =>
    share ? (digits === undefined ? percent(x) : `${short(100 * x, digits)} %`) : `${short(x, digits)}${UNIT[figure] ?? ' mm'}`;
  // What is not the same is not told as the same.
  for (const digits of [undefined, 4, 5, 6]) if (value === beside || told(value, digits) !== told(beside)) return told(value, digits);
  return told(value);
}

/** `the corners keep 50 % of the light`: what is true where a limit is met. */
export const holdsOf = (limit: Limit): string => LIMIT_WORDS[limit.name].holds(amountOf(limit, limit.limit));
