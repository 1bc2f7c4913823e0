import { z } from 'zod';
import type { Graph } from '../graph.ts';
import { LeafValues } from '../leaf-values.ts';
import { soundInputs, type Worked, workedOut } from '../pairing/evaluate.ts';
import type { Excursions } from '../pairing/excursions.ts';
import type { Glassworks } from '../pairing/glassworks.ts';
import type { Inputs } from '../pairing/input.ts';
import type { Plan } from '../pairing/registry.ts';
import type { Pairing } from '../pairing/schema.ts';
import type { Spread } from '../pairing/spread.ts';
import { amount, type QuantityInput } from '../parts/quantity.ts';
import { planOf, SETTINGS, settingsShape, TABLE_GROUP_NAMES, type TableFigureId, WHOLE_TABLE } from './groups.ts';
import { put, type Read } from './setting.ts';

/** What is set on the table; whatever is left out is taken as usual, guessed and told, or unknown. */
export const settingsSchema = z.strictObject(settingsShape);
export type Settings = z.infer<typeof settingsSchema>;

/** The table's figures of a pairing, each with its low and high. */
export interface TableEvaluation extends Worked<TableFigureId> {
  readonly pairing: Pairing;
  readonly settings: Settings;
}

const PLANS = TABLE_GROUP_NAMES.map(planOf);

/**
 * Works the table's figures out. Pairing and settings have passed their schemas. Each group's low and high come
 * from the inputs that it rests on: how often everything is worked out grows with their number, and a diffuser
 * does nothing to a tube. So a figure is the same in its group and on the whole table.
 *
 * @param plan one group's figures; all where it is left out
 * @param works what works with glass: a pairing whose relay has glass needs it
 * @throws PairingError where the pairing contradicts itself
 */
export function evaluateTable(pairing: Pairing, settings: Settings, works?: Glassworks, plan?: Plan<TableFigureId>): TableEvaluation {
  const graph = (plan ?? WHOLE_TABLE).graph;
  const inputs = inputsOnTable(pairing, settings, graph, works);
  const parts = (plan ? [plan] : PLANS).map((one) =>
    workedOut(one, { ...inputs, list: inputs.list.filter(({ leaf }) => one.graph.place.has(leaf)) }),
  );
  return {
    pairing,
    settings,
    graph,
    inputs: inputs.list,
    sheet: graph.fill(inputs.values),
    spread: side(parts.map(({ spread }) => spread)),
    answers: Object.assign({}, ...parts.map(({ answers }) => answers)),
  };
}

/** Spreads of different figures as one: an input that one of them does not rest on does nothing there. */
function side(spreads: readonly Spread[]): Spread {
  const moved = new Set(spreads.flatMap(({ moves }) => moves.map(({ input }) => input)));
  return {
    figures: spreads.flatMap(({ figures }) => figures),
    low: spreads.flatMap(({ low }) => low),
    high: spreads.flatMap(({ high }) => high),
    moves: [...moved].map((input) => {
      const of = (what: keyof Excursions): number[] =>
        spreads.flatMap(({ figures, moves }) => moves.find((m) => m.input === input)?.[what] ?? figures.map(() => 0));
      return { input, up: of('up'), down: of('down'), atLeast: of('atLeast'), atGreatest: of('atGreatest') };
    }),
  };
}

/**
 * The pairing's inputs and those settings that a graph has a use for.
 * @throws PairingError where the pairing contradicts itself
 */
export function inputsOnTable(pairing: Pairing, settings: Settings, { place }: Graph, works?: Glassworks): Inputs {
  const { values, list } = soundInputs(pairing, works);
  const all = new LeafValues(values);
  const inputs = [...list];
  const read: Read = (key) => {
    const given = settings[key as keyof Settings] as QuantityInput | string | undefined;
    return given === undefined || typeof given === 'string' ? undefined : amount(given);
  };
  for (const one of SETTINGS) {
    if (!place.has(one.leaf)) continue;
    const { value, input } = put(one, settings[one.key as keyof Settings], read);
    all.set(one.leaf, value);
    if (input) inputs.push(input);
  }
  return { values: all, list: inputs };
}
