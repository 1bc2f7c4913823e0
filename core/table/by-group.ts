import { type Worked, workedOut } from '../pairing/evaluate.ts';
import type { Inputs } from '../pairing/inputs.ts';
import type { Spread } from '../pairing/spread.ts';
import { planOf, SETTINGS, TABLE_GROUP_NAMES, type TableFigureId, WHOLE_TABLE } from './groups.ts';

const PLANS = TABLE_GROUP_NAMES.map(planOf);
const OF_SETTINGS = new Set<unknown>(SETTINGS.map(({ leaf }) => leaf));

/**
 * The whole table worked out group by group. What is set for one group moves no figure of another, so that each
 * group's ± is the same as alone, and inputs of all groups do not multiply the rows of inputs moved together.
 */
export function workedByGroup({ values, list }: Inputs): Worked<TableFigureId> {
  const parts = PLANS.map((plan) =>
    workedOut(plan, { values, list: list.filter(({ leaf }) => !OF_SETTINGS.has(leaf) || plan.graph.place.has(leaf)) }),
  );
  const { graph } = WHOLE_TABLE;
  return {
    graph,
    inputs: list,
    sheet: graph.fill(values),
    spread: joined(parts.map(({ spread }) => spread)),
    answers: Object.assign({}, ...parts.map(({ answers }) => answers)) as Worked<TableFigureId>['answers'],
  };
}

/** Spreads of figures side by side; what one of them has no use for moves nothing in it. */
function joined(parts: readonly Spread[]): Spread {
  const inputs = new Set(parts.flatMap(({ moves }) => moves.map(({ input }) => input)));
  return {
    figures: parts.flatMap(({ figures }) => figures),
    low: parts.flatMap(({ low }) => low),
    high: parts.flatMap(({ high }) => high),
    moves: [...inputs].map((input) => {
      const each = parts.map(({ moves, figures }) => ({ move: moves.find((m) => m.input === input), still: figures.map(() => 0) }));
      return {
        input,
        up: each.flatMap(({ move, still }) => move?.up ?? still),
        down: each.flatMap(({ move, still }) => move?.down ?? still),
        atLeast: each.flatMap(({ move, still }) => move?.atLeast ?? still),
        atGreatest: each.flatMap(({ move, still }) => move?.atGreatest ?? still),
      };
    }),
  };
}
