import { amount } from '../parts/quantity.ts';
import { diagonalOf } from '../parts/sensor.ts';
import type { Cut } from '../pupil/cuts.ts';
import { relativeIllumination } from '../pupil/illumination.ts';
import { scaleOf, seenStops } from '../pupil/stops.ts';
import { article, atLeast, atMost, capital, listed, percent, short } from '../words.ts';
import { interval, numberIn } from './answer.ts';
import { RELAY_RIM } from './aperture.ts';
import type { Circle } from './coverage.ts';
import { type Evaluation, stopsOf } from './evaluate.ts';
import { GLASS } from './inputs.ts';
import { nameOf, resolving } from './phrases.ts';
import { TOLD } from './registry.ts';
import { laidOn, subjectSize } from './subject.ts';
import { CIRCLE_FIGURE, type Coverage, circleName } from './verdict.ts';

/** Of the inputs that a verdict hangs on so many are named. */
const NAMED = 2;

const CORNER = TOLD.findIndex((f) => f.id === 'cornerIllumination');

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

/** The part of the doubt, as squares, that one input must make to be named alone. */
const MAIN_PART = 0.7;
/** Narrower spreads than this are not worth words. */
const TOLD_SPREAD = 0.05;

const share = (E: number): string =>
  E < 0.001 ? 'no light' : E >= 0.9995 ? 'all of the light' : `${percent(Math.min(E, 0.99))} of the light`;
const bare = (E: number): string => (E < 0.001 ? 'nothing' : E >= 0.9995 ? 'all' : percent(Math.min(E, 0.99)));

/** Both ends with one sign where both are per cent. */
const between = (low: number, high: number): string => `${bare(high) === 'all' ? bare(low) : bare(low).replace(' %', '')} to ${bare(high)}`;

/**
 * The corner's light and what it may be. What narrows it down is named where one input makes nearly all of
 * the doubt, and only once: `named` are those that the sentence has named already.
 */
function cornerLight({ answers, spread }: Evaluation, named?: readonly string[]): string {
  const E = answers.cornerIllumination;
  if (E.state !== 'known') return 'an unknown share of the light';
  const low = E.low ?? E.value;
  const high = E.high ?? E.value;
  if (high - low < TOLD_SPREAD) return share(E.value);
  const pull = (m: (typeof spread.moves)[number]): number => Math.max(m.up[CORNER] as number, m.down[CORNER] as number);
  const most = spread.moves.toSorted((a, b) => pull(b) - pull(a))[0];
  if (most?.input.path === GLASS) return `${share(E.value)}, or ${bare(low)} by the way the relay maps angles`;
  const others = spread.moves.filter((m) => m !== most).reduce((sum, m) => sum + pull(m) ** 2, 0);
  const alone = named && most && !named.includes(most.input.path) && pull(most) ** 2 >= MAIN_PART * (pull(most) ** 2 + others);
  const may =
    E.value >= 0.9995
      ? `or as little as ${bare(low)}`
      : E.value < 0.001
        ? `or as much as ${bare(high)}`
        : `anywhere from ${between(low, high)}`;
  return `${share(E.value)}, ${may}${alone ? ` until you ${resolving(most.input.path)}` : ''}`;
}

/** The light in the corners, where it is not what bites. */
function lightBesides(evaluation: Evaluation, coverage: Coverage): string {
  const E = evaluation.answers.cornerIllumination;
  if (coverage.bites === 'lit') return '';
  if (E.state !== 'known') return "How much light the corners get is not known: give the relay's clear opening.";
  if (E.value >= 0.9995 && (E.low ?? 1) > 1 - TOLD_SPREAD) return 'Light reaches the corners fully.';
  return `The corners get ${cornerLight(evaluation)}.`;
}

/** Infinity spaces and relays beyond these are no remedy that anybody could build, mm. */
const LEAST_SPACE = 5;
const MOST_SPACE = 400;
const MOST_FOCAL_LENGTH = 1000;
/** A relay must be this much longer, as a factor, to be another one. */
const LONGER = 1.0005;
/** A spread wider than this is worth a second number. */
const TELLING = 0.01;

/** The single change that would do, where there is one. */
function remedy(evaluation: Evaluation, { verdict, bites }: Coverage, cuts: readonly Cut[]): string {
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
