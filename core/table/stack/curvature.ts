import { Gap, openStep } from '../../figure.ts';
import { seen } from '../../pairing/aperture.ts';
import { scale, sensorDiagonal, systemMagnification } from '../../pairing/first-order.ts';
import { sharpDetail } from '../../pairing/image-circles.ts';
import { exitPupilFromShoulder, glassRelay, infinitySpace, sharpSpectrum, subjectIndex, wavelength } from '../../pairing/leaves.ts';
import type { SharpSpectrum } from '../../pairing/schema.ts';
import { UM_PER_MM } from '../../units.ts';
import { fieldCurvature } from './settings.ts';

const UNSEEN = Gap.unknown('/fieldCurvatureUm');

/** What the relay's glass alone does, by the best focus of each field point as `core/lens/study.ts` has it. */
const ofTheRelay = openStep({
  id: 'relayCurvature',
  symbol: 'c_R',
  unit: 'µm',
  words:
    "how far the best focus moves at the subject over the picture, by real rays through the relay's glass; the objective taken as flat",
  needs: [
    glassRelay,
    seen,
    infinitySpace,
    exitPupilFromShoulder,
    sharpDetail,
    sharpSpectrum,
    wavelength,
    sensorDiagonal,
    scale,
    systemMagnification,
    subjectIndex,
  ],
  of: (glass, discs, S, e, frequency, spectrum, wavelengthNm, d, F, m, n): number | Gap => {
    if (glass instanceof Gap || discs instanceof Gap || frequency instanceof Gap || F instanceof Gap || m instanceof Gap) return UNSEEN;
    const spread = glass.focusSpreadMm({
      discs,
      pupilDistanceMm: (S as number) - (e as number),
      frequencyLpPerMm: frequency,
      spectrum: spectrum as SharpSpectrum,
      wavelengthNm: wavelengthNm as number,
      cornerSlope: (d as number) / 2 / F,
    });
    return (UM_PER_MM * (n as number) * spread) / m ** 2;
  },
});

/** As it was seen, else as far as the relay's glass is to blame. */
export const curvature = openStep({
  id: 'curvature',
  symbol: 'c',
  unit: 'µm',
  words: 'how far the focus moves at the subject over the picture',
  needs: [fieldCurvature.leaf, ofTheRelay],
  of: (given, relay) => (typeof given === 'number' ? given : relay),
  as: (given, relay) => given || relay,
});
