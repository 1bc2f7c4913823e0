import { photopic, type Spectrum } from '../diffraction/spectrum.ts';
import type { SharpSpectrum } from '../pairing/schema.ts';
import { cardinal } from '../trace/cardinal.ts';
import type { Lens } from '../trace/lens.ts';
import { prescription } from '../trace/prescription.ts';
import { MM_PER_NM } from '../units.ts';
import type { Colours } from './pairs.ts';

/** Wavelengths of the photopic rule: five are exact for everything smoother than the tenth power of the wavelength. */
const PHOTOPIC = photopic();

/** The light in which a pairing judges sharpness. */
export const spectrumOf = (spectrum: SharpSpectrum, wavelengthNm: number): Spectrum =>
  spectrum === 'photopic' ? PHOTOPIC : [{ wavelengthNm, weight: 1 }];

/** A lens in the light of a spectrum; its focus is counted from that of `referenceNm`. @throws WavelengthError */
export function coloursOf(lens: Lens, spectrum: Spectrum, referenceNm: number): Colours {
  const reference = prescription(lens, referenceNm);
  return {
    prescriptions: spectrum.map(({ wavelengthNm }) => (wavelengthNm === referenceNm ? reference : prescription(lens, wavelengthNm))),
    wavelengthsMm: spectrum.map(({ wavelengthNm }) => wavelengthNm * MM_PER_NM),
    weights: spectrum.map(({ weight }) => weight),
    reference,
    focusMm: cardinal(reference).backFocalLengthMm,
  };
}
