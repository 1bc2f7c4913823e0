import { amount } from '../parts/quantity.ts';
import { diagonalOf } from '../parts/sensor.ts';
import type { Cut } from '../pupil/cuts.ts';
import { relativeIllumination } from '../pupil/illumination.ts';
import { scaleOf, seenStops } from '../pupil/stops.ts';
import { article, atLeast, atMost, capital, percent, short } from '../words.ts';
import { interval, numberIn } from './answer.ts';
import { type Evaluation, stopsOf } from './evaluate.ts';
import type { Circle } from './image-circles.ts';
import { CIRCLE_FIGURE, type Coverage } from './verdict.ts';

/** Infinity spaces and relays beyond these are no remedy that anybody could build, mm. */
const LEAST_SPACE = 5;
const MOST_SPACE = 400;
const MOST_FOCAL_LENGTH = 1000;
/** A relay must be this much longer, as a factor, to be another one. */
const LONGER = 1.0005;
/** A spread wider than this is worth a second number. */
const TELLING = 0.01;

/** The single change that would do, where there is one. */
export function remedy(evaluation: Evaluation, { verdict, bites }: Coverage, cuts: readonly Cut[]): string {
  if (verdict === 'covers' || !bites) return '';
  if (bites === 'sharp') return evaluation.pairing.relay.glass ? MAY_DO_BETTER : ratedRemedy(evaluation) || longerRelay(evaluation);
  const longer = longerRelay(evaluation);
  if (bites === 'corrected') return longer || noRelay(evaluation);
  const { infinitySpaceMm: space, diameterMm: opening } = cuts[0]?.clearsAt ?? {};
  const here = amount(evaluation.pairing.infinitySpaceMm);
  if (space !== undefined && space >= LEAST_SPACE && space <= MOST_SPACE)
    return `With an infinity space of ${(space < here ? atMost : atLeast)(space)} mm instead of ${short(here)} they would get all of it.`;
  // Nobody makes a relay faster than f/1.
  if (opening !== undefined && opening <= (numberIn(evaluation.answers.relayFocalLengthMm) as number))
    return `An opening of ${atLeast(opening)} mm there would give them all of it.`;
  return nearer(evaluation) || longer || (cuts.length > 0 ? 'No single change clears them.' : '');
}

/** As near as a relay can be screwed to most objectives, mm (common practice, without source). */
const NEAR_SPACE = 20;
/** More light in the corners than this is worth moving the relay for. */
const WORTH = 0.1;

/** What the corners would get with the relay as near as can be, where no space gives them all of it. */
function nearer({ pairing, sheet, answers }: Evaluation): string {
  const given = stopsOf(sheet)?.rig;
  const E = numberIn(answers.cornerIllumination) ?? 1;
  if (!given || amount(pairing.infinitySpaceMm) <= NEAR_SPACE || given.stops.some((s) => s.place === 'shoulder' && s.atMm > NEAR_SPACE))
    return '';
  const rig = { ...given, infinitySpaceMm: NEAR_SPACE };
  const there = relativeIllumination(seenStops(rig), diagonalOf(pairing.sensor) / 2 / scaleOf(rig));
  return there - E > WORTH
    ? `With an infinity space of ${NEAR_SPACE} mm instead of ${short(amount(pairing.infinitySpaceMm))} they would get ${percent(there)}.`
    : '';
}

const reaches = (evaluation: Evaluation, circle: Circle): boolean | undefined => {
  const d = numberIn(evaluation.answers[CIRCLE_FIGURE[circle]]);
  return d === undefined ? undefined : d >= diagonalOf(evaluation.pairing.sensor);
};

/** Both ways round over all spacings are a search of their own. */
const MAY_DO_BETTER = 'Turned round, or at another spacing, the same glass may do better.';

/** A better rating helps only where field and light reach the corners as it is. */
const ratedRemedy = (evaluation: Evaluation): string =>
  reaches(evaluation, 'corrected') !== false && reaches(evaluation, 'lit') !== false
    ? `A relay rated for ${atLeast(diagonalOf(evaluation.pairing.sensor))} mm would cover.`
    : '';

/** The relay that field and light ask for; what its own rating must be where this one's falls short. */
function longerRelay(evaluation: Evaluation): string {
  const shortest = evaluation.answers.shortestCoveringFocalLengthMm;
  const here = numberIn(evaluation.answers.relayFocalLengthMm) as number;
  if (shortest.state !== 'known') return '';
  const sure =
    shortest.high !== undefined && shortest.high <= MOST_FOCAL_LENGTH && onlyFieldInDoubt(evaluation) ? shortest.high : undefined;
  const softer = reaches(evaluation, 'sharp') === false;
  const rated = !softer
    ? ''
    : evaluation.pairing.relay.glass
      ? ', if it is sharp out there'
      : `, if it is rated for ${atLeast(diagonalOf(evaluation.pairing.sensor))} mm`;
  if (shortest.value <= here * LONGER)
    return sure !== undefined && sure > here * LONGER ? `One that measures ${atLeast(sure)} mm would surely cover${rated}.` : '';
  if (shortest.value > MOST_FOCAL_LENGTH) return '';
  const surely = sure !== undefined && sure > shortest.value * (1 + TELLING) ? `, one that measures ${atLeast(sure)} mm surely` : '';
  return `${relayOf(shortest.value)} would cover${rated}${surely}.`;
}

/**
 * Whether every circle but the objective's field surely reaches the corners, or is not known, with the sensor
 * in the focus. Only then does the ± of the shortest relay say what surely covers: a longer relay moves the
 * light's own ± too. It is the ± of the field alone, so that the relay is one whose length has been measured.
 */
const onlyFieldInDoubt = ({ answers, pairing }: Evaluation): boolean =>
  pairing.sensorOffsetMm === undefined &&
  (['lit', 'sharp'] as const).every(
    (c) => (interval(answers[CIRCLE_FIGURE[c]])?.[0] ?? Number.POSITIVE_INFINITY) >= diagonalOf(pairing.sensor),
  );

/** Said where no relay is long enough, or none that is could be lit. */
function noRelay({ answers: { shortestCoveringFocalLengthMm: shortest } }: Evaluation): string {
  if (shortest.state === 'none') return 'No longer relay alone would cover.';
  return shortest.state === 'known' && shortest.value > MOST_FOCAL_LENGTH ? `No relay up to ${MOST_FOCAL_LENGTH} mm would cover.` : '';
}

const relayOf = (length: number): string => `${capital(article(atLeast(length)))} ${atLeast(length)} mm relay`;
