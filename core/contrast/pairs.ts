import { coloursPart, filledIn } from './between.ts';
import type { Colours } from './colours.ts';
import { type Differences, differencesOf } from './differences.ts';
import type { FieldBeam, Middle } from './middle.ts';
import { type Direction, NODES, type Nodes } from './region.ts';
import { type Steady, steadyOf } from './steady.ts';

/**
 * Pairs of rays that a pattern of one frequency and direction makes interfere. Contrast is the sum over
 * the pairs of `share · exp(2πi (phase + focus · rate))`, focus in mm from the paraxial one.
 */
export interface Pairs {
  readonly count: number;
  /** Difference of the two rays' paths to the image point, in waves. */
  readonly phase: Float64Array;
  /** Waves that the difference changes by for a mm of focus, the image point going along the beam's middle ray. */
  readonly rate: Float64Array;
  /** Area over that of the whole region as it comes through, times the wavelength's share of the light. */
  readonly share: Float64Array;
  /** Contrast of the same region without aberrations: the sum of the shares. */
  readonly perfect: number;
  /** True where each pair's mirror image has the opposite phase, so that only the real part is left. */
  readonly real: boolean;
  readonly steady: Steady;
  /** The phases' spread that the nodes still follow, waves. */
  readonly mostSpread: number;
}

/**
 * The pairs of a pattern of `frequency` lines per mm in the image. Two rays whose direction cosines
 * differ by wavelength times frequency interfere to make it: Hopkins's difference function (1957, from
 * memory), with the paths of real rays to the point where the beam's middle ray meets the paraxial focal
 * plane. Pairs of which a ray does not come through the lens count on neither side.
 *
 * As many nodes are taken as the phases' spread asks for, and as many wavelengths: sums over too few of
 * either come round to high contrast where there is none.
 *
 * @returns undefined where nothing overlaps
 */
export function pairsOf(colours: Colours, field: FieldBeam, middle: Middle, frequency: number, direction: Direction): Pairs | undefined {
  let nodes: Nodes = NODES[0];
  let differences = differencesOf(colours, field, middle, frequency, direction, nodes);
  let pairs = together(colours, differences, middle.area, direction, nodes);
  if (!pairs) return undefined;
  // Spread wider than the most nodes follow: nothing is left of the contrast, and the fewest say so.
  const spread = Math.sqrt(pairs.steady.least);
  const wanted = NODES.find((n) => mostSpread(n) >= spread + ROOM) ?? nodes;
  if (wanted > nodes) {
    nodes = wanted;
    differences = differencesOf(colours, field, middle, frequency, direction, nodes);
    pairs = together(colours, differences, middle.area, direction, nodes);
  }
  if (!pairs || !colours.between || !coloursPart(differences, pairs.steady.focus, colours.weights)) return pairs;
  return together(colours, filledIn(differences, colours.between), middle.area, direction, nodes, colours.between.weights);
}

/** Standard deviation of the phases, in waves, that so many nodes follow: a good three of them a wave of a straight slope. */
const mostSpread = (nodes: Nodes): number => nodes / 12;
/** Room for the spread to grow out of focus before it is no longer followed, waves. */
const ROOM = 0.2;

/** All wavelengths' differences as one list of pairs. */
function together(
  colours: Colours,
  { phase, rate, area }: Differences,
  wholeArea: number,
  direction: Direction,
  nodes: Nodes,
  weights: readonly number[] = colours.weights,
): Pairs | undefined {
  const most = phase.length * nodes * nodes;
  const all = { phase: new Float64Array(most), rate: new Float64Array(most), share: new Float64Array(most) };
  let count = 0;
  let perfect = 0;
  for (const [c, areas] of area.entries()) {
    const [phases, rates, weight] = [phase[c] as Float64Array, rate[c] as Float64Array, weights[c] as number];
    for (let i = 0; i < areas.length; i++) {
      if (!((areas[i] as number) > 0)) continue;
      const share = ((areas[i] as number) / wholeArea) * weight;
      all.phase[count] = phases[i] as number;
      all.rate[count] = rates[i] as number;
      all.share[count] = share;
      perfect += share;
      count++;
    }
  }
  if (!(perfect > 0)) return undefined;
  const real = direction === 'sagittal';
  return { ...all, count, perfect, real, steady: steadyOf(all, count, real), mostSpread: mostSpread(nodes) };
}
