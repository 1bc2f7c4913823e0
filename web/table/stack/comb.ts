/** The stack as it is drawn: the subject's depth from left to right with a line for each frame, and the first frames closer. */

export interface Comb {
  /** Where the frames' middles stand along the subject, shares of its depth; thinned where they would run together. */
  readonly lines: readonly number[];
  /** One in so many is drawn. */
  readonly every: number;
}

/** Lines closer than this run together, px. */
const APART = 3;

/** @param width what the subject's depth takes, px */
export function combOf(frames: number, stepUm: number, depthUm: number, subjectUm: number, width: number): Comb {
  const apart = (stepUm / subjectUm) * width;
  const every = Math.max(1, Math.ceil(APART / apart));
  const lines: number[] = [];
  for (let i = 0; i < frames; i += every) lines.push((i * stepUm + depthUm / 2) / subjectUm);
  return { lines, every };
}

/** The first frames side by side, each a slab of the depth that it is sharp through: its ends, in µm from the front. */
export const slabsOf = (frames: number, stepUm: number, depthUm: number, most: number): { from: number; to: number }[] =>
  Array.from({ length: Math.min(frames, most) }, (_, i) => ({ from: i * stepUm, to: i * stepUm + depthUm }));
