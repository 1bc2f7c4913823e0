import { z } from 'zod';
import type { Graph } from '../graph.ts';
import { soundInputs, type Worked, workedOut } from '../pairing/evaluate.ts';
import type { Glassworks } from '../pairing/glassworks.ts';
import type { Inputs } from '../pairing/inputs.ts';
import type { Plan } from '../pairing/registry.ts';
import type { Pairing } from '../pairing/schema.ts';
import { amount, type QuantityInput } from '../parts/quantity.ts';
import { SETTINGS, settingsShape, type TableFigureId, WHOLE_TABLE } from './groups.ts';
import { put, type Read } from './setting.ts';

/** What is set on the table; whatever is left out is taken as usual, guessed and told, or unknown. */
export const settingsSchema = z.strictObject(settingsShape);
export type Settings = z.infer<typeof settingsSchema>;

/** The table's figures of a pairing, each with its low and high. */
export interface TableEvaluation extends Worked<TableFigureId> {
  readonly pairing: Pairing;
  readonly settings: Settings;
}

/**
 * Works the table's figures out. Pairing and settings have passed their schemas.
 *
 * @param plan one group's figures, or all
 * @param works what works with glass: a pairing whose relay has glass needs it
 * @throws PairingError where the pairing contradicts itself
 */
export function evaluateTable(
  pairing: Pairing,
  settings: Settings,
  works?: Glassworks,
  plan: Plan<TableFigureId> = WHOLE_TABLE,
): TableEvaluation {
  return { pairing, settings, ...workedOut(plan, inputsOnTable(pairing, settings, plan.graph, works)) };
}

/**
 * The pairing's inputs and those settings that a graph has a use for.
 * @throws PairingError where the pairing contradicts itself
 */
export function inputsOnTable(pairing: Pairing, settings: Settings, { place }: Graph, works?: Glassworks): Inputs {
  const { values, list } = soundInputs(pairing, works);
  const all = new Map(values);
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
