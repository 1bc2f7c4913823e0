import { diagonalOf } from '../parts/sensor.ts';
import { cuts as cutsOf } from '../pupil/cuts.ts';
import { illuminationsAt } from '../pupil/illumination.ts';
import { scaleOf } from '../pupil/stops.ts';
import type { Answer } from './answer.ts';
import { type Assumption, assumptionsOf } from './assumptions.ts';
import { cautionsOf } from './cautions.ts';
import { type Evaluation, evaluate, stopsOf } from './evaluate.ts';
import type { Glassworks } from './glassworks.ts';
import { keysOf } from './keys.ts';
import { FIGURE_IDS, type FigureId, RADIUS_IDS, type RadiusId } from './registry.ts';
import type { Pairing } from './schema.ts';
import { sentenceOf } from './sentence.ts';
import { type Coverage, coverageOf } from './verdict.ts';

/**
 * Light at one distance from the middle of the picture: at the very radius that is told, which is as asked for, or in whole
 * nanometres. `lossEv` is left out where no light is left.
 */
export interface CurvePoint {
  radiusMm: number;
  relativeIllumination: number;
  lossEv?: number;
}

/** A stop that touches the corner's beam, as the contract tells it. */
export interface CutAnswer {
  stop: string;
  onsetRadiusMm: number;
  shareOfCornerLoss: number;
  clearsAt?: { diameterMm?: number; infinitySpaceMm?: number };
}

export interface Report {
  figures: Record<FigureId, Answer>;
  vignetting: Record<RadiusId, Answer> & { curve: CurvePoint[]; cuts: CutAnswer[] };
  sentence: string;
  coverage: Coverage;
  assumptions: Assumption[];
  cautions: string[];
}

/** Points of the curve where no radii are asked for, from the middle to a little past the corner. */
const CURVE_POINTS = 128;
const CURVE_REACH = 1.15;
const NM_PER_MM = 1e6;

const FIGURE_KEYS = keysOf(FIGURE_IDS);
const RADIUS_KEYS = keysOf(RADIUS_IDS);

/** @throws PairingError where the pairing contradicts itself */
export const report = (pairing: Pairing, works?: Glassworks): Report => reportOf(evaluate(pairing, works));

export function reportOf(evaluation: Evaluation): Report {
  const { answers, pairing } = evaluation;
  const stops = stopsOf(evaluation.sheet);
  const corner = diagonalOf(pairing.sensor) / 2;
  const cuts = stops ? cutsOf(stops.rig, stops.seen, corner) : [];
  const coverage = coverageOf(evaluation);
  return {
    figures: pick(answers, FIGURE_IDS, FIGURE_KEYS),
    vignetting: {
      ...pick(answers, RADIUS_IDS, RADIUS_KEYS),
      curve: curveOf(evaluation, corner),
      cuts: cuts.map(({ stop, onsetRadiusMm, shareOfCornerLoss, clearsAt }) => ({
        stop,
        onsetRadiusMm,
        shareOfCornerLoss,
        ...(Object.keys(clearsAt).length > 0 ? { clearsAt } : {}),
      })),
    },
    sentence: sentenceOf(evaluation, coverage, cuts),
    coverage,
    assumptions: assumptionsOf(evaluation),
    cautions: cautionsOf(evaluation),
  };
}

/** The light at the radii asked for, or along the half-diagonal; empty where an opening is not known. */
function curveOf({ pairing, sheet }: Evaluation, corner: number): CurvePoint[] {
  const stops = stopsOf(sheet);
  if (!stops) return [];
  const radii = pairing.radiiMm ?? radiiOut(CURVE_REACH * corner);
  const F = scaleOf(stops.rig);
  const slopes = new Float64Array(radii.length);
  for (let i = 0; i < slopes.length; i++) slopes[i] = (radii[i] as number) / F;
  const light = illuminationsAt(stops.seen, slopes);
  const curve = new Array<CurvePoint>(radii.length);
  for (let i = 0; i < radii.length; i++) {
    const radiusMm = radii[i] as number;
    const E = light[i] as number;
    curve[i] = E > 0 ? { radiusMm, relativeIllumination: E, lossEv: -Math.log2(E) + 0 } : { radiusMm, relativeIllumination: E };
  }
  return curve;
}

/** As many as a curve has, evenly from the middle to `reachMm`, in whole nanometres: half as long to write as all digits. */
function radiiOut(reachMm: number): Float64Array {
  const radii = new Float64Array(CURVE_POINTS);
  for (let i = 0; i < CURVE_POINTS; i++) radii[i] = Math.round((NM_PER_MM * reachMm * i) / (CURVE_POINTS - 1)) / NM_PER_MM;
  return radii;
}

/** Some of the answers. @param keys those of `ids` (`keysOf`) */
function pick<K extends string, V>(
  all: Readonly<Record<string, V>>,
  ids: readonly K[],
  keys: Readonly<Record<K, V | undefined>>,
): Record<K, V> {
  const picked = { ...keys } as Record<K, V>;
  for (const id of ids) picked[id] = all[id] as V;
  return picked;
}
