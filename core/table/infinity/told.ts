import { type Answer, numberIn } from '../../pairing/answer.ts';
import { earned, percent, short } from '../../words.ts';
import { numberAt } from '../at.ts';
import type { TableEvaluation } from '../evaluate.ts';
import type { Setting } from '../setting.ts';
import { farThing, magnificationTolerance, resin, shiftLimit, slip, strehlLimit } from './settings.ts';

/** What ends the tolerance of the tube. */
export const TUBE_BITES = ['magnification', 'sharpness', 'place'] as const;
export type TubeBite = (typeof TUBE_BITES)[number];

const known = numberIn;
const set = (evaluation: TableEvaluation, one: Setting): number => numberAt(evaluation, one.leaf) as number;

/** What errs first when the tube is wrong, on the side on which it may be less so. */
export function tubeBites({ answers }: TableEvaluation): TubeBite | undefined {
  const least = known(answers.tubeToleranceMm);
  if (least === undefined || least === Number.POSITIVE_INFINITY) return undefined;
  if (known(answers.magnificationToleranceMm) === least) return 'magnification';
  return known(answers.sharpShorterMm) === least || known(answers.sharpLongerMm) === least ? 'sharpness' : 'place';
}

const mm = (answer: Answer): string | undefined =>
  answer.state === 'known' ? `${earned(answer.value, answer.low, answer.high, 3)} mm` : undefined;

/** What is worth knowing of infinity, in words. */
export function infinitySays(evaluation: TableEvaluation): string {
  return [tubeSays(evaluation), farSays(evaluation), coverSays(evaluation)].filter((text) => text !== '').join(' ');
}

function tubeSays(evaluation: TableEvaluation): string {
  const { answers } = evaluation;
  const bite = tubeBites(evaluation);
  const least = mm(answers.tubeToleranceMm);
  if (answers.tubeToleranceMm.state === 'unlimited') return 'However the tube is set, nothing that is counted here errs.';
  if (bite === undefined || least === undefined) return 'How wrong the tube may be is not known yet.';
  if (known(answers.tubeToleranceMm) === 0)
    return 'The sensor stands so far from the relay’s focus that spherical aberration already shows: bring it nearer to infinity.';
  const first: Record<TubeBite, string> = {
    magnification: `the magnification errs first, by ${percent(set(evaluation, magnificationTolerance))}`,
    sharpness: 'the sharpness goes first, by spherical aberration',
    place: `the subject’s place errs first, by ${short(set(evaluation, shiftLimit))} mm`,
  };
  const [shorter, longer] = [mm(answers.sharpShorterMm), mm(answers.sharpLongerMm)];
  const sharp =
    bite === 'sharpness'
      ? ''
      : shorter === undefined && longer === undefined
        ? '; sharpness never asks'
        : `; sharpness alone would bear ${shorter ? `${shorter} shorter` : 'any shorter tube'} and ${longer ? `${longer} longer` : 'any longer one'}`;
  return `Set the tube to within ±${least}: ${first[bite]}${sharp}.`;
}

/** A share of magnification that nobody sees. */
const UNSEEN = 0.0002;

function farSays(evaluation: TableEvaluation): string {
  const { answers } = evaluation;
  const [error, change, nearest] = [mm(answers.farErrorMm), known(answers.farMagnificationChange), answers.nearestThingM];
  if (error === undefined || change === undefined) return '';
  const X = short(set(evaluation, farThing));
  const size =
    Math.abs(change) < UNSEEN
      ? 'the magnification as it was'
      : `${percent(Math.abs(change))} ${change < 0 ? 'less' : 'more'} magnification`;
  const least =
    known(answers.tubeLongerMm) !== 0 && nearest.state === 'known'
      ? `; anything beyond ${earned(nearest.value, nearest.low, nearest.high, 2)} m may stand for infinity`
      : '';
  return `A relay focused on something ${X} m away leaves it ${error} too long, with ${size}${least}.`;
}

function coverSays(evaluation: TableEvaluation): string {
  const strehl = known(evaluation.answers.coverStrehl);
  const due = evaluation.pairing.objective.coverGlassMm;
  const [there, deep] = [set(evaluation, slip), set(evaluation, resin)];
  if (strehl === undefined || due === undefined) return '';
  const sharp = strehl >= set(evaluation, strehlLimit);
  const made = typeof due === 'number' ? due : due.value;
  if (made === 0 && there === 0 && deep === 0) return '';
  const over = [there > 0 ? `a slip of ${short(there)} mm` : 'no slip', ...(deep > 0 ? [`${short(deep)} mm of resin`] : [])].join(' and ');
  const wanted = made === 0 ? 'none' : `${short(made)} mm`;
  return `With ${over} where the objective wants ${wanted} the Strehl ratio is ${short(strehl, 3)}: ${sharp ? 'still sharp' : 'no longer sharp'}.`;
}
