import { beam, glassworks, judgingOf, listedLens, prescription, ringsAndSpokes } from '../../core/glassworks.ts';
import { evaluate, pairingSchema } from '../../core/index.ts';

/** A relay of known glass on a full frame, in white light: what a search goes through. */
export const GLASSED = pairingSchema.parse({
  objective: {
    magnification: 10,
    na: 0.28,
    referenceFocalLengthMm: 200,
    fieldNumberMm: 24,
    workingDistanceMm: 33.5,
    parfocalDistanceMm: 95,
  },
  relay: {
    kind: 'supplementary',
    clearApertureMm: 54,
    glass: { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] },
  },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
  infinitySpaceMm: 60,
});

export const WORKS = glassworks();

const { lens } = listedLens(GLASSED.relay);
if (!lens) throw new Error("the bench's lens is none");

export const JUDGING = judgingOf(evaluate(GLASSED, WORKS), lens);
export const PRESCRIBED = prescription(lens, 587.5618);
/** 2048 rays of a corner's beam. */
export const BEAM = beam(ringsAndSpokes(32, 64), { pupilRadiusMm: 5.6, pupilDistanceMm: 85, slope: 0.1 });
