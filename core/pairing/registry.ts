import type { Figure } from '../figure.ts';
import { type Graph, graph } from '../graph.ts';
import { cornerChiefRayDeg, magnificationChangePerMm, rig, seen, systemNa, workingFNumber } from './aperture.ts';
import { clearWorkingDistanceMm, lightConeDeg, totalLengthMm } from './bench.ts';
import { correctedShare, coveredShare, goodFieldMm, litShare, recordedDetailMegapixels, sharpShare } from './coverage.ts';
import { shortestCoveringFocalLengthMm } from './covering-focal-length.ts';
import { depthOfFieldUm, framesForSubject } from './depth-of-field.ts';
import {
  objectFieldDiagonalMm,
  objectFieldHeightMm,
  objectFieldWidthMm,
  objectiveFocalLengthMm,
  pupilDiameterMm,
  relayFocalLengthMm,
  scale,
  sensorDiagonal,
  subjectFill,
  systemMagnification,
} from './first-order.ts';
import { correctedCircleMm, sharpCircleMm } from './image-circles.ts';
import { keysOf } from './keys.ts';
import {
  cornerFNumber,
  cornerIllumination,
  cornerLossEv,
  cutoffRadiusMm,
  halfRadiusMm,
  litCircleMm,
  longestUnvignettedSpaceMm,
  onsetRadiusMm,
} from './light.ts';
import {
  airyDiameterUm,
  contrastAtNyquist,
  cutoffImageLpPerMm,
  cutoffObjectLpPerMm,
  nyquistLpPerMm,
  opticalDetailMegapixels,
  pixelAtSubjectUm,
  rayleighUm,
  resolvedDetailUm,
  samplingRatio,
} from './resolution.ts';

/** Every figure of a report, in the groups and the order in which it is read. */
export const GROUPS = {
  picture: [
    systemMagnification,
    objectFieldWidthMm,
    objectFieldHeightMm,
    objectFieldDiagonalMm,
    subjectFill,
    objectiveFocalLengthMm,
    relayFocalLengthMm,
  ],
  coverage: [
    correctedCircleMm,
    litCircleMm,
    sharpCircleMm,
    correctedShare,
    litShare,
    sharpShare,
    coveredShare,
    goodFieldMm,
    cornerIllumination,
    cornerLossEv,
    cornerFNumber,
    shortestCoveringFocalLengthMm,
    longestUnvignettedSpaceMm,
  ],
  detail: [
    rayleighUm,
    airyDiameterUm,
    cutoffObjectLpPerMm,
    cutoffImageLpPerMm,
    nyquistLpPerMm,
    pixelAtSubjectUm,
    resolvedDetailUm,
    samplingRatio,
    contrastAtNyquist,
    opticalDetailMegapixels,
    recordedDetailMegapixels,
  ],
  aperture: [pupilDiameterMm, systemNa, workingFNumber, depthOfFieldUm, magnificationChangePerMm, cornerChiefRayDeg],
  bench: [clearWorkingDistanceMm, lightConeDeg, totalLengthMm, framesForSubject],
} as const;

export type GroupName = keyof typeof GROUPS;

/** Where the light falls: told beside the curve. */
export const RADII = [onsetRadiusMm, halfRadiusMm, cutoffRadiusMm] as const;

type Ids<L extends readonly Figure[]> = L[number]['id'];
export type FigureId = { [G in GroupName]: Ids<(typeof GROUPS)[G]> }[GroupName];
export type RadiusId = Ids<typeof RADII>;

export const FIGURES = Object.values(GROUPS).flat() as readonly Figure<FigureId>[];
export const FIGURE_IDS = FIGURES.map((f) => f.id);
export const RADIUS_IDS = RADII.map((f) => f.id);

/** All that is told with low and high. */
export const TOLD: readonly Figure<FigureId | RadiusId>[] = [...FIGURES, ...RADII];

/** The one graph of a pairing: built once, when core is loaded. */
export const GRAPH = graph([...TOLD, rig, seen, scale, sensorDiagonal]);

/** What is worked out of a pairing: some figures, and the graph of no more than they need. */
export interface Plan<Id extends string = FigureId | RadiusId> {
  readonly graph: Graph;
  readonly told: readonly Figure<Id>[];
  /** What the answers begin as. */
  readonly keys: Readonly<Record<Id, undefined>>;
}

/** @param worked the graph of all that the figures need; of no more where it is left out */
export const planned = <Id extends string>(told: readonly Figure<Id>[], worked: Graph = graph(told)): Plan<Id> => ({
  graph: worked,
  told,
  keys: keysOf(told.map((figure) => figure.id)),
});

export const WHOLE: Plan = planned(TOLD, GRAPH);

/** The plan for some figures only, in the registry's order. */
export function planFor(ids: readonly (FigureId | RadiusId)[]): Plan {
  return planned(TOLD.filter((f) => ids.includes(f.id)));
}

export const figureById = (id: FigureId | RadiusId): Figure => TOLD.find((f) => f.id === id) as Figure;
