import { type Answer, earned, numberIn, percent, short } from '../../../core/index.ts';
import { OUT, type TableEvaluation, type TubePoint, tubeBites, tubeStudy, wayOf } from '../../../core/table.ts';

/**
 * The error of the tube along one axis, and what it does under it: as on a slide rule, one place one error. Fine
 * about 0 and coarse far out, since a tenth of a millimetre and a tenth of a metre are both to be seen.
 */
export interface Rule {
  x(tubeErrorMm: number): number;
  left: number;
  right: number;
  curve: readonly TubePoint[];
  /** Marks with words, by scale. */
  errors: readonly Tick[];
  magnifications: readonly Tick[];
  things: readonly Tick[];
  /** How far it may be wrong, each end undefined where it is beyond the axis. */
  band: readonly [shorter: number, longer: number];
  /** The same in words. */
  bandWords: string;
  /** What ends it, where that is soon said. */
  bandWhy: string | undefined;
  /** How an error is spoken of: of a tube's length, or of a focus. */
  of: { scale: string; out(mm: number): string };
  limit: number;
  /** The error that is set. */
  now: number;
}

export interface Tick {
  x: number;
  words: string;
}

/** Below this the scale is even, above it goes by ratio, mm. */
const EVEN = 0.25;
const POINTS = 160;
const APART = 34;

const ERRORS = [0.1, 0.3, 1, 3, 10, 30, 100, 300];
const SHARES = [0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1];
/** Distances of things that people have at hand, m. */
const THINGS = [1000, 300, 100, 50, 20, 10, 5, 3, 2];

/** The rule of a pairing between `left` and `right`, px; undefined where it cannot be drawn. */
export function ruleOf(evaluation: TableEvaluation, left: number, right: number): Rule | undefined {
  const { answers } = evaluation;
  const study = tubeStudy(evaluation);
  const tolerance = numberIn(answers.tubeToleranceMm);
  if (!study || tolerance === undefined) return undefined;
  const { at, reach, now, limit, errorFrom } = study;
  const way = wayOf(evaluation.pairing);
  const out = (sense: number, digits: string): string => `${digits} mm ${sense < 0 ? OUT[way].short : OUT[way].long}`;
  const ends = (['sharpShorterMm', 'sharpLongerMm'] as const).flatMap((id) => {
    const end = numberIn(answers[id]);
    return end !== undefined && Number.isFinite(end) ? [1.25 * end] : [];
  });
  const widest = Math.max(3 * (Number.isFinite(tolerance) ? tolerance : 0), Math.abs(now), 10, ...ends);
  const [from, to] = [-Math.min(widest, reach[0]), Math.min(widest, reach[1])];
  if (!(to > from)) return undefined;
  const [a, b] = [Math.asinh(from / EVEN), Math.asinh(to / EVEN)];
  const x = (error: number): number => left + ((right - left) * (Math.asinh(error / EVEN) - a)) / (b - a);
  // At its very ends rounding may put a place beyond where the tube is followed.
  const errorAt = (share: number): number => Math.min(to, Math.max(from, EVEN * Math.sinh(a + (b - a) * share)));
  const curve = Array.from({ length: POINTS + 1 }, (_, i) => at(errorAt(i / POINTS))).filter((point) => point !== undefined);
  const inside = (error: number): boolean => error >= from && error <= to;
  const marks = (all: readonly { error: number; words: string }[]): Tick[] =>
    apart(all.filter(({ error }) => inside(error)).map(({ error, words }) => ({ x: x(error), words })));
  const own = at(0)?.magnification;
  const slope = own === undefined ? 0 : ((at(0.5)?.magnification ?? own) - (at(-0.5)?.magnification ?? own)) / own;
  return {
    x,
    left,
    right,
    curve,
    errors: marks([
      { error: 0, words: '0' },
      ...ERRORS.flatMap((e) => [
        { error: e, words: `+${e}` },
        { error: -e, words: `−${e}` },
      ]),
    ]),
    magnifications:
      own === undefined || slope === 0
        ? []
        : marks([
            { error: 0, words: `${short(own)}×` },
            ...SHARES.flatMap((share) => [
              { error: share / slope, words: `+${percent(share)}` },
              { error: -share / slope, words: `−${percent(share)}` },
            ]),
          ]),
    things: marks(THINGS.map((metres) => ({ error: errorFrom(metres), words: String(metres) }))),
    band: [numberIn(answers.tubeShorterMm) ?? 0, numberIn(answers.tubeLongerMm) ?? 0],
    bandWords: bandWords(answers.tubeShorterMm, answers.tubeLongerMm, out),
    bandWhy: tubeBites(evaluation) === 'magnification' ? `magnification within ${percent(study.magnificationShare)}` : undefined,
    of: { scale: way === 'tube' ? 'tube wrong by, mm' : 'sensor off focus by, mm', out: (mm) => out(mm, short(Math.abs(mm))) },
    limit,
    now,
  };
}

/** With the digits that the figures' own rows have. */
function bandWords(shorter: Answer, longer: Answer, out: (sense: number, digits: string) => string): string {
  const side = (a: Answer): string => (a.state === 'known' ? earned(a.value, a.low, a.high) : '');
  const [a, b] = [side(shorter), side(longer)];
  if (a !== '' && a === b) return `±${a} mm`;
  return `${a ? out(-1, a) : 'any nearer'} to ${b ? out(1, b) : 'any farther'}`;
}

/** Marks in the order of what matters more, those left out whose words would run into one that stands. */
function apart(ticks: readonly Tick[]): Tick[] {
  const kept: Tick[] = [];
  for (const tick of ticks) if (kept.every((other) => Math.abs(other.x - tick.x) >= APART)) kept.push(tick);
  return kept.toSorted((a, b) => a.x - b.x);
}
