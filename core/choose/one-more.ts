import type { Answer } from '../pairing/answer.ts';
import { differenceOf } from '../pairing/difference.ts';
import { type Evaluation, evaluate } from '../pairing/evaluate.ts';
import type { Glassworks } from '../pairing/glassworks.ts';
import type { FigureId } from '../pairing/registry.ts';
import type { Objective } from '../parts/objective.ts';
import type { Relay } from '../parts/relay.ts';
import { type Asked, type Offered, pairingAt } from './asked.ts';
import { BETTER } from './better.ts';
import { verifyOnArrival } from './buying.ts';
import { type Choice, choiceOf } from './choices.ts';
import { PRAISED } from './compared.ts';
import { rankable } from './covering.ts';
import { type Candidate, type Found, type Progress, searching } from './search.ts';
import { standingOf } from './standing.ts';

/** A figure of the best that one can do with what is owned, and of the best with one part more. */
export interface Shift {
  figure: FigureId;
  from: Answer;
  to: Answer;
  /** The second less the first, what they share moved in both at once. */
  difference: Answer;
}

/** What one part more would open, with what is owned already. */
export interface Opening {
  kind: 'objective' | 'relay';
  id?: string;
  part: Objective | Relay;
  price?: number;
  /** How many pairings with it meet every limit. */
  opens: number;
  /** The first of these, sorted as asked. */
  best: Choice;
  /** Against the best of what is owned, where that can do it at all: what is surely better, and what is surely worse. */
  gains: Shift[];
  loses: Shift[];
  /** What to look at when it arrives. */
  verify: string[];
}

export interface OneMore {
  /** What can be done with what is owned. */
  owned: { objectives: number; relays: number; feasible: number; best?: Choice };
  /** The parts not owned that open anything, sorted by the best that each opens. */
  openings: Opening[];
  /** How many parts were tried and open nothing, or gain nothing surely over what is owned. */
  others: number;
}

/** The figures by which two bests are held against each other. */
const HELD: readonly FigureId[] = ['goodFieldMm', ...PRAISED];

/** More openings than these help nobody. */
const MOST_OPENINGS = 12;

type Part = Offered<Objective> | Offered<Relay>;

/** Each part that is not owned, tried with all that is. Yields as it goes. */
export function* oneMore(asked: Asked, works?: Glassworks): Generator<Progress, OneMore, undefined> {
  const have = {
    objectives: asked.objectives.filter(({ owned }) => owned),
    relays: asked.relays.filter(({ owned }) => owned),
  };
  const tries: Trial[] = [
    ...asked.objectives
      .filter(({ owned }) => !owned)
      .map((part): Trial => ({ kind: 'objective', part, asked: { ...asked, ...have, objectives: [part] } })),
    ...asked.relays
      .filter(({ owned }) => !owned)
      .map((part): Trial => ({ kind: 'relay', part, asked: { ...asked, ...have, relays: [part] } })),
  ];
  const of = tries.length + 1;
  const now = yield* stepwise({ ...asked, ...have }, works, 0, of);
  const best = now.best[0] && worked({ ...asked, ...have }, now.best[0], works);

  const opened: { trial: Trial; found: Found; first: Candidate }[] = [];
  for (const [i, trial] of tries.entries()) {
    const found = yield* stepwise(trial.asked, works, i + 1, of);
    const first = found.best[0];
    if (first) opened.push({ trial, found, first });
  }
  // A stable sort: what is equal stays in the order of the lists.
  opened.sort((a, b) => (a.first.key === b.first.key ? 0 : a.first.key < b.first.key ? -1 : 1));
  const openings: Opening[] = [];
  let idle = 0;
  for (const { trial, found, first } of opened) {
    if (openings.length === MOST_OPENINGS) break;
    const opening = openingOf(trial, found, worked(trial.asked, first, works), best);
    // What gains nothing surely is nothing to buy.
    if (!best || opening.gains.length > 0) openings.push(opening);
    else idle++;
    yield { done: of, of };
  }
  return {
    owned: {
      objectives: have.objectives.length,
      relays: have.relays.length,
      feasible: now.feasible,
      ...(best ? { best: best.choice } : {}),
    },
    openings,
    others: tries.length - opened.length + idle,
  };
}

interface Trial {
  kind: Opening['kind'];
  part: Part;
  asked: Asked;
}

/** A search as one step of many. */
function* stepwise(asked: Asked, works: Glassworks | undefined, done: number, of: number): Generator<Progress, Found, undefined> {
  const search = searching({ ...asked, most: 1 }, works);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
    yield { done, of };
  }
}

interface Worked {
  evaluation: Evaluation;
  choice: Choice;
}

function worked(asked: Asked, candidate: Candidate, works?: Glassworks): Worked {
  const evaluation = evaluate(pairingAt(asked, candidate.place), works);
  return { evaluation, choice: choiceOf(asked, candidate, evaluation, { onFrontier: false, level: false, tie: false }) };
}

function openingOf({ kind, part }: Trial, { feasible }: Found, { evaluation, choice }: Worked, best: Worked | undefined): Opening {
  const shifts = best ? shiftsOf(best.evaluation, evaluation) : [];
  return {
    kind,
    ...(part.id === undefined ? {} : { id: part.id }),
    part: part.part,
    ...(part.price === undefined ? {} : { price: part.price }),
    opens: feasible,
    best: choice,
    gains: shifts.filter((shift) => surely(shift, BETTER[shift.figure] === 'more')),
    loses: shifts.filter((shift) => surely(shift, BETTER[shift.figure] === 'less')),
    verify: [...verifyOnArrival(part.part)],
  };
}

function shiftsOf(a: Evaluation, b: Evaluation): Shift[] {
  const difference = differenceOf(a, b, HELD);
  return HELD.map((figure) => ({
    figure,
    from: rankable(a.answers, figure),
    to: rankable(b.answers, figure),
    difference: difference[figure],
  }));
}

/** Whether a figure surely rises, or surely falls, by the rule of pairings abreast. */
const surely = ({ difference, from, to }: Shift, rises: boolean): boolean => standingOf(difference, from, to) === (rises ? 'more' : 'less');
