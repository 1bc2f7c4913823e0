import { contradictions } from '../pairing/contradictions.ts';
import { type Glassworks, glassOf } from '../pairing/glassworks.ts';
import { inputsOf } from '../pairing/inputs.ts';
import { nameOf } from '../pairing/phrases.ts';
import { type FigureId, figureById, planFor } from '../pairing/registry.ts';
import type { Pairing } from '../pairing/schema.ts';
import type { Value } from './values.ts';

/** Some figures of pairings, values only, in the order of their names; of pairings that do not contradict themselves. */
export function readerOf(ids: readonly FigureId[], works?: Glassworks): (pairing: Pairing) => readonly Value[] {
  const { graph } = planFor(ids);
  const places = ids.map((id) => graph.place.get(figureById(id)) as number);
  return (pairing) => {
    const sheet = graph.fill(inputsOf(pairing, glassOf(pairing, works)).values);
    return places.map((place) => sheet[place] as Value);
  };
}

/** Why there is no such rig, in the words of the first contradiction; undefined where there is one. */
export function whyNot(pairing: Pairing, works?: Glassworks): string | undefined {
  const first = contradictions(pairing, works)[0];
  return first && `${nameOf(first.path)} ${first.message}`;
}
