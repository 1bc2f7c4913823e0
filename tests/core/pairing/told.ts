import type { Answer, Evaluation, FigureId } from '../../../core/index.ts';
import { TOLD } from '../../../core/pairing/registry.ts';

/** Answers by hand, so that words can be held at any border: as much of an evaluation as words are made of. */

type Span = number | readonly [value: number, low?: number, high?: number];

const known = (span: Span, origin: 'marked' | 'assumed' = 'marked'): Answer => {
  const [value, low, high] = typeof span === 'number' ? [span, span, span] : span;
  if (value === Number.POSITIVE_INFINITY) return { state: 'unlimited', unit: 'mm' };
  return { state: 'known', value, unit: 'mm', ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }), origin };
};
const UNKNOWN: Answer = { state: 'unknown', unit: 'mm', missing: ['/somewhere'] };
const NONE: Answer = { state: 'none', unit: 'mm', why: 'there is none' };

/** How far one input raises and lowers a figure. */
export interface Pull {
  readonly path: string;
  readonly of: FigureId;
  readonly up?: number;
  readonly down?: number;
}

/** A sensor of 40 by 30, whose diagonal is 50; a relay of 200 mm. */
export function told(
  answers: Partial<Record<FigureId, Span | 'none'>>,
  more: { pulls?: readonly Pull[]; relay?: object; pairing?: object; sheet?: unknown[] } = {},
): Evaluation {
  const all = Object.fromEntries(
    TOLD.map(({ id }) => {
      const span = (answers as Record<string, Span | 'none' | undefined>)[id];
      return [id, span === undefined ? UNKNOWN : span === 'none' ? NONE : known(span)];
    }),
  );
  const moves = (more.pulls ?? []).map(({ path, of, up = 0, down = 0 }) => ({
    input: { path },
    up: TOLD.map(({ id }) => (id === of ? up : 0)),
    down: TOLD.map(({ id }) => (id === of ? down : 0)),
  }));
  const pairing = {
    objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 },
    relay: { kind: 'tube-lens', focalLengthMm: 200, ...more.relay },
    sensor: { widthMm: 40, heightMm: 30, pixelPitchUm: 4 },
    infinitySpaceMm: 60,
    ...more.pairing,
  };
  return { pairing, answers: all, inputs: [], sheet: more.sheet ?? [], spread: { figures: TOLD, moves } } as unknown as Evaluation;
}
