import type { Evaluation } from '../pairing/evaluate.ts';
import type { SharpFocus } from '../pairing/schema.ts';
import type { Lens } from '../trace/lens.ts';
import { capital, listed, percent, short } from '../words.ts';
import { pupilDoubt } from './advice.ts';
import { type BestPlace, bestPlace, contrastOf, worthOf } from './best.ts';
import { judgingOf, type SharpOver } from './judging.ts';
import type { Residuals } from './made.ts';
import { threadOf } from './sides.ts';
import { type Places, type SpacingPoint, spacingPoint } from './spacing.ts';

/** A lens that a relay of unknown make could be. */
export interface Candidate {
  readonly name: string;
  /** Listed from the side with the male thread. */
  readonly lens: Lens;
  /** What is left of its faults at the close-up lens's own job. */
  readonly residuals?: Residuals;
}

/** One candidate over the infinity space, both ways round. */
export interface Tried {
  readonly name: string;
  readonly residuals?: Residuals;
  /** Male thread toward the objective, and toward the camera. */
  readonly ways: readonly [readonly SpacingPoint[], readonly SpacingPoint[]];
  readonly best: readonly [BestPlace, BestPlace];
}

/** The least and the greatest over the candidates at one infinity space. */
export interface BandPoint {
  readonly infinitySpaceMm: number;
  readonly contrast: readonly [least: number, greatest: number];
  readonly blurUm?: readonly [least: number, greatest: number];
}

/** What lenses of a class have in common, and what they have not. */
export interface Band {
  readonly tried: readonly Tried[];
  readonly ways: readonly [readonly BandPoint[], readonly BandPoint[]];
  /** The way round that is better for every one of them; absent where they differ. */
  readonly agreed?: 0 | 1;
  /** Infinity spaces within a tenth of the best for every one of them, that way round. */
  readonly spacesMm?: readonly [least: number, greatest: number];
  readonly sentence: string;
}

/** Less contrast than this is not worth a number. */
const HARDLY = 0.1;

/** A way round whose best contrast is less than this much better is no better. */
const BETTER = 0.05;

/** Candidate by candidate, for those who have other things to do between. */
export function* trying(
  evaluation: Evaluation,
  candidates: readonly Candidate[],
  { fromMm, toMm, count }: Places,
  over?: SharpOver,
): Generator<Tried, void, undefined> {
  const spaces = Array.from({ length: count }, (_, i) => fromMm + ((toMm - fromMm) * i) / Math.max(1, count - 1));
  for (const { name, lens, residuals } of candidates) {
    const judging = judgingOf(evaluation, lens, over);
    const through = (i: 0 | 1): SpacingPoint[] => spaces.map((space) => spacingPoint(judging, judging.ways[i], space));
    const ways = [through(0), through(1)] as const;
    const worth = worthOf(ways.flat(), judging.focus);
    yield {
      name,
      ...(residuals ? { residuals } : {}),
      ways,
      best: [bestPlace(ways[0], judging.focus, worth), bestPlace(ways[1], judging.focus, worth)],
    };
  }
}

/**
 * @param tried at least one, all over the same infinity spaces
 * @param pupilDoubtMm how far the objective's exit pupil may be from where it is taken to be
 */
export function bandOf(tried: readonly Tried[], focus: SharpFocus, pupilDoubtMm: number): Band {
  const prefers = tried.map(({ ways, best }) => {
    const worth = worthOf(ways.flat(), focus);
    const [a, b] = [worth(best[0].point), worth(best[1].point)];
    return a > b * (1 + BETTER) ? 0 : b > a * (1 + BETTER) ? 1 : -1;
  });
  const agreed = prefers.every((p) => p === 0) ? 0 : prefers.every((p) => p === 1) ? 1 : undefined;
  const spaces = agreed === undefined ? undefined : common(tried.map((t) => t.best[agreed].withinMm));
  const counts = [0, 1].map((way) => prefers.filter((p) => p === way).length) as [number, number];
  return {
    tried,
    ways: [bandOver(tried, 0, focus), bandOver(tried, 1, focus)],
    ...(agreed === undefined ? {} : { agreed }),
    ...(spaces ? { spacesMm: spaces } : {}),
    sentence: [sentenceOf(tried, counts, agreed, spaces), agreed === undefined ? '' : pupilDoubt(pupilDoubtMm)].filter(Boolean).join(' '),
  };
}

function bandOver(tried: readonly Tried[], way: 0 | 1, focus: SharpFocus): BandPoint[] {
  const first = tried[0] as Tried;
  return first.ways[way].map(({ infinitySpaceMm }, i) => {
    const there = tried.map((t) => t.ways[way][i] as SpacingPoint);
    const contrasts = there.map((p) => contrastOf(p, focus));
    const blurs = there.flatMap((p) => (focus === 'stack' ? p.stackBlurUm : p.oneFrameBlurUm) ?? []);
    return {
      infinitySpaceMm,
      contrast: [Math.min(...contrasts), Math.max(...contrasts)] as const,
      ...(blurs.length === there.length ? { blurUm: [Math.min(...blurs), Math.max(...blurs)] as const } : {}),
    };
  });
}

function common(ranges: readonly (readonly [number, number])[]): [number, number] | undefined {
  const least = Math.max(...ranges.map((r) => r[0]));
  const greatest = Math.min(...ranges.map((r) => r[1]));
  return least <= greatest ? [least, greatest] : undefined;
}

function sentenceOf(
  tried: readonly Tried[],
  [asListed, turned]: readonly [number, number],
  agreed: 0 | 1 | undefined,
  spaces: readonly [number, number] | undefined,
): string {
  const n = tried.length;
  const test = 'photograph the same corner both ways round, and keep the sharper';
  if (agreed === undefined) {
    const undecided = n - asListed - turned;
    const votesFor = (count: number, reversed: boolean): string[] =>
      count > 0 ? [`${count} ${count === 1 ? 'wants' : 'want'} the ${threadOf(reversed)}`] : [];
    const votes = [
      ...votesFor(asListed, false),
      ...votesFor(turned, true),
      ...(undecided > 0 ? [`${undecided} ${undecided === 1 ? 'does' : 'do'} not care`] : []),
    ];
    return `Lenses of this class do not agree which way round is sharper: of ${n}, ${listed(votes)}. So ${test}.`;
  }
  const contrasts = tried.map((t) => t.best[agreed].contrast);
  const [least, greatest] = [Math.min(...contrasts), Math.max(...contrasts)];
  const kept =
    greatest < HARDLY
      ? 'Even at its best such a lens leaves next to nothing of this detail in the worst point of the picture'
      : `At its best such a lens keeps ${percent(least)}${percent(least) === percent(greatest) ? '' : ` to ${percent(greatest)}`} of the contrast in the worst point of the picture`;
  const places = tried.map((t) => t.best[agreed].point.infinitySpaceMm);
  const where = spaces
    ? `between ${Math.round(spaces[0])} and ${Math.round(spaces[1])} mm every one of them is within a tenth of its best`
    : `they do not agree how far from the objective: their best places lie from ${short(Math.min(...places))} to ${short(Math.max(...places))} mm`;
  return (
    `${capital(threadOf(agreed === 1))}: ${n === 1 ? 'the one lens of this class that can be made says so,' : `all ${n} lenses of this class that were worked out agree on that,`} ${spaces ? 'and' : 'but'} ${where}. ` +
    `${kept}. To be sure of yours, ${test}.`
  );
}
