import {
  glassworks,
  type Judging,
  judgingOf,
  listedLens,
  type Places,
  type SharpOver,
  type SpacingPoint,
  spacings,
} from '../../../core/glassworks.ts';
import { evaluate, type Pairing, pairingSchema } from '../../../core/index.ts';
import type { Lens } from '../../../core/trace/lens.ts';

export const works = glassworks();

/** Cemented, bent for the close-up job; f = 198 mm; its weak side has the male thread. */
export const GLASS = { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] };

/** A 10x/0.28 with its pupil at the shoulder before that lens and a full frame, in the light of one wavelength. */
export const pairingWith = (relay: object = {}, more: object = {}): Pairing =>
  pairingSchema.parse({
    objective: {
      magnification: 10,
      na: 0.28,
      referenceFocalLengthMm: 200,
      fieldNumberMm: 24,
      exitPupilFromShoulderMm: { value: 0, origin: 'measured' },
    },
    relay: { kind: 'supplementary', clearApertureMm: 54, glass: GLASS, ...relay },
    sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
    infinitySpaceMm: 85,
    wavelengthNm: 587.5618,
    sharp: { spectrum: 'one wavelength' },
    ...more,
  });

const lensIn = (pairing: Pairing): Lens => {
  const { lens, problems } = listedLens(pairing.relay);
  if (!lens) throw new Error(JSON.stringify(problems));
  return lens;
};

export const judgingIn = (pairing: Pairing, over?: SharpOver): Judging => judgingOf(evaluate(pairing, works), lensIn(pairing), over);

export const searched = (judging: Judging, places: Places): (readonly [SpacingPoint, SpacingPoint])[] => [...spacings(judging, places)];
