import { diffuserShare, diffuserSpareMm } from './diffuser.ts';
import { noseClearanceMm } from './nose.ts';
import { lightFarCornerDeg, lightMiddleDeg, lightShare, objectiveConeDeg } from './room.ts';

/** In the order in which they are read. */
export const FIGURES = [
  lightMiddleDeg,
  lightFarCornerDeg,
  lightShare,
  objectiveConeDeg,
  noseClearanceMm,
  diffuserSpareMm,
  diffuserShare,
] as const;
