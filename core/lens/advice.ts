import type { SharpFocus } from '../pairing/schema.ts';
import { UM_PER_MM } from '../units.ts';
import { capital, percent, short } from '../words.ts';
import { type BestPlace, bestPlace, blurAt, contrastOf, GOOD, worthOf } from './best.ts';
import type { Judging } from './judging.ts';
import { standing } from './sides.ts';
import { type SpacingPoint, spacingPoint } from './spacing.ts';

/** Both ways round over the infinity space, with what to make of it. */
export interface Advice {
  /** As listed, and turned round: the points by growing infinity space. */
  readonly ways: readonly [Over, Over];
  /** Which of the two is better. */
  readonly better: 0 | 1;
  /** As it stands now. */
  readonly now: SpacingPoint;
  /** What to do, in words; every number in it stands in the points. */
  readonly sentence: string;
}

export interface Over {
  readonly reversed: boolean;
  /** 'weak side first, male thread toward the objective'. */
  readonly standing: string;
  readonly points: readonly SpacingPoint[];
  readonly best: BestPlace;
}

/** Ways round whose best contrasts differ by less than this part are as good as each other. */
const TIE = 0.02;
/** Light worth a word, of the middle's. */
const LIGHT = 0.01;

export function adviceOf(judging: Judging, points: readonly (readonly [SpacingPoint, SpacingPoint])[], infinitySpaceMm: number): Advice {
  const now = spacingPoint(judging, judging.ways[judging.reversed ? 1 : 0], infinitySpaceMm);
  const worth = worthOf([...points.flat(), now], judging.focus);
  const over = (i: 0 | 1): Over => {
    const own = points.map((pair) => pair[i]);
    const way = judging.ways[i];
    // Where it stands now is a place like the others.
    const ranked = way.reversed === judging.reversed ? [...own, now].sort((a, b) => a.infinitySpaceMm - b.infinitySpaceMm) : own;
    return {
      reversed: way.reversed,
      standing: standing(way.lens, way.reversed),
      points: own,
      best: bestPlace(ranked, judging.focus, worth),
    };
  };
  const ways = [over(0), over(1)] as const;
  const better = worth(ways[0].best.point) >= worth(ways[1].best.point) ? 0 : 1;
  return { ways, better, now, sentence: sentenceOf(judging, ways, better, now, worth) };
}

function sentenceOf(
  judging: Judging,
  ways: readonly [Over, Over],
  better: 0 | 1,
  now: SpacingPoint,
  worth: (point: SpacingPoint) => number,
): string {
  const [good, other] = [ways[better], ways[better === 0 ? 1 : 0]];
  const { focus, reversed, criterion } = judging;
  if (!(worth(good.best.point) > 0))
    return `At none of these places all of the ${judging.over} gets light and keeps anything of the detail: look nearer to the objective, or judge by coarser detail.`;
  const tie = worth(other.best.point) >= (1 - TIE) * worth(good.best.point);
  const turned = !tie && reversed !== good.reversed;
  const stands = tie ? ways[reversed ? 1 : 0] : good;
  const target = stands.best;
  const [least, greatest] = target.withinMm;
  const inside = !turned && worth(now) >= GOOD * worth(target.point);
  const at = `${short(target.point.infinitySpaceMm)} mm`;
  const first = inside
    ? `It stands well: ${stands.standing}, ${short(now.infinitySpaceMm)} mm from the objective's shoulder`
    : turned
      ? `Turn it round, ${stands.standing}, and set it ${at} from the objective's shoulder`
      : `Leave it ${stands.standing}, and set it ${at} from the objective's shoulder`;
  const judged = inside ? now : target.point;
  const apart = short(UM_PER_MM / (judging.frequency * judging.magnification), 2);
  const here = (point: SpacingPoint, of = 'it'): string => blurred(point, focus, of);
  return [
    `${first}: the worst point of the ${judging.over} ${here(judged, `the contrast of lines ${apart} µm apart at the subject`)}.`,
    inside ? '' : `${turned ? 'As it stands' : `At ${short(now.infinitySpaceMm)} mm`} it ${here(now)}.`,
    otherWay(other, tie, focus),
    Math.round(least) < Math.round(greatest)
      ? `Between ${Math.round(least)} and ${Math.round(greatest)} mm it is within a tenth of the best.`
      : '',
    light(target.point, now, inside),
    pupilDoubt(judging.pupilDoubtMm),
    contrastOf(judged, focus) < criterion ? `That is softer than the ${percent(criterion)} that counts as sharp.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}

function blurred(point: SpacingPoint, focus: SharpFocus, of: string): string {
  const blur = blurAt(point, focus);
  return `${blur === undefined ? '' : `blurs to ${short(blur)} µm and `}keeps ${percent(contrastOf(point, focus))} of ${of}`;
}

/** What the way round that is not advised comes to, at any space looked at. */
function otherWay(other: Over, tie: boolean, focus: SharpFocus): string {
  if (tie) return 'The other way round is as good.';
  const seen = other.points.filter((p) => blurAt(p, focus) !== undefined);
  const blurs = seen.map((p) => blurAt(p, focus) as number);
  const [first] = seen;
  if (!first) return '';
  const last = seen.at(-1) ?? first;
  const side = firstSideWords(other);
  const [low, high] = [Math.min(...blurs), Math.max(...blurs)];
  const span = short(low) === short(high) ? short(low) : `${short(high)} to ${short(low)}`;
  const where =
    first === last
      ? `at ${short(first.infinitySpaceMm)} mm`
      : `anywhere from ${short(first.infinitySpaceMm)} to ${short(last.infinitySpaceMm)} mm`;
  return `${capital(side)} the blur is ${span} µm ${where}.`;
}

const firstSideWords = ({ standing: words }: Over): string => words.split(',')[0] as string;

/** Doubt of the exit pupil's place that is worth a word, mm. */
const DOUBT = 5;

/** All spacings count from the exit pupil, and move with it. */
export const pupilDoubt = (mm: number): string =>
  mm < DOUBT
    ? ''
    : `Where the exit pupil lies is known to ±${short(mm, 2)} mm only, and the best place moves with it: locate it, or try some places.`;

function light(target: SpacingPoint, now: SpacingPoint, inside: boolean): string {
  if (inside || Math.abs(target.cornerLight - now.cornerLight) < LIGHT) return '';
  return `The corner gets ${percent(target.cornerLight)} of the light there, ${percent(now.cornerLight)} now.`;
}
