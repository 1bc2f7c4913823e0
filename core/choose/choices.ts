import type { Answer } from '../pairing/answer.ts';
import { differenceOf } from '../pairing/difference.ts';
import { type Evaluation, evaluate } from '../pairing/evaluate.ts';
import type { Glassworks } from '../pairing/glassworks.ts';
import type { Circle } from '../pairing/image-circles.ts';
import { FIGURE_IDS, type FigureId } from '../pairing/registry.ts';
import type { Pairing } from '../pairing/schema.ts';
import { coverageOf } from '../pairing/verdict.ts';
import { type Asked, pairingAt, priceOf } from './asked.ts';
import { rankable } from './covering.ts';
import { type LimitAnswer, limitAnswers } from './limit-answers.ts';
import { limitsOf } from './limits.ts';
import { type NearMiss, nearMissOf } from './near.ts';
import { lineOf } from './reasons.ts';
import { before, type Candidate, type Progress, type Standing, type Stopped, searching } from './search.ts';
import { standingOf } from './standing.ts';
import { cautionsFor, type Ids, idsOf, partsAt, type ToldPrice, toldPrice } from './told.ts';

/** One pairing that meets every limit, and why it is told. */
export interface Choice extends ToldPrice {
  pairing: Pairing;
  ids: Ids;
  figures: Record<FigureId, Answer>;
  limits: LimitAnswer[];
  /** The limit that it meets by the least. */
  bites?: LimitAnswer['name'];
  onFrontier?: boolean;
  /** Where each two parts are told once: the infinity spaces at which they meet every limit. */
  spacesMm?: number[];
  /** Level with the one before it in what the list is sorted by: they differ by less than the ± of their difference, or by less than anybody would see. */
  levelWithPrevious?: boolean;
  /** Level with it in every figure that is asked about: limits, frontier and sort. A tie on paper. */
  tieWithPrevious?: boolean;
  /** The circles that are not known: they count for nothing. */
  unknown: Circle[];
  /** Why it is here, in one line. */
  line: string;
  cautions: string[];
}

export interface Choices {
  considered: number;
  /** Of these, how many contradict themselves and are no pairings. */
  impossible: number;
  feasible: number;
  /** Of the feasible, how many have a part to be bought whose price is not known. */
  unpriced: number;
  /** How many stand on the frontier. */
  frontier: number;
  /** How many pairings each limit stops, alone or with others. */
  stopped: Stopped;
  choices: Choice[];
  nearMisses: NearMiss[];
}

/** Of a larger frontier so many are told, from end to end. */
const MOST_OF_FRONTIER = 24;

/**
 * The choices that a search comes to: its best, sorted, and its frontier among them, each worked out whole; and what
 * comes near. Yields as it goes.
 */
export function* choosing(asked: Asked, works?: Glassworks): Generator<Progress, Choices, undefined> {
  const found = yield* searching(asked, works);
  const done: Progress = { done: found.considered, of: found.considered };
  const frontier = new Set(found.frontier.map(({ turn }) => turn));
  const told = merged(found.best, endToEnd(found.frontier));
  const choices: Choice[] = [];
  let previous: Evaluation | undefined;
  for (const candidate of told) {
    const evaluation = evaluate(pairingAt(asked, candidate.place), works);
    const level = previous ? levelIn(asked, previous, evaluation) : [];
    choices.push(choiceOf(asked, candidate, evaluation, { onFrontier: frontier.has(candidate.turn), ...standsTo(asked, level) }));
    previous = evaluation;
    yield done;
  }
  const nearMisses: NearMiss[] = [];
  for (const short of found.near) {
    nearMisses.push(nearMissOf(asked, short, works));
    yield done;
  }
  const { considered, impossible, feasible, unpriced, stopped } = found;
  return { considered, impossible, feasible, unpriced, frontier: frontier.size, stopped, choices, nearMisses };
}

/** Two lists in one order as one, each candidate once. */
function merged(a: readonly Candidate[], b: readonly Candidate[]): Candidate[] {
  const byTurn = new Map([...b, ...a].map((candidate) => [candidate.turn, candidate]));
  return [...byTurn.values()].sort(before);
}

/** What a search asks about: the figures of its limits, of its frontier, and the one it is sorted by. */
const inQuestion = ({ want, frontier, sort }: Asked): FigureId[] => [
  ...new Set([...limitsOf(want).map(({ figure }) => figure), ...frontier, ...(sort.by === 'price' ? [] : [sort.by])]),
];

/** Of the figures in question those in which two are level, by the rule of pairings abreast. */
function levelIn(asked: Asked, a: Evaluation, b: Evaluation): FigureId[] {
  const ids = inQuestion(asked);
  const difference = differenceOf(a, b, ids);
  return ids.filter((id) => standingOf(difference[id], rankable(a.answers, id), rankable(b.answers, id)) === 'level');
}

const standsTo = (asked: Asked, level: readonly FigureId[]): { level: boolean; tie: boolean } => ({
  level: asked.sort.by !== 'price' && level.includes(asked.sort.by),
  tie: level.length > 0 && level.length === inQuestion(asked).length,
});

/** The frontier from one end of its first figure to the other: of equal rows the first, of too many evenly spaced ones. */
function endToEnd(frontier: readonly Standing[]): Standing[] {
  const rows = new Map<string, Standing>();
  for (const member of frontier) {
    const key = member.row.map((x) => x.toPrecision(9)).join(' ');
    if (!rows.has(key)) rows.set(key, member);
  }
  const along = [...rows.values()].toSorted((a, b) => (a.row[0] as number) - (b.row[0] as number));
  if (along.length <= MOST_OF_FRONTIER) return along;
  return Array.from(
    { length: MOST_OF_FRONTIER },
    (_, i) => along[Math.round((i * (along.length - 1)) / (MOST_OF_FRONTIER - 1))] as Standing,
  );
}

/** @param stands how it stands among the others that are told */
export function choiceOf(
  asked: Asked,
  { place, spacesMm }: Candidate,
  evaluation: Evaluation,
  { onFrontier, level, tie }: { onFrontier: boolean; level: boolean; tie: boolean },
): Choice {
  const [objective, relay] = partsAt(asked, place);
  const price = priceOf(objective, relay);
  const limits = limitAnswers(asked.want, evaluation.answers, price);
  const bites = limits.filter(({ margin }) => margin !== undefined).toSorted((a, b) => (a.margin as number) - (b.margin as number))[0];
  const unknown = coverageOf(evaluation).unknown;
  return {
    pairing: evaluation.pairing,
    ids: idsOf(objective, relay),
    figures: Object.fromEntries(FIGURE_IDS.map((id) => [id, evaluation.answers[id]])) as Choice['figures'],
    limits,
    ...(bites ? { bites: bites.name } : {}),
    ...toldPrice(price),
    ...(onFrontier ? { onFrontier } : {}),
    ...(spacesMm ? { spacesMm: [...spacesMm] } : {}),
    ...(level ? { levelWithPrevious: true } : {}),
    ...(tie ? { tieWithPrevious: true } : {}),
    unknown,
    line: lineOf({ limits, bites, onFrontier, tie }),
    cautions: cautionsFor(asked, evaluation),
  };
}
