import { start } from '../trace/beam.ts';
import type { Prescription } from '../trace/prescription.ts';
import { type Rays, rays, THROUGH, trace } from '../trace/rays.ts';
import { type Direction, NODES, type Nodes, overlapOf, type Region } from './region.ts';

/** A lens at the wavelengths of a spectrum. */
export interface Colours {
  readonly prescriptions: readonly Prescription[];
  readonly wavelengthsMm: readonly number[];
  /** Shares of the light: they add up to 1. */
  readonly weights: readonly number[];
  /** The wavelength that the focus is counted from, and by which the pupil is scaled. */
  readonly reference: Prescription;
  /** Paraxial focus of the reference wavelength, from the last vertex, mm. */
  readonly focusMm: number;
  /** Many wavelengths between the few, for where the few do not do; absent in the light of one. */
  readonly between?: Between;
}

/** Wavelengths between those that are traced. */
export interface Between {
  readonly weights: readonly number[];
  /** For each, what each traced wavelength contributes to it. */
  readonly from: readonly (readonly number[])[];
}

/** One field point's beam: where it starts, and the part of the pupil that it fills. */
export interface FieldBeam {
  readonly slope: number;
  readonly pupilDistanceMm: number;
  readonly region: Region;
}

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

/** Variance of the pairs' phases through focus, waves²: `least + growth (focus - steadiest focus)²`. */
export interface Steady {
  readonly focus: number;
  readonly least: number;
  readonly growth: number;
}

/** How far from the middle of the region, as a part of its size, the slopes of the rays are measured. */
const PART = 0.5;

/** How image-space direction cosines change with the place in the pupil, and where the middle ray goes. */
export interface Middle {
  /** Direction cosine in the image per mm of the pupil, across and along the field axis; both negative behind a positive lens. */
  readonly across: number;
  readonly along: number;
  /** Where the middle ray of the reference wavelength meets the paraxial focal plane, mm, and its slope there. */
  readonly heightMm: number;
  readonly slope: number;
  /** Of the region, as much as comes through the lens, mm². */
  readonly area: number;
}

/** @returns undefined where the middle of the beam does not come through */
export function middleOf(lens: Prescription, { slope, pupilDistanceMm, region }: FieldBeam, focusMm: number): Middle | undefined {
  const [low, high] = [region.low(0), region.high(0)];
  const [y, dy, dx] = [(low + high) / 2, (PART * (high - low)) / 2, PART * region.halfWidth];
  const five = rays(5);
  const points = [
    [0, y],
    [dx, y],
    [-dx, y],
    [0, y + dy],
    [0, y - dy],
  ] as const;
  points.forEach(([px, py], i) => {
    start(five, i, px, py, slope, pupilDistanceMm);
  });
  trace(lens, five);
  if (five.status.some((s) => s !== THROUGH)) return undefined;
  const { x: _, y: height, z, L, M, N } = five as Required<Rays>;
  const [L1, L2, M3, M4] = [L[1] as number, L[2] as number, M[3] as number, M[4] as number];
  return {
    across: (L1 - L2) / (2 * dx),
    along: (M3 - M4) / (2 * dy),
    heightMm: (height[0] as number) + ((focusMm - (z[0] as number)) * (M[0] as number)) / (N[0] as number),
    slope: (M[0] as number) / (N[0] as number),
    area: passedArea(lens, { slope, pupilDistanceMm, region }),
  };
}

