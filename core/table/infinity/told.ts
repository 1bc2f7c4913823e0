import { type Answer, interval, numberIn } from '../../pairing/answer.ts';
import { earned, percent, short } from '../../words.ts';
import { numberAt } from '../at.ts';
import type { TableEvaluation } from '../evaluate.ts';
import type { Setting } from '../setting.ts';
import { farThing, magnificationTolerance, resin, shiftLimit, slip, strehlLimit } from './settings.ts';
import { OUT, type Way, wayOf } from './way.ts';

/** What ends the tolerance of the tube. */
export const TUBE_BITES = ['magnification', 'sharpness', 'place'] as const;
export type TubeBite = (typeof TUBE_BITES)[number];

const known = numberIn;
const set = (evaluation: TableEvaluation, one: Setting): number => numberAt(evaluation, one.leaf) as number;

/** What errs first when the tube is wrong, on the side on which it may be less so. */
export function tubeBites({ answers }: TableEvaluation): TubeBite | undefined {
  const least = known(answers.tubeToleranceMm);
  if (least === undefined) return undefined;
  if (known(answers.magnificationToleranceMm) === least) return 'magnification';
  return known(answers.sharpShorterMm) === least || known(answers.sharpLongerMm) === least ? 'sharpness' : 'place';
}

/** With the digits that a figure's own row has. */
const told = (answer: Answer, unit: string): string | undefined =>
  answer.state === 'known' ? `${earned(answer.value, answer.low, answer.high)}${unit && ` ${unit}`}` : undefined;
const mm = (answer: Answer): string | undefined => told(answer, 'mm');

/** What is worth knowing of infinity, in words. */
export function infinitySays(evaluation: TableEvaluation): string {
  return [tubeSays(evaluation), farSays(evaluation), coverSays(evaluation)].filter((text) => text !== '').join(' ');
}

/** The same where the steps stand beside it and say the rest. */
export const infinityBrief = (evaluation: TableEvaluation): string => tubeSays(evaluation);

/** How far away a thing has to be to stand for infinity, `12.2 m`; undefined where none may, or none is needed. */
export const farEnough = ({ answers }: TableEvaluation): string | undefined =>
  known(answers.tubeLongerMm) === 0 || known(answers.nearestThingM) === 0 ? undefined : told(answers.nearestThingM, 'm');

function tubeSays(evaluation: TableEvaluation): string {
  const { answers, pairing } = evaluation;
  const way = wayOf(pairing);
  const least = mm(answers.tubeToleranceMm);
  if (least === undefined) return 'How exactly infinity must be set is not known yet.';
  if (known(answers.tubeToleranceMm) === 0)
    return 'The sensor stands so far from the relay’s focus that spherical aberration already shows: bring it nearer to infinity.';
  const far = farEnough(evaluation);
  const turn =
    way === 'tube'
      ? []
      : [far === undefined ? 'Set the lens’s focus ring to infinity.' : `Set the lens’s focus ring; a far thing beyond ${far} will do.`];
  return [...turn, sharpSays(evaluation, way), magnificationSays(evaluation, way), placeSays(evaluation, way)]
    .filter((text) => text !== '')
    .join(' ');
}

function sharpSays({ answers }: TableEvaluation, way: Way): string {
  // Where it has no end the tolerance ends where the relay is no longer followed, and that is worth no word.
  const endless = ({ state }: Answer): boolean => state === 'none';
  const shorter = endless(answers.shortestOffsetMm) ? undefined : mm(answers.sharpShorterMm);
  const longer = endless(answers.longestOffsetMm) ? undefined : mm(answers.sharpLongerMm);
  const ends = [...(shorter ? [`${shorter} ${OUT[way].short}`] : []), ...(longer ? [`${longer} ${OUT[way].long}`] : [])].join(' or ');
  const subject = way === 'tube' ? 'a tube' : 'the sensor';
  return ends === ''
    ? `On axis the picture stays sharp ${way === 'tube' ? 'whatever the length of the tube' : 'however far the focus is off'}; the corners suffer first.`
    : `On axis the picture stays sharp with ${subject} up to ${ends}; the corners suffer first.`;
}

function magnificationSays(evaluation: TableEvaluation, way: Way): string {
  const { answers } = evaluation;
  const off = mm(answers.magnificationToleranceMm);
  if (off === undefined) return '';
  const share = set(evaluation, magnificationTolerance);
  const doubt = magnificationDoubt(answers.tubeMagnification);
  const moved = way === 'tube' ? `A tube wrong by ${off}` : `A sensor out of place by ${off}`;
  const known = doubt > share ? `, and the magnification itself is known only to ±${percent(doubt)}` : '';
  return `${moved} changes the magnification by ${percent(share)}, which matters only where scale is measured${known}.`;
}

/** The share by which a magnification is in doubt. */
function magnificationDoubt(answer: Answer): number {
  const [low, value, high] = interval(answer) ?? [1, 1, 1];
  return Math.max(value - low, high - value) / value;
}

/** Only where the subject's place ends the tolerance: it is refocused otherwise. */
function placeSays(evaluation: TableEvaluation, way: Way): string {
  if (tubeBites(evaluation) !== 'place') return '';
  const least = mm(evaluation.answers.tubeToleranceMm);
  return `The subject’s place errs first, by ${short(set(evaluation, shiftLimit))} mm with ${way === 'tube' ? 'a tube wrong' : 'a sensor out of place'} by ${least}.`;
}

/** A share of magnification that nobody sees. */
const UNSEEN = 0.0002;

function farSays(evaluation: TableEvaluation): string {
  const { answers, pairing } = evaluation;
  const [error, change] = [mm(answers.farErrorMm), known(answers.farMagnificationChange)];
  if (error === undefined || change === undefined) return '';
  const X = short(set(evaluation, farThing));
  const size =
    Math.abs(change) < UNSEEN
      ? 'the magnification as it was'
      : `${percent(Math.abs(change))} ${change < 0 ? 'less' : 'more'} magnification`;
  if (wayOf(pairing) === 'ring') return `Focused on something ${X} m away, the sensor stands ${error} ${OUT.ring.long}, with ${size}.`;
  const far = farEnough(evaluation);
  const least = far === undefined ? '' : `; anything beyond ${far} may stand for infinity`;
  return `A relay focused on something ${X} m away leaves the tube ${error} too long, with ${size}${least}.`;
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
  return `With ${over} where the objective wants ${wanted} the Strehl ratio is ${told(evaluation.answers.coverStrehl, '')}: ${sharp ? 'still sharp' : 'no longer sharp'}.`;
}
