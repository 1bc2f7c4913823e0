import { detectorTerm, waveTerm } from '../diffraction/depth.ts';
import { figure, openStep, step } from '../figure.ts';
import { MM_PER_NM, UM_PER_MM } from '../units.ts';
import { systemNa } from './aperture.ts';
import { systemMagnification } from './first-order.ts';
import { framesOf, stepOf, USUAL_OVERLAP } from './frames.ts';
import { depthConvention, givenBlur, subjectDepth, subjectIndex, wavelength } from './leaves.ts';
import { pixelPitchUm } from './resolution.ts';

/** The blur allowed on the sensor: a pixel unless given. */
const blur = openStep({
  id: 'blur',
  symbol: 'e',
  unit: 'µm',
  words: 'blur allowed on the sensor: one pixel unless you say otherwise',
  needs: [givenBlur, pixelPitchUm],
  of: (given, pitch) => (typeof given === 'number' ? given : pitch),
  as: (given, pitch) => given || pitch,
});

const wave = step({
  id: 'waveTerm',
  symbol: 'z_λ',
  unit: 'µm',
  words: 'depth that diffraction allows, after the convention chosen',
  needs: [depthConvention, wavelength, systemNa, subjectIndex],
  of: (convention, nm, NA, n) => waveTerm(convention, nm * MM_PER_NM * UM_PER_MM, NA, n),
});

export const depthOfFieldUm = figure({
  id: 'depthOfFieldUm',
  unit: 'µm',
  symbol: 'T',
  words:
    'whole depth at the subject that is sharp in one frame: a wave term and the blur of a pixel; conventions differ by up to four times',
  source: 'total form of microscopy textbooks, λ n / NA² + n e / (m NA), or the convention chosen',
  needs: [wave, subjectIndex, blur, systemMagnification, systemNa],
  of: (z, n, e, m, NA) => z + detectorTerm(e, m, NA, n),
  as: (z, n, e, m, NA) => `${z} + ${n} × ${e} / (${m} × ${NA})`,
});

export const framesForSubject = figure({
  id: 'framesForSubject',
  unit: '1',
  symbol: 'n_f',
  words: `frames from the front of the subject to its back, each sharing ${100 * USUAL_OVERLAP} % of its depth with the next, by a rail that does not err`,
  source: 'a step of depth × (1 − overlap), the first frame standing for a whole depth',
  needs: [subjectDepth, depthOfFieldUm],
  of: (d, T) => framesOf(UM_PER_MM * d, T, stepOf(T, USUAL_OVERLAP, 0)),
  as: (d, T) => `1 + max(0, ceil((1000 × ${d} − ${T}) / (${T} × (1 − ${USUAL_OVERLAP}))))`,
  bounds: [1, Number.POSITIVE_INFINITY],
});
