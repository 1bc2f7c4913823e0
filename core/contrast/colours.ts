import { LUMINOUS_EFFICIENCY, oneWavelength, photopic, type Spectrum } from '../diffraction/spectrum.ts';
import type { SharpSpectrum } from '../pairing/schema.ts';
import { cardinal } from '../trace/cardinal.ts';
import type { Lens } from '../trace/lens.ts';
import { type Prescription, prescription } from '../trace/prescription.ts';
import { MM_PER_NM } from '../units.ts';

/** A lens at the wavelengths of a spectrum. */
export interface Colours {
  readonly prescriptions: readonly Prescription[];
  readonly wavelengthsMm: readonly number[];
  /** Shares of the light: they add up to 1. */
  readonly weights: readonly number[];
  /** The wavelength that the focus is counted from, and by which the pupil is scaled. */
  readonly reference: Prescription;
  /** Paraxial focus of the reference wavelength, from the last vertex, mm. */
  readonly focusMm: number;
  /** Many wavelengths between the few, for where the few do not do; absent in the light of one. */
  readonly between?: Between;
}

/** Wavelengths between those that are traced. */
export interface Between {
  readonly weights: readonly number[];
  /** For each, what each traced wavelength contributes to it. */
  readonly from: readonly (readonly number[])[];
}

/** Wavelengths of the photopic rule: five are exact for everything smoother than the tenth power of the wavelength. */
const PHOTOPIC = photopic();

/** The light in which a pairing judges sharpness. */
export const spectrumOf = (spectrum: SharpSpectrum, wavelengthNm: number): Spectrum =>
  spectrum === 'photopic' ? PHOTOPIC : oneWavelength(wavelengthNm);

/** Visible light outside this, nm, is a few thousandths of it to the eye. */
const [VIOLET_END, RED_END] = [420, 700];
/** Of the table's steps of 10 nm every other one will do: sums over them are as good while neighbours part by less than half a wave. */
const STEP_NM = 20;

/** The table's wavelengths by the polynomial through those of a photopic rule (Lagrange). */
function betweenOf(spectrum: Spectrum): Between {
  const table = [...LUMINOUS_EFFICIENCY].filter(([nm]) => nm >= VIOLET_END && nm <= RED_END && nm % STEP_NM === 0);
  const whole = table.reduce((sum, [, V]) => sum + V, 0);
  return {
    weights: table.map(([, V]) => V / whole),
    from: table.map(([nm]) =>
      spectrum.map(({ wavelengthNm: own }) =>
        spectrum.reduce((product, { wavelengthNm: other }) => (other === own ? product : (product * (nm - other)) / (own - other)), 1),
      ),
    ),
  };
}

const BETWEEN = betweenOf(PHOTOPIC);

/** A lens in the light of a spectrum; its focus is counted from that of `referenceNm`. @throws WavelengthError */
export function coloursOf(lens: Lens, spectrum: Spectrum, referenceNm: number): Colours {
  const reference = prescription(lens, referenceNm);
  return {
    prescriptions: spectrum.map(({ wavelengthNm }) => (wavelengthNm === referenceNm ? reference : prescription(lens, wavelengthNm))),
    wavelengthsMm: spectrum.map(({ wavelengthNm }) => wavelengthNm * MM_PER_NM),
    weights: spectrum.map(({ weight }) => weight),
    reference,
    focusMm: cardinal(reference).backFocalLengthMm,
    ...(spectrum === PHOTOPIC ? { between: BETWEEN } : {}),
  };
}
