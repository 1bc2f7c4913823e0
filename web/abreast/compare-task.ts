import type { Answer, ComparedId, FigureId, Pairing, Problem } from '../../core/index.ts';

/** The pairings that are to be compared, before one subject. */
export interface Asked {
  id: number;
  pairings: readonly Pairing[];
}

/** What the drawings need beside the figures that are compared. */
export const DRAWN = [
  'objectFieldHeightMm',
  'relayFocalLengthMm',
  'goodFieldMm',
  'cutoffImageLpPerMm',
  'nyquistLpPerMm',
] as const satisfies FigureId[];

/** One pairing worked out: its figures, and the light from the middle to the corner at even steps; undefined where an opening is not known. */
export interface Worked {
  readonly answers: Readonly<Record<ComparedId | (typeof DRAWN)[number], Answer>>;
  readonly light: readonly number[] | undefined;
  readonly problems?: undefined;
}

/** Each pairing, or what is wrong with it. */
export type Each = Worked | { readonly problems: readonly Problem[]; readonly answers?: undefined };

/** `differences[from][of - from - 1]`, `from` before `of`; places among those that could be worked out. */
export type Differences = readonly (readonly Readonly<Record<ComparedId, Answer>>[])[];

/** What the worker answers: how far it has come, each pairing, then the differences; or why nothing came of it. */
export type Answered =
  | { id: number; done: number; of: number }
  | { id: number; each: readonly Each[] }
  | { id: number; differences: Differences }
  | { id: number; failed: string };

/** Steps of the curve of the light. */
export const LIGHT_STEPS = 50;
