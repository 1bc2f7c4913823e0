import { Gap } from '../../figure.ts';
import { graph } from '../../graph.ts';
import { LeafValues } from '../../leaf-values.ts';
import { contradictions } from '../../pairing/contradictions.ts';
import { depthOfFieldUm } from '../../pairing/depth-of-field.ts';
import { systemMagnification } from '../../pairing/first-order.ts';
import type { Glassworks } from '../../pairing/glassworks.ts';
import { glassRelay } from '../../pairing/leaves.ts';
import { nameOf } from '../../pairing/phrases.ts';
import type { Pairing } from '../../pairing/schema.ts';
import type { Objective } from '../../parts/objective.ts';
import { amount } from '../../parts/quantity.ts';
import { listed } from '../../words.ts';
import { inputsOnTable, type Settings } from '../evaluate.ts';
import { framesInAll } from './counts.ts';
import { railTravelMm, stackTimeS } from './course.ts';
import { frameStepUm } from './steps.ts';

/** Rows that one table has at most. */
export const MOST_OBJECTIVES = 60;

/** One objective in the pairing's place; what is left out is not known or does not exist. */
export interface ObjectiveStack {
  name: string;
  magnification?: number;
  depthUm?: number;
  stepUm?: number;
  frames?: number;
  railTravelMm?: number;
  timeS?: number;
  /** Why there are no frames. */
  why?: string;
}

const COLUMNS = {
  magnification: systemMagnification,
  depthUm: depthOfFieldUm,
  stepUm: frameStepUm,
  frames: framesInAll,
  railTravelMm,
  timeS: stackTimeS,
} as const;
const GRAPH = graph(Object.values(COLUMNS));

export const objectiveName = ({ name, magnification, na }: Objective): string => name ?? `${amount(magnification)}×/${amount(na)}`;

/**
 * The stack of the pairing's subject with each of these objectives in its place, the fewest frames first; those that
 * cannot stand there, or have no frames, last, with the reason, the weakest of them first. Values without their ±. The field curves as it was seen, if it was:
 * no glass is traced.
 */
export function stackByObjective(
  pairing: Pairing,
  settings: Settings,
  objectives: readonly Objective[],
  works?: Glassworks,
): ObjectiveStack[] {
  const rows = objectives.slice(0, MOST_OBJECTIVES).map((objective) => rowOf({ ...pairing, objective }, settings, works));
  return rows.sort((a, b) => up(a.frames, b.frames) || up(a.magnification, b.magnification));
}

/** The lesser first, what is not known last; two that are not known differ by NaN, which sorts as alike. */
const up = (a = Number.POSITIVE_INFINITY, b = Number.POSITIVE_INFINITY): number => a - b;

/** The `most` rows whose magnification is nearest to this, as a ratio; rows without one are farthest. */
export function nearestIn(rows: readonly ObjectiveStack[], magnification: number, most: number): ReadonlySet<ObjectiveStack> {
  const far = (row: ObjectiveStack): number | undefined => row.magnification && Math.abs(Math.log(row.magnification / magnification));
  return new Set([...rows].sort((a, b) => up(far(a), far(b))).slice(0, most));
}

function rowOf(pairing: Pairing, settings: Settings, works: Glassworks | undefined): ObjectiveStack {
  const name = objectiveName(pairing.objective);
  const [problem] = contradictions(pairing, works);
  if (problem) return { name, why: `${nameOf(problem.path)} ${problem.message}` };
  const { values } = inputsOnTable(pairing, settings, GRAPH, works);
  const sheet = GRAPH.fill(new LeafValues(values).set(glassRelay, Gap.unknown('/relay/glass')));
  const row: ObjectiveStack = { name };
  for (const [column, node] of Object.entries(COLUMNS)) {
    const value = sheet[GRAPH.place.get(node) as number];
    if (typeof value === 'number') Object.assign(row, { [column]: value });
    else if (column === 'frames' && value instanceof Gap)
      row.why = value.state === 'none' ? value.why : `not known without ${listed(value.missing.map(nameOf))}`;
  }
  return row;
}
