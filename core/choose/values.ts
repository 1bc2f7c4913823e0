import type { Gap, Node } from '../figure.ts';
import type { Sheet } from '../graph.ts';
import { contradictions } from '../pairing/contradictions.ts';
import { type Glassworks, glassOf } from '../pairing/glassworks.ts';
import { inputsOf } from '../pairing/inputs.ts';
import * as leaves from '../pairing/leaves.ts';
import { type FigureId, figureById, planFor } from '../pairing/registry.ts';
import type { Pairing } from '../pairing/schema.ts';
import { amount } from '../parts/quantity.ts';

/** A figure's value without its ±: Infinity where it is without limit, a Gap where there is none. */
export type Value = number | Gap;

/**
 * Works out some figures of many pairings, values only. Each part is read once, however often it comes back: all
 * that is put on one bench differs in objective, relay and infinity space alone.
 */
export interface ValueBench {
  put(pairing: Pairing): void;
  /** The figures of what was put last; undefined where it contradicts itself. */
  read(): readonly Value[] | undefined;
}

/** The leaves that follow from the objective alone and from the relay alone. */
const OF_OBJECTIVE: readonly Node[] = [
  leaves.magnification,
  leaves.numericalAperture,
  leaves.referenceFocalLength,
  leaves.fieldNumber,
  leaves.testedField,
  leaves.exitPupilFromShoulder,
  leaves.workingDistance,
  leaves.parfocalDistance,
  leaves.noseDiameter,
  leaves.subjectIndex,
  leaves.immersion,
];
const OF_RELAY: readonly Node[] = [
  leaves.relayKind,
  leaves.givenFocalLength,
  leaves.power,
  leaves.glassRelay,
  leaves.givenEntrancePupil,
  leaves.fNumber,
  leaves.entrancePupilDepth,
  leaves.clearAperture,
  leaves.ratedCircle,
  leaves.principalPlane,
  leaves.givenRimToSensor,
];

/**
 * @param ids the figures wanted, in the order in which `read` answers them
 * @param works what works with glass: wanted where a relay has some
 */
export function valueBench(ids: readonly FigureId[], works?: Glassworks): ValueBench {
  const { graph } = planFor(ids);
  const places = ids.map((id) => graph.place.get(figureById(id)) as number);
  const placed = (nodes: readonly Node[]) =>
    nodes.map((node) => [graph.place.get(node), node] as const).filter(([place]) => place !== undefined);
  const leavesOf = { objective: placed(OF_OBJECTIVE), relay: placed(OF_RELAY) } as const;
  const space = graph.place.get(leaves.infinitySpace);
  const known = new WeakMap<object, readonly unknown[]>();
  let here: Pairing | undefined;
  let sheet: Sheet = [];

  function swap(part: keyof typeof leavesOf, pairing: Pairing): void {
    let values = known.get(pairing[part]);
    if (!values) {
      const all = inputsOf(pairing, glassOf(pairing, works)).values;
      values = leavesOf[part].map(([, node]) => all.get(node));
      known.set(pairing[part], values);
    }
    leavesOf[part].forEach(([place], i) => {
      sheet[place as number] = (values as readonly unknown[])[i];
    });
  }

  return {
    put(pairing) {
      if (!here) {
        const { values } = inputsOf(pairing, glassOf(pairing, works));
        sheet = graph.order.map((node) => values.get(node));
      } else {
        if (pairing.objective !== here.objective) swap('objective', pairing);
        if (pairing.relay !== here.relay) swap('relay', pairing);
        if (space !== undefined) sheet[space] = amount(pairing.infinitySpaceMm);
      }
      here = pairing;
    },
    read() {
      if (!here || contradictions(here, works).length > 0) return undefined;
      graph.recompute(sheet);
      return places.map((place) => sheet[place] as Value);
    },
  };
}
