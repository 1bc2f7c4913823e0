import { type Answers, placedIn } from '../../core/checked.ts';

/** One subject's numbers along the tolerance that each has. */
export interface Strip {
  readonly title: string;
  readonly count: number;
  /** Top of the strip and of its title, px. */
  readonly y: number;
  readonly titleY: number;
  /** Ticks of what holds, as one path. */
  readonly ticks: string;
  /** What does not: each where it lies, or at the edge of the paper beyond. */
  readonly misses: readonly number[];
}

export interface Plate {
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly middle: number;
  readonly low: number;
  readonly high: number;
  readonly top: number;
  readonly strips: readonly Strip[];
}

/** Narrower than this titles stand over their strips, px. */
const NARROW = 620;
const TITLES = 236;
const HEAD = 24;
const TICK = 11;
/** What lies beyond the tolerance is drawn at most so far beyond it, in half-widths. */
const BEYOND = 1.15;

export function plateOf(answers: readonly Answers[], width: number): Plate {
  const narrow = width < NARROW;
  const row = narrow ? 40 : 23;
  const [left, right] = [narrow ? 0 : TITLES, width];
  const middle = (left + right) / 2;
  const half = (right - left) / 2 / BEYOND;
  const x = (place: number): number => middle + half * Math.max(-BEYOND, Math.min(BEYOND, place));
  const strips = answers.map((subject, i) => {
    const y = HEAD + i * row + (narrow ? 22 : 6);
    const values = placedIn([subject]).map(({ value }) => value);
    return {
      title: subject.title,
      count: values.length,
      y,
      titleY: narrow ? y - 6 : y + TICK - 1,
      ticks: values.map(({ place, holds }) => (holds ? `M${x(place).toFixed(1)} ${y}v${TICK}` : '')).join(''),
      misses: values.flatMap(({ place, holds }) => (holds ? [] : [x(place)])),
    };
  });
  return { height: HEAD + answers.length * row + 6, left, right, middle, low: x(-1), high: x(1), top: HEAD, strips };
}
