import { amount } from '../parts/quantity.ts';
import { diagonalOf } from '../parts/sensor.ts';
import type { Cut } from '../pupil/cuts.ts';
import { capital, listed, short } from '../words.ts';
import { numberIn } from './answer.ts';
import { RELAY_RIM } from './aperture.ts';
import { cornerLight, lightBesides } from './corner-light.ts';
import type { Evaluation } from './evaluate.ts';
import { nameOf } from './phrases.ts';
import { remedy } from './remedy.ts';
import { laidOn, subjectSize } from './subject.ts';
import { CIRCLE_FIGURE, type Coverage, circleName } from './verdict.ts';

/** Of the inputs that a verdict hangs on so many are named. */
const NAMED = 2;

/**
 * The answer in words: magnification, what is reached, what bites and by how much, what would mend
 * it, and what is not known. Every number in it is a figure of the same report, rounded.
 */
export function sentenceOf(evaluation: Evaluation, coverage: Coverage, cuts: readonly Cut[]): string {
  const parts = [
    lead(evaluation, coverage, cuts),
    lightBesides(evaluation, coverage),
    remedy(evaluation, coverage, cuts),
    ...notKnown(coverage),
    subject(evaluation, coverage),
  ];
  return parts.filter(Boolean).join(' ');
}

const mm = (x: number): string => `${short(x)} mm`;

/** Distance between a circle's edge and the corners, mm. */
function margin({ answers, pairing }: Evaluation, circle: keyof typeof CIRCLE_FIGURE): number {
  const d = numberIn(answers[CIRCLE_FIGURE[circle]]) as number;
  return Math.abs(d - diagonalOf(pairing.sensor)) / 2;
}

function lead(evaluation: Evaluation, coverage: Coverage, cuts: readonly Cut[]): string {
  const at = `At ${short(numberIn(evaluation.answers.systemMagnification) as number)}×`;
  const bite = coverage.bites ? grounds(evaluation, coverage, cuts) : '';
  const [w, h] = coverage.largestCropMm;
  const middle = `the middle ${short(w)} × ${mm(h)}`;
  switch (coverage.verdict) {
    case 'covers':
      return `${at} the picture is covered to the corners, ${field(evaluation)} of subject${reach(evaluation)}.`;
    case 'crops':
      return `${at}, keep ${middle} of the picture: ${bite}.`;
    case 'misses':
      return `${at} this pairing misses the sensor${w > 0 ? `, only ${middle} of it counts` : ''}: ${bite}.`;
    case 'undecided':
      if (coverage.between?.[1] === 'crops')
        return `${at}, keep ${middle} of the picture, and whether that is half of its width hangs on ${listed(coverage.hangsOn.slice(0, NAMED).map(nameOf))}: ${bite}.`;
      if (coverage.hangsOn.length === 0)
        return `${at} the picture shows ${field(evaluation)}, and whether it is good to the corners is open${bite ? `: ${bite}` : ''}.`;
      return `${at}, whether the corners are covered hangs on ${listed(coverage.hangsOn.slice(0, NAMED).map(nameOf))}: ${bite}.`;
  }
}

function field({ answers }: Evaluation): string {
  return `${short(numberIn(answers.objectFieldWidthMm) as number)} × ${mm(numberIn(answers.objectFieldHeightMm) as number)}`;
}

/** How far the objective's field goes beyond the corners, where it is known. */
function reach(evaluation: Evaluation): string {
  const field = evaluation.answers.correctedCircleMm;
  if (field.state !== 'known') return '';
  return `: the objective's field${typical(evaluation)} reaches ${mm(margin(evaluation, 'corrected'))} past them`;
}

const typical = ({ inputs }: Evaluation): string =>
  inputs.some((input) => input.path === '/objective/fieldNumberMm' && input.origin === 'assumed') ? ', taken as typical,' : '';

/** The limit that bites and its margin. */
function grounds(evaluation: Evaluation, { bites, hangsOn }: Coverage, cuts: readonly Cut[]): string {
  const d = numberIn(evaluation.answers[CIRCLE_FIGURE[bites as 'lit']]) as number;
  const falls = d < diagonalOf(evaluation.pairing.sensor);
  const ends = (): string =>
    `${falls ? 'ends' : 'reaches'} ${mm(margin(evaluation, bites as 'lit'))} ${falls ? 'short of' : 'past'} the corners`;
  switch (bites) {
    case 'corrected':
      return `the objective's field${typical(evaluation)} ${ends()}`;
    case 'sharp':
      return d > 0 ? `${circleName(evaluation.pairing, 'sharp')} ${ends()}` : 'the relay is not sharp enough even in the middle';
    default:
      return `${culprit(evaluation, cuts)} leaves the corners ${cornerLight(evaluation, hangsOn.slice(0, NAMED))}`;
  }
}

function culprit({ pairing }: Evaluation, cuts: readonly Cut[]): string {
  const worst = cuts[0];
  if (!worst) return 'the pairing';
  const rim = pairing.relay.clearApertureMm;
  return worst.stop === RELAY_RIM && rim !== undefined ? `the relay's ${short(amount(rim))} mm rim` : worst.stop;
}

const NOT_KNOWN = {
  corrected: 'How far the objective stays corrected is not known: give its field number.',
  lit: '',
  sharp: 'How sharp the relay is out there is not known.',
} as const;

const notKnown = ({ unknown }: Coverage): string[] => unknown.map((c) => NOT_KNOWN[c]);

function subject({ pairing, answers }: Evaluation, coverage: Coverage): string {
  const s = coverage.subject;
  const box = subjectSize(pairing.subject, numberIn(answers.systemMagnification) as number);
  if (!s || !box) return '';
  const [w, h] = laidOn(pairing.sensor, box);
  const size = `The subject, ${short(w)} × ${mm(h)} on the sensor,`;
  if (!s.fits) return `${size} is larger than the picture.`;
  const said = {
    covers: 'is covered',
    crops: 'is not covered to its edges',
    misses: 'is mostly not covered',
    undecided: 'may or may not be covered',
  } as const;
  return capital(`${size} ${said[s.verdict]}.`);
}
