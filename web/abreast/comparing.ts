import {
  type Answer,
  COMPARED,
  type ComparedId,
  type Differing,
  diagonalOf,
  differing,
  type Evaluation,
  evaluate,
  type Glassworks,
  type Pairing,
  PairingError,
  rankable,
  relativeIllumination,
  scaleOf,
  stopsOf,
} from '../../core/index.ts';
import { type Differences, DRAWN, type Each, LIGHT_STEPS, type Worked } from './compare-task.ts';

/** Something that has been worked out, or how far it is. */
export type Step = { done: number; of: number } | { each: readonly Each[] } | { differences: Differences };

/** What is kept of the pairings that were compared last: those that stay are not worked out anew. */
export interface Memory {
  evaluations: Map<string, Evaluation | { problems: PairingError['problems'] }>;
  pairs: Map<string, Readonly<Record<ComparedId, Answer>>>;
}

export const emptyMemory = (): Memory => ({ evaluations: new Map(), pairs: new Map() });

let differ: Differing<ComparedId> | undefined;

/** Works out each pairing, then each pair; a step after each. */
export function* comparing(pairings: readonly Pairing[], works: Glassworks | undefined, memory: Memory): Generator<Step, void> {
  const keys = pairings.map((pairing) => JSON.stringify(pairing));
  const of = pairings.length + (pairings.length * (pairings.length - 1)) / 2;
  let done = 0;
  const evaluations: Memory['evaluations'] = new Map();
  for (const [i, key] of keys.entries()) {
    evaluations.set(key, memory.evaluations.get(key) ?? judged(pairings[i] as Pairing, works));
    yield { done: ++done, of };
  }
  memory.evaluations = evaluations;
  yield { each: keys.map((key) => told(evaluations.get(key) as Evaluation)) };

  const sound = keys.filter((key) => 'sheet' in (evaluations.get(key) as object));
  const pairs: Memory['pairs'] = new Map();
  differ ??= differing(COMPARED);
  const rows: Readonly<Record<ComparedId, Answer>>[][] = [];
  for (const [i, from] of sound.entries()) {
    const row: Readonly<Record<ComparedId, Answer>>[] = [];
    for (const other of sound.slice(i + 1)) {
      const key = `${from} ${other}`;
      const pair = memory.pairs.get(key) ?? differ(evaluations.get(from) as Evaluation, evaluations.get(other) as Evaluation);
      pairs.set(key, pair);
      row.push(pair);
      yield { done: ++done, of };
    }
    rows.push(row);
  }
  memory.pairs = pairs;
  yield { differences: rows };
}

function judged(pairing: Pairing, works: Glassworks | undefined): Evaluation | { problems: PairingError['problems'] } {
  try {
    return evaluate(pairing, works);
  } catch (error) {
    if (error instanceof PairingError) return { problems: error.problems };
    throw error;
  }
}

function told(evaluation: Evaluation | { problems: PairingError['problems'] }): Each {
  if ('problems' in evaluation) return { problems: evaluation.problems };
  const { answers, pairing, sheet } = evaluation;
  const stops = stopsOf(sheet);
  const corner = diagonalOf(pairing.sensor) / 2;
  return {
    answers: Object.fromEntries([...COMPARED, ...DRAWN].map((id) => [id, rankable(answers, id)])) as Worked['answers'],
    light:
      stops &&
      Array.from({ length: LIGHT_STEPS + 1 }, (_, i) => relativeIllumination(stops.seen, (corner * i) / LIGHT_STEPS / scaleOf(stops.rig))),
  };
}
