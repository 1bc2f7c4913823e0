import { amount, type Evaluation, evaluate, type FigureId, numberIn, type Pairing } from '../../../core/index.ts';

/**
 * Choosing without `core/choose/`: every pairing worked out whole, every wish read out by hand, every two
 * pairings of the frontier held against each other.
 */
export interface Part<P> {
  id: string;
  part: P;
  owned?: boolean;
  price?: number;
}

const kept = new Map<string, Evaluation | undefined>();

/** Two parts at a spacing, worked out once; undefined where they contradict themselves. */
export function evaluatedOnce(key: string, pairing: Pairing): Evaluation | undefined {
  if (!kept.has(key)) {
    try {
      kept.set(key, evaluate(pairing));
    } catch (error) {
      if ((error as Error).name !== 'PairingError') throw error;
      kept.set(key, undefined);
    }
  }
  return kept.get(key);
}

export interface Wish {
  subject?: { widthMm: number; heightMm?: number; depthMm?: number; shareOfFrame?: number };
  fieldWidthMm?: [number, number];
  magnification?: [number, number];
  finestDetailUm?: number;
  minWorkingDistanceMm?: number;
  lightingClearance?: { depthMm: number; minConeDeg: number };
  minCoveredShare?: number;
  minCornerIllumination?: number;
  samplingRatio?: [number, number];
  maxLengthMm?: number;
  maxPrice?: number;
}

/** Equal but for rounding is equal. */
const atLeast = (x: number, least: number): boolean => x >= least * (1 - 1e-12);
const atMost = (x: number, most: number): boolean => x <= most * (1 + 1e-12);

/** How many of the wishes a pairing does not grant. */
export function ungranted(wish: Wish, { pairing: { sensor }, answers }: Evaluation, price: number): number {
  const of = (id: FigureId): number => numberIn(answers[id]) ?? Number.NaN;
  const granted: boolean[] = [];
  if (wish.subject) {
    const { widthMm: w, heightMm: h = w, shareOfFrame } = wish.subject;
    const long = Math.max(w, h) * of('systemMagnification');
    const short = Math.min(w, h) * of('systemMagnification');
    const [W, H] = [amount(sensor.widthMm), amount(sensor.heightMm)];
    granted.push(atMost(long, Math.max(W, H)) && atMost(short, Math.min(W, H)));
    if (shareOfFrame !== undefined)
      granted.push(atLeast(long, shareOfFrame * Math.max(W, H)) || atLeast(short, shareOfFrame * Math.min(W, H)));
    if (wish.minCoveredShare === undefined) {
      const circles = (['correctedCircleMm', 'litCircleMm', 'sharpCircleMm'] as const).map(of).filter((d) => !Number.isNaN(d));
      granted.push(circles.length > 0 && circles.every((d) => atLeast(d, of('systemMagnification') * Math.hypot(w, h))));
    }
  }
  const range = (ends: readonly [number, number] | undefined, id: FigureId): void => {
    if (ends) granted.push(atLeast(of(id), ends[0]), atMost(of(id), ends[1]));
  };
  range(wish.fieldWidthMm, 'objectFieldWidthMm');
  range(wish.magnification, 'systemMagnification');
  range(wish.samplingRatio, 'samplingRatio');
  const asked = (x: number | undefined, grants: (x: number) => boolean): void => {
    if (x !== undefined) granted.push(grants(x));
  };
  asked(wish.finestDetailUm, (x) => atMost(of('rayleighUm'), x) && atMost(2 * of('pixelAtSubjectUm'), x));
  asked(wish.minWorkingDistanceMm, (x) => atLeast(of('clearWorkingDistanceMm'), x));
  asked(wish.lightingClearance?.depthMm, (x) => atLeast(of('clearWorkingDistanceMm'), x));
  asked(wish.lightingClearance?.minConeDeg, (x) => atLeast(of('lightConeDeg'), x));
  asked(wish.minCoveredShare, (x) => atLeast(of('coveredShare'), x));
  asked(wish.minCornerIllumination, (x) => atLeast(of('cornerIllumination'), x));
  asked(wish.maxLengthMm, (x) => atMost(of('totalLengthMm'), x));
  asked(wish.maxPrice, (x) => price <= x);
  return granted.filter((yes) => !yes).length;
}

/** What two parts still cost, as far as it is known, and whether all of it is. */
export function costOf(...parts: Part<unknown>[]): { known: number; whole: boolean } {
  let known = 0;
  let whole = true;
  for (const { owned, price } of parts) {
    if (owned) continue;
    if (price === undefined) whole = false;
    else known += price;
  }
  return { known, whole };
}

/** Infinity is like itself; what is written in nine digits alike is alike. */
const alike = (a: number, b: number): boolean => a === b || Math.abs(a - b) < 1e-9 * Math.max(Math.abs(a), Math.abs(b));

/** Which rows no other row beats: `ways` tells of each column whether more of it is better. */
export const unbeaten = (rows: readonly (readonly number[])[], ways: readonly ('more' | 'less')[]): number[] =>
  rows.flatMap((row, i) => {
    if (row.some((x) => Number.isNaN(x))) return [];
    const beaten = rows.some(
      (other) =>
        other.every((x, j) => alike(x, row[j] as number) || (ways[j] === 'more' ? x > (row[j] as number) : x < (row[j] as number))) &&
        other.some((x, j) => !alike(x, row[j] as number)),
    );
    return beaten ? [] : [i];
  });
