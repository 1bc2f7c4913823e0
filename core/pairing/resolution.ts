import { AIRY_ZERO, airyDiameter, rayleigh } from '../diffraction/airy.ts';
import { systemMtf } from '../diffraction/mtf.ts';
import { figure, Gap, openStep, step } from '../figure.ts';
import { MM_PER_NM, MM_PER_UM, UM_PER_MM } from '../units.ts';
import { systemNa, workingFNumber } from './aperture.ts';
import { systemMagnification } from './first-order.ts';
import { columns, givenPitch, height, rows, wavelength, width } from './leaves.ts';

const INCOHERENT = 'incoherent imaging of a round pupil without aberration';
const PIXELS_PER_MP = 1e-6;

export const wavelengthMm = step({
  id: 'wavelengthMm',
  symbol: 'λ_mm',
  unit: 'mm',
  words: 'wavelength in mm',
  needs: [wavelength],
  of: (nm) => nm * MM_PER_NM,
  as: (nm) => `${nm} × 10^(−6)`,
});

/** As given, or from the sensor's width and its pixels in a row. */
export const pixelPitchUm = openStep({
  id: 'pitch',
  symbol: 'p',
  unit: 'µm',
  words: 'pixel pitch',
  needs: [givenPitch, width, columns],
  of: (p, W, n) =>
    typeof p === 'number' ? p : typeof W === 'number' && typeof n === 'number' ? (UM_PER_MM * W) / n : Gap.unknown('/sensor/pixelPitchUm'),
  as: (p, W, n) => p || `1000 × ${W} / ${n}`,
});

/** Pixels in millions: counted, or as many as the pitch fits. */
export const pixelCount = openStep({
  id: 'pixelCount',
  symbol: 'n_MP',
  unit: 'MP',
  words: "the sensor's pixels, in millions",
  needs: [columns, rows, width, height, pixelPitchUm],
  of: (nx, ny, W, H, p) =>
    typeof nx === 'number' && typeof ny === 'number'
      ? nx * ny * PIXELS_PER_MP
      : typeof W === 'number' && typeof H === 'number' && typeof p === 'number'
        ? (W * H) / (p * p)
        : Gap.unknown('/sensor/pixelPitchUm'),
  as: (nx, ny, W, H, p) => (nx && ny ? `${nx} × ${ny} / 10^6` : `${W} × ${H} / ${p}²`),
});

export const rayleighUm = figure({
  id: 'rayleighUm',
  unit: 'µm',
  symbol: 'δ_R',
  words: 'finest separation at the subject after Rayleigh',
  source: "Rayleigh's criterion, (k/2) λ / NA, k = first zero of J1 over π",
  needs: [wavelengthMm, systemNa],
  of: (l, NA) => UM_PER_MM * rayleigh(l, NA),
  as: (l, NA) => `1000 × ${AIRY_ZERO} / 2 × ${l} / ${NA}`,
});

export const airyDiameterUm = figure({
  id: 'airyDiameterUm',
  unit: 'µm',
  symbol: 'd_A',
  words: 'diameter of the Airy disc on the sensor',
  source: 'first dark ring of the Airy pattern, 2 k λ N',
  needs: [wavelengthMm, workingFNumber],
  of: (l, N) => UM_PER_MM * airyDiameter(l, N),
  as: (l, N) => `1000 × 2 × ${AIRY_ZERO} × ${l} × ${N}`,
});

export const cutoffObjectLpPerMm = figure({
  id: 'cutoffObjectLpPerMm',
  unit: 'lp/mm',
  symbol: 'ν_o',
  words: 'finest pattern at the subject that passes at all',
  source: INCOHERENT,
  needs: [systemNa, wavelengthMm],
  of: (NA, l) => (2 * NA) / l,
  as: (NA, l) => `2 × ${NA} / ${l}`,
});

export const cutoffImageLpPerMm = figure({
  id: 'cutoffImageLpPerMm',
  unit: 'lp/mm',
  symbol: 'ν_i',
  words: 'finest pattern on the sensor that passes at all',
  source: INCOHERENT,
  needs: [wavelengthMm, workingFNumber],
  of: (l, N) => 1 / (l * N),
  as: (l, N) => `1 / (${l} × ${N})`,
});

export const nyquistLpPerMm = figure({
  id: 'nyquistLpPerMm',
  unit: 'lp/mm',
  symbol: 'ν_N',
  words: 'finest pattern on the sensor that the pixels can record',
  source: 'sampling theorem: two pixels a period',
  needs: [pixelPitchUm],
  of: (p) => 1 / (2 * p * MM_PER_UM),
  as: (p) => `1000 / (2 × ${p})`,
});

export const pixelAtSubjectUm = figure({
  id: 'pixelAtSubjectUm',
  unit: 'µm',
  symbol: 'p_o',
  words: 'what one pixel sees at the subject',
  source: 'definition of magnification',
  needs: [pixelPitchUm, systemMagnification],
  of: (p, m) => p / m,
  as: (p, m) => `${p} / ${m}`,
});

export const resolvedDetailUm = figure({
  id: 'resolvedDetailUm',
  unit: 'µm',
  symbol: 'δ',
  words: 'finest separation at the subject that the aperture resolves and the pixels record; colour-filter sensors want a little more',
  source: "Rayleigh's criterion, and two pixels a period (sampling theorem): the coarser of the two",
  needs: [rayleighUm, pixelAtSubjectUm],
  of: (rayleigh, pixel) => Math.max(rayleigh, 2 * pixel),
  as: (rayleigh, pixel) => `max(${rayleigh}, 2 × ${pixel})`,
});

export const samplingRatio = figure({
  id: 'samplingRatio',
  unit: '1',
  symbol: 'q_s',
  words:
    'finest half-period of the optics over the pixel pitch: 1 is critical, above it pixels outnumber the detail; colour-filter sensors want more',
  source: 'sampling theorem against the cut-off 1 / (λ N)',
  needs: [wavelengthMm, workingFNumber, pixelPitchUm],
  of: (l, N, p) => (l * N) / (2 * p * MM_PER_UM),
  as: (l, N, p) => `1000 × ${l} × ${N} / (2 × ${p})`,
});

export const contrastAtNyquist = figure({
  id: 'contrastAtNyquist',
  unit: '1',
  symbol: 'C_N',
  words: 'contrast left, after diffraction and pixel, of the finest pattern that the pixels can record; the relay counted as perfect',
  source: 'diffraction MTF of a round pupil times sin(π p ν)/(π p ν)',
  needs: [nyquistLpPerMm, cutoffImageLpPerMm],
  of: (nyquist, cutoff) => systemMtf(nyquist, cutoff, 1 / (2 * nyquist)),
  as: (nyquist, cutoff) =>
    `2 / π × (acos(min(1, ${nyquist} / ${cutoff})) − min(1, ${nyquist} / ${cutoff}) × √(1 − min(1, ${nyquist} / ${cutoff})²)) × 2 / π`,
  bounds: [0, 1],
});

export const opticalDetailMegapixels = figure({
  id: 'opticalDetailMegapixels',
  unit: 'MP',
  symbol: 'n_opt',
  words: 'square samples over the whole sensor that the optics could fill',
  source: 'sampling theorem: two samples a period of the cut-off, each way',
  needs: [width, height, wavelengthMm, workingFNumber],
  of: (W, H, l, N) => ((4 * W * H) / (l * N) ** 2) * PIXELS_PER_MP,
  as: (W, H, l, N) => `4 × ${W} × ${H} / (${l} × ${N})² / 10^6`,
});
