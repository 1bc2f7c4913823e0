import { hypot2 } from '../numeric.ts';
import { amount } from '../parts/quantity.ts';
import { diagonalOf } from '../parts/sensor.ts';
import { type Answer, interval, numberIn } from './answer.ts';
import type { PartEvaluation } from './evaluate.ts';
import { CIRCLES, type Circle } from './image-circles.ts';
import type { FigureId } from './registry.ts';
import type { Pairing } from './schema.ts';
import type { Spread } from './spread.ts';
import { laidOn, subjectSize } from './subject.ts';

export const VERDICTS = ['covers', 'crops', 'misses', 'undecided'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** The verdict on one rectangle of the picture: the sensor, or the subject on it. */
interface Judged {
  verdict: Verdict;
  /** The smallest known circle that falls short of the corners; where ± leave it undecided, the one whose ± decide. */
  bites?: Circle;
  /** The inputs whose interval decides, the most weighty first; empty unless `undecided` by ±. */
  hangsOn: string[];
  /** The verdicts at either end of the intervals, the worse first; only where they differ. */
  between?: [worse: Verdict, better: Verdict];
}

export interface SubjectCoverage extends Judged {
  /** The subject's diagonal on the sensor. */
  diagonalMm: number;
  /** False where the subject is larger than the sensor: then only the part on it is judged. */
  fits: boolean;
}

export interface Coverage extends Judged {
  /** Circles that are not known, and so do not count as passing. */
  unknown: Circle[];
  /** The grounds in words, one a circle. */
  reasons: string[];
  /** The largest rectangle of the sensor's shape inside every known circle. */
  largestCropMm: [width: number, height: number];
  subject?: SubjectCoverage;
}

export const CIRCLE_FIGURE = { corrected: 'correctedCircleMm', lit: 'litCircleMm', sharp: 'sharpCircleMm' } as const satisfies Record<
  Circle,
  FigureId
>;

/** A crop under this share of the sensor's width is a miss. */
const LEAST_CROP = 0.5;

/** What a verdict is made of. */
export type Judgeable = PartEvaluation & { readonly answers: Readonly<Record<(typeof JUDGED)[number], Answer>> };

/** The figures that a verdict needs. */
export const JUDGED = [...Object.values(CIRCLE_FIGURE), 'systemMagnification'] as const;

export function coverageOf(evaluation: Judgeable): Coverage {
  const { pairing, answers } = evaluation;
  const width = amount(pairing.sensor.widthMm);
  const height = amount(pairing.sensor.heightMm);
  const diagonal = diagonalOf(pairing.sensor);
  const unknown = CIRCLES.filter((c) => interval(answers[CIRCLE_FIGURE[c]]) === undefined);
  const smallest = Math.min(...CIRCLES.map((c) => numberIn(answers[CIRCLE_FIGURE[c]]) ?? Number.POSITIVE_INFINITY));
  const crop = Math.min(1, smallest / diagonal);
  const subject = onSensor(evaluation);
  const known = knownCircles(evaluation);
  return {
    ...judge(evaluation, known, diagonal),
    unknown,
    reasons: CIRCLES.map((c) => reason(evaluation, c, diagonal)),
    largestCropMm: [crop * width, crop * height],
    ...(subject ? { subject: { ...judge(evaluation, known, subject.diagonalMm), ...subject } } : {}),
  };
}

/** The subject's box on the sensor, cut to the sensor. */
function onSensor({ pairing: { subject, sensor }, answers }: Judgeable): { diagonalMm: number; fits: boolean } | undefined {
  const m = numberIn(answers.systemMagnification);
  const told = m === undefined ? undefined : subjectSize(subject, m);
  if (!told) return undefined;
  const [w, h] = laidOn(sensor, told);
  const [width, height] = [amount(sensor.widthMm), amount(sensor.heightMm)];
  return { diagonalMm: hypot2(Math.min(w, width), Math.min(h, height)), fits: w <= width && h <= height };
}

interface Known {
  readonly circle: Circle;
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/** From worse to better. */
const RANK = { misses: 0, crops: 1, covers: 2 } as const;
type Sure = keyof typeof RANK;

const sureAt = (circleMm: number, diagonal: number): Sure =>
  circleMm >= diagonal ? 'covers' : circleMm < LEAST_CROP * diagonal ? 'misses' : 'crops';

/** The smallest first. */
function knownCircles({ answers }: Judgeable): Known[] {
  const known: Known[] = [];
  for (const circle of CIRCLES) {
    const span = interval(answers[CIRCLE_FIGURE[circle]]);
    if (span) known.push({ circle, low: span[0], value: span[1], high: span[2] });
  }
  return known.sort((a, b) => a.value - b.value);
}

/** Judged at every circle's low, and at every circle's high: where the two differ it is undecided. */
function judge(evaluation: Judgeable, known: readonly Known[], diagonal: number): Judged {
  const smallest = known[0];
  if (!smallest) return { verdict: 'undecided', hangsOn: [] };
  const worse = sureAt(Math.min(...known.map((k) => k.low)), diagonal);
  const better = sureAt(Math.min(...known.map((k) => k.high)), diagonal);
  if (worse !== better) {
    // Those whose low alone would spoil what all their highs allow.
    const doubtful = known.filter((k) => RANK[sureAt(k.low, diagonal)] < RANK[better]);
    return {
      verdict: 'undecided',
      bites: (doubtful[0] as Known).circle,
      hangsOn: [...new Set(doubtful.flatMap((k) => deciding(evaluation, k.circle)))],
      between: [worse, better],
    };
  }
  // With the light alone known, only a miss cannot change any more.
  const onlyLight = known.every((k) => k.circle === 'lit') && worse !== 'misses';
  return { verdict: onlyLight ? 'undecided' : worse, ...(smallest.value < diagonal ? { bites: smallest.circle } : {}), hangsOn: [] };
}

/** The inputs that move a circle, the one that moves it most first; a tenth of that is too little. */
function deciding({ spread }: PartEvaluation, circle: Circle): string[] {
  const j = spread.figures.findIndex((f) => f.id === CIRCLE_FIGURE[circle]);
  const pull = (move: Spread['moves'][number]): number => Math.max(move.up[j] as number, move.down[j] as number);
  const moves = spread.moves.filter((m) => pull(m) > 0).toSorted((a, b) => pull(b) - pull(a));
  const most = moves[0] ? pull(moves[0]) : 0;
  return moves.filter((m) => pull(m) >= most / 10).map((m) => m.input.path);
}

const NAMES = { corrected: "the objective's corrected field", lit: 'the light' } as const;
/** What a circle is called: the sharp one by where it comes from. */
export const circleName = ({ relay }: Pairing, circle: Circle): string =>
  circle === 'sharp' ? (relay.glass ? "the relay's sharp circle" : "the relay's rated circle") : NAMES[circle];

/** What is not known without a circle. */
export const UNKNOWN_CIRCLE: Readonly<Record<Circle, string>> = {
  corrected: 'how far the objective stays corrected',
  lit: 'how far the light reaches',
  sharp: 'how sharp the relay is off the axis',
};
const round = (x: number): string => String(Number(x.toPrecision(3)));

function reason({ answers, pairing }: Judgeable, circle: Circle, diagonal: number): string {
  const a = answers[CIRCLE_FIGURE[circle]];
  const span = interval(a);
  if (!span) return `${UNKNOWN_CIRCLE[circle]} is not known`;
  const [low, value, high] = span;
  const name = circleName(pairing, circle);
  if (value === Number.POSITIVE_INFINITY) return `${name} is not limited`;
  const side =
    value >= diagonal
      ? `reaches ${round((value - diagonal) / 2)} mm past the corners`
      : `ends ${round((diagonal - value) / 2)} mm short of the corners`;
  const sure = sureAt(low, diagonal) === sureAt(high, diagonal) ? '' : ', which its ± leaves open';
  return `${name} ${side}${sure}`;
}