function passedArea(lens: Prescription, { slope, pupilDistanceMm, region }: FieldBeam): number {
  const { count, x, y, area } = overlapOf(region, 0, 'tangential');
  const bundle = rays(count);
  for (let i = 0; i < count; i++) start(bundle, i, x[i] as number, y[i] as number, slope, pupilDistanceMm);
  trace(lens, bundle);
  return area.reduce((sum, a, i) => sum + (bundle.status[i] === THROUGH ? a : 0), 0);
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

/** Differences of pairs of rays, the same places in the overlap for each wavelength. */
interface Differences {
  readonly phase: readonly Float64Array[];
  readonly rate: readonly Float64Array[];
  /** mm²; 0 where a ray of the pair is lost. */
  readonly area: readonly Float64Array[];
}

function differencesOf(
  colours: Colours,
  field: FieldBeam,
  middle: Middle,
  frequency: number,
  direction: Direction,
  nodes: Nodes,
): Differences {
  const points = nodes * nodes;
  const bundle = rays(2 * points);
  const [phase, rate, area]: [Float64Array[], Float64Array[], Float64Array[]] = [[], [], []];
  for (const [c, lens] of colours.prescriptions.entries()) {
    const [phases, rates, areas] = [new Float64Array(points), new Float64Array(points), new Float64Array(points)];
    phase.push(phases);
    rate.push(rates);
    area.push(areas);
    const lambda = colours.wavelengthsMm[c] as number;
    const shear = (lambda * frequency) / Math.abs(direction === 'sagittal' ? middle.across : middle.along);
    const overlap = overlapOf(field.region, shear, direction, nodes);
    if (overlap.count === 0) continue;
    const [dx, dy] = direction === 'sagittal' ? [shear / 2, 0] : [0, shear / 2];
    for (let i = 0; i < points; i++) {
      const [x, y] = [overlap.x[i] as number, overlap.y[i] as number];
      start(bundle, 2 * i, x + dx, y + dy, field.slope, field.pupilDistanceMm);
      start(bundle, 2 * i + 1, x - dx, y - dy, field.slope, field.pupilDistanceMm);
    }
    trace(lens, bundle);
    for (let i = 0; i < points; i++) {
      const [a, b] = [2 * i, 2 * i + 1];
      if (bundle.status[a] !== THROUGH || bundle.status[b] !== THROUGH) continue;
      areas[i] = overlap.area[i] as number;
      phases[i] = (pathTo(bundle, a, middle.heightMm, colours.focusMm) - pathTo(bundle, b, middle.heightMm, colours.focusMm)) / lambda;
      // The image point moves along the middle ray: so the rays' own directions count as little as can be.
      rates[i] =
        ((bundle.N[a] as number) - (bundle.N[b] as number) + middle.slope * ((bundle.M[a] as number) - (bundle.M[b] as number))) / lambda;
    }
  }
  return { phase, rate, area };
}

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

/** The mean square of the phases about their mean over the places of the focus: a parabola. */
function steadyOf({ phase, rate, share }: Pick<Pairs, 'phase' | 'rate' | 'share'>, count: number, real: boolean): Steady {
  let [w, a, b, aa, ab, bb] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < count; i++) {
    const [s, p, r] = [share[i] as number, phase[i] as number, rate[i] as number];
    w += s;
    a += s * p;
    b += s * r;
    aa += s * p * p;
    ab += s * p * r;
    bb += s * r * r;
  }
  // Of mirrored pairs, of which half is listed, the other half has the opposite sign: their mean is 0.
  const [p, r] = real ? [0, 0] : [a / w, b / w];
  const [variance, covariance, slope] = [aa / w - p * p, ab / w - p * r, bb / w - r * r];
  return { focus: -covariance / slope, least: Math.max(0, variance - (covariance * covariance) / slope), growth: slope };
}

/** Neighbouring wavelengths with this much of the light count, and may differ by this much, in waves. */
const WEIGHTY = 0.1;
const NEAR = 0.3;

/** Whether the phases change so much from one wavelength to the next that sums over these few do not stand for all. */
function coloursPart({ phase, rate, area }: Differences, focus: number, weights: readonly number[]): boolean {
  for (let c = 1; c < phase.length; c++) {
    if (Math.min(weights[c - 1] as number, weights[c] as number) < WEIGHTY) continue;
    const [phases, rates, areas] = [phase[c] as Float64Array, rate[c] as Float64Array, area[c] as Float64Array];
    const [phasesBefore, ratesBefore, areasBefore] = [
      phase[c - 1] as Float64Array,
      rate[c - 1] as Float64Array,
      area[c - 1] as Float64Array,
    ];
    let [w, square] = [0, 0];
    for (let i = 0; i < phases.length; i++) {
      const s = Math.min(areasBefore[i] as number, areas[i] as number);
      const change = (phases[i] as number) - (phasesBefore[i] as number) + focus * ((rates[i] as number) - (ratesBefore[i] as number));
      w += s;
      square += s * change * change;
    }
    if (square > NEAR * NEAR * w) return true;
  }
  return false;
}

/** The same at many wavelengths, by the polynomial through the few: phases are smooth in the wavelength. */
function filledIn({ phase, rate, area }: Differences, { from }: Between): Differences {
  const points = (area[0] as Float64Array).length;
  const mixed = (of: readonly Float64Array[], parts: readonly number[]): Float64Array => {
    const sums = new Float64Array(points);
    for (const [c, part] of parts.entries()) {
      const own = of[c] as Float64Array;
      for (let i = 0; i < points; i++) sums[i] = (sums[i] as number) + part * (own[i] as number);
    }
    return sums;
  };
  const whole = Array.from({ length: points }, (_, i) => area.every((one) => (one[i] as number) > 0));
  return {
    phase: from.map((parts) => mixed(phase, parts)),
    rate: from.map((parts) => mixed(rate, parts)),
    area: from.map((parts) => mixed(area, parts).map((a, i) => (whole[i] ? Math.max(0, a) : 0))),
  };
}

/** Path along ray `i` to the foot of the perpendicular from the image point at `height` in the plane at `focus`, mm. */
function pathTo(bundle: Rays, i: number, height: number, focus: number): number {
  const [x, y, z] = [bundle.x[i] as number, bundle.y[i] as number, bundle.z[i] as number];
  return (
    (bundle.path[i] as number) -
    (bundle.L[i] as number) * x +
    (bundle.M[i] as number) * (height - y) +
    (bundle.N[i] as number) * (focus - z)
  );
}
