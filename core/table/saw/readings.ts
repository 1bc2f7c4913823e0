import { type Node, step } from '../../figure.ts';
import { type Graph, graph } from '../../graph.ts';
import { objectFieldWidthMm, relayFocalLengthMm } from '../../pairing/first-order.ts';
import { infinitySpace, sensorOffset, width } from '../../pairing/leaves.ts';
import { cornerIllumination, cornerLossEv, halfRadiusMm, onsetRadiusMm } from '../../pairing/light.ts';
import { pixelAtSubjectUm } from '../../pairing/resolution.ts';
import { amount, type QuantityInput } from '../../parts/quantity.ts';
import { UM_PER_MM } from '../../units.ts';
import { type Sighting, wallReading } from './sightings.ts';

/** A number with the half-width of the interval that surely holds it. */
export interface Sure {
  readonly value: number;
  readonly plusMinus: number;
}

/**
 * One reading as the pairing's own graph foretells it: `foretold(figure, own)` is compared with `value`. Radii are
 * compared as their reciprocals, so that 'nowhere' is 0 and not without limit.
 */
export interface Reading extends Sure {
  /** Its sighting's place in the list. */
  readonly place: number;
  readonly graph: Graph;
  readonly node: Node<number>;
  /** The sighting's further numbers: a division's length, the other ruler. */
  readonly own: readonly Sure[];
  /** What stood otherwise than in the pairing. */
  readonly stood: readonly (Sure & { readonly leaf: Node })[];
  foretold(figure: number, own: readonly number[]): number;
  /** Where it is what the pairing itself says of an unknown: which one. Its place is none. */
  readonly says?: number;
  /** Back into the sighting's own unit. */
  shown(foretold: number): number;
}

/** Numbers of the rig that a picture of a lens alone needs. */
const perWidth = step({ id: 'focalLengthTimesWidth', needs: [relayFocalLengthMm, width], of: (f, W) => f * W });

const of = <N extends Node<number>>(node: N) => ({ node, graph: graph([node]) });
const ACROSS = of(objectFieldWidthMm);
const PIXEL = of(pixelAtSubjectUm);
const ALONE = of(relayFocalLengthMm);
const PER_WIDTH = of(perWidth);
const WALL = {
  cornerLossEv: of(cornerLossEv),
  cornerShare: of(cornerIllumination),
  onsetRadiusMm: of(onsetRadiusMm),
  halfRadiusMm: of(halfRadiusMm),
};

/** A corner without any light counts as so many stops down: no camera sees beyond. */
const DARKEST_EV = 40;

const sure = (q: QuantityInput): Sure => ({ value: amount(q), plusMinus: typeof q === 'number' ? 0 : (q.plusMinus ?? 0) });

const asIs = (x: number): number => x;
const NOWHERE = graph([]);

/** What the pairing says of unknown `k`, beside what was seen. */
export const saidOf = (k: number, { value, plusMinus }: Sure): Reading => ({
  place: -1,
  says: k,
  value,
  plusMinus,
  graph: NOWHERE,
  node: relayFocalLengthMm,
  own: [],
  stood: [],
  foretold: asIs,
  shown: asIs,
});

/** A sighting as a reading. */
export function readingOf(sighting: Sighting, place: number): Reading {
  const base = { place, own: [], stood: stoodOf(sighting), shown: asIs, foretold: asIs };
  switch (sighting.kind) {
    case 'ruler':
      return { ...base, ...ACROSS, ...sighting.acrossMm };
    case 'micrometer': {
      const divisions = sure(sighting.divisions);
      const division = sure(sighting.divisionUm);
      if (sighting.pixels === undefined)
        return { ...base, ...ACROSS, ...divisions, own: [division], foretold: (w, [d]) => (w * UM_PER_MM) / (d as number) };
      // n divisions of d µm, each pixel seeing p_o µm of them.
      const foretold = (p: number, [n, d]: readonly number[]): number => ((n as number) * (d as number)) / p;
      return { ...base, ...PIXEL, ...sighting.pixels, own: [divisions, division], foretold };
    }
    case 'wall': {
      const name = wallReading(sighting);
      const read = sighting[name] as Sure;
      if (name === 'cornerShare') return { ...base, ...WALL[name], ...read };
      if (name === 'cornerLossEv') return { ...base, ...WALL[name], ...read, foretold: (ev) => Math.min(DARKEST_EV, ev) };
      const reciprocal = { value: 1 / read.value, plusMinus: read.plusMinus / read.value ** 2 };
      return { ...base, ...WALL[name], ...reciprocal, foretold: (r) => 1 / r, shown: (x) => 1 / x };
    }
    case 'far':
      // Conjugates of one lens from its principal planes: 1/f = 1/X + 1/x'.
      return {
        ...base,
        ...ALONE,
        ...sighting.imageMm,
        own: [sure(sighting.thingMm)],
        foretold: (f, [X]) => (f < (X as number) ? 1 / (1 / f - 1 / (X as number)) : Number.POSITIVE_INFINITY),
      };
    case 'extensions':
      // Newton: m = x'/f with x' from the rear focus, so m₂ - m₁ = Δ/f for any lens. The second ruler is foretold.
      return {
        ...base,
        ...PER_WIDTH,
        ...sighting.secondAcrossMm,
        own: [sighting.firstAcrossMm, sure(sighting.apartMm)],
        // W / (W/a₁ + Δ/f): both terms times f, over f W.
        foretold: (fW, [a, apart]) => fW / (fW / (a as number) + (apart as number)),
      };
  }
}

function stoodOf(sighting: Sighting): Reading['stood'] {
  if (!('infinitySpaceMm' in sighting || 'sensorOffsetMm' in sighting)) return [];
  const { infinitySpaceMm: space, sensorOffsetMm: offset } = sighting;
  return [
    ...(space === undefined ? [] : [{ leaf: infinitySpace, ...sure(space) }]),
    ...(offset === undefined ? [] : [{ leaf: sensorOffset, ...sure(offset) }]),
  ];
}
