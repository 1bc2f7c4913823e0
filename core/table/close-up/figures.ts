import { closeUpAiryUm, closeUpDiffractionFNumber, closeUpNearDiffractionFNumber, closeUpNearFNumber } from './aperture.ts';
import {
  closeUpFarFieldMm,
  closeUpFarMagnification,
  closeUpFarthestMm,
  closeUpGain,
  closeUpNearestMm,
  closeUpNearFieldMm,
  closeUpNearMagnification,
} from './band.ts';
import { closeUpFocalMm, closeUpPlaneMm, closeUpPowerDioptre } from './lens.ts';
import { ownTubesFarDistanceMm, ownTubesFarMagnification, ownTubesNearDistanceMm, ownTubesNearMagnification } from './own-tubes.ts';
import { closeUpRoomMm, closeUpShortestCameraMm } from './rim.ts';
import {
  tubesDiffractionFNumber,
  tubesFarCostEv,
  tubesFarDistanceMm,
  tubesFarExtensionMm,
  tubesFarFNumber,
  tubesNearCostEv,
  tubesNearDiffractionFNumber,
  tubesNearDistanceMm,
  tubesNearExtensionMm,
  tubesNearFNumber,
} from './tubes.ts';

/** The close-up lens on a camera lens, from the lens itself to what tubes would do in its place. */
export const FIGURES = [
  closeUpPowerDioptre,
  closeUpFocalMm,
  closeUpPlaneMm,
  closeUpFarthestMm,
  closeUpFarMagnification,
  closeUpFarFieldMm,
  closeUpNearestMm,
  closeUpGain,
  closeUpNearMagnification,
  closeUpNearFieldMm,
  closeUpNearFNumber,
  closeUpAiryUm,
  closeUpDiffractionFNumber,
  closeUpNearDiffractionFNumber,
  closeUpRoomMm,
  closeUpShortestCameraMm,
  tubesFarExtensionMm,
  tubesFarDistanceMm,
  tubesFarFNumber,
  tubesFarCostEv,
  tubesDiffractionFNumber,
  tubesNearExtensionMm,
  tubesNearDistanceMm,
  tubesNearFNumber,
  tubesNearCostEv,
  tubesNearDiffractionFNumber,
  ownTubesFarMagnification,
  ownTubesFarDistanceMm,
  ownTubesNearMagnification,
  ownTubesNearDistanceMm,
] as const;
