import { amount } from '../parts/quantity.ts';
import { diagonalOf } from '../parts/sensor.ts';
import { percent, short } from '../words.ts';
import { numberIn } from './answer.ts';
import type { Evaluation } from './evaluate.ts';
import type { Circle } from './image-circles.ts';
import { CIRCLE_FIGURE, type Coverage } from './verdict.ts';

/** What a doubt is called where there is room for two or three words, by the last step of its path. */
const DOUBTS: Record<string, string> = {
  magnification: 'the true magnification',
  na: 'the aperture',
  referenceFocalLengthMm: 'the tube length',
  fieldNumberMm: 'the field number',
  testedFieldMm: 'the tested field',
  exitPupilFromShoulderMm: 'the exit pupil',
  focalLengthMm: 'the focal length',
  powerDioptre: 'the dioptres',
  clearApertureMm: 'the clear opening',
  entrancePupilDiameterMm: 'the entrance pupil',
  fNumber: 'the f-number',
  entrancePupilDepthMm: "the pupil's depth",
  imageCircleMm: 'the rated circle',
  frontPrincipalPlaneFromRimMm: 'the principal plane',
  infinitySpaceMm: 'the infinity space',
  sensorOffsetMm: 'the focus',
  diameterMm: "a ring's opening",
  fromShoulderMm: "a ring's place",
  fromSensorMm: "a tube's place",
  throatDiameterMm: 'the throat',
  registerMm: 'the register',
  glass: 'the glass',
};

const doubt = (path: string): string => DOUBTS[path.slice(path.lastIndexOf('/') + 1)] ?? 'a guess';

/** What a circle is called here. */
const CIRCLE = { corrected: 'the field', lit: 'the light', sharp: 'sharpness' } as const satisfies Record<Circle, string>;

/** A margin that nobody counts any more, mm. */
const AMPLE = 100;

/** The answer in one short line, about 45 characters at most: for a narrow window while a handle is moved. */
export function briefOf(evaluation: Evaluation, coverage: Coverage): string {
  const at = `${short(numberIn(evaluation.answers.systemMagnification) as number)}×: `;
  const [w, h] = coverage.largestCropMm;
  switch (coverage.verdict) {
    case 'covers':
      return `${at}covers${coverage.subject?.fits === false ? ', subject larger than the picture' : toSpare(evaluation)}`;
    case 'crops':
      return `${at}keep ${short(w)} × ${short(h)} of ${sides(evaluation)
        .map((x) => short(x))
        .join(' × ')} mm`;
    case 'misses':
      return `${at}misses${coverage.bites ? `, ${shortfall(evaluation, coverage.bites)}` : ''}`;
    case 'undecided':
      return `${at}undecided, ${open(evaluation, coverage)}`;
  }
}

const sides = ({ pairing: { sensor } }: Evaluation): number[] => [amount(sensor.widthMm), amount(sensor.heightMm)];

/** From the corners to the nearest circle that is known. */
function toSpare({ answers, pairing }: Evaluation): string {
  const nearest = Math.min(...Object.values(CIRCLE_FIGURE).map((id) => numberIn(answers[id]) ?? Number.POSITIVE_INFINITY));
  const spare = (nearest - diagonalOf(pairing.sensor)) / 2;
  return spare < AMPLE ? `, ${short(Math.max(0, spare), 2)} mm to spare` : '';
}

function shortfall(evaluation: Evaluation, circle: Circle): string {
  if (circle === 'lit') return light(evaluation);
  const d = numberIn(evaluation.answers[CIRCLE_FIGURE[circle]]) as number;
  if (d === 0) return 'sharp nowhere';
  return `${CIRCLE[circle]} ends ${short((diagonalOf(evaluation.pairing.sensor) - d) / 2)} mm short`;
}

function light({ answers }: Evaluation): string {
  const E = answers.cornerIllumination;
  if (E.state !== 'known') return "the corners' light is not known";
  return `corners get ${E.value < 0.001 ? 'no light' : E.value >= 0.9995 ? 'all the light' : percent(Math.min(E.value, 0.99))}`;
}

function open(evaluation: Evaluation, { hangsOn, bites, unknown }: Coverage): string {
  if (hangsOn[0]) return `hangs on ${doubt(hangsOn[0])}`;
  if (bites) return shortfall(evaluation, bites);
  return `${CIRCLE[unknown[0] ?? 'corrected']} is not known`;
}
