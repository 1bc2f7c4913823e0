import type { Problem } from '../errors.ts';
import type { Relay } from '../parts/relay.ts';
import type { Discs } from '../pupil/discs.ts';
import type { Pairing, SharpFocus, SharpSpectrum } from './schema.ts';
import { DEFAULTS } from './schema.ts';

/** What a sharp circle is judged by. */
export interface SharpQuestion {
  /** The stops as they are seen in the objective's exit pupil. */
  readonly discs: Discs;
  /** From the exit pupil to the relay's rim, where its first vertex stands. */
  readonly pupilDistanceMm: number;
  readonly frequencyLpPerMm: number;
  /** Contrast with the relay's aberrations over contrast without that still counts as sharp. */
  readonly relativeContrast: number;
  readonly focus: SharpFocus;
  readonly spectrum: SharpSpectrum;
  readonly wavelengthNm: number;
  /** Height on the sensor per unit of slope. */
  readonly scaleMm: number;
  /** No farther from the middle of the picture than this is looked. */
  readonly limitMm: number;
}

/** What the best focus over the picture is judged by. */
export interface FocusQuestion extends Pick<SharpQuestion, 'discs' | 'pupilDistanceMm' | 'frequencyLpPerMm' | 'spectrum' | 'wavelengthNm'> {
  /** Out to here. */
  readonly cornerSlope: number;
}

/** A relay whose glass is known, as a pairing needs it. */
export interface GlassRelay {
  readonly focalLengthMm: number;
  readonly backFocalLengthMm: number;
  /** From the first vertex to the last. */
  readonly thicknessMm: number;
  /** From the first vertex, positive into the lens. */
  readonly frontPrincipalPlaneMm: number;
  /** As wide as all of its surfaces let light through: Infinity of planes alone. */
  readonly clearDiameterMm: number;
  /** Light at a slope over the light at the axis that the way in which the relay maps angles alone leaves. */
  mappingFactor(pupilDistanceMm: number, slope: number): number;
  /** Radius on the sensor out to which the relay is sharp. */
  sharpRadiusMm(question: SharpQuestion): number;
  /** From the nearest to the farthest of the field points' own best foci, on the sensor's side; 0 where no light arrives. */
  focusSpreadMm(question: FocusQuestion): number;
}

/**
 * What works with glass. It is handed to whatever works a pairing out instead of being imported there:
 * glasses and tracing are many times the size of the rest, most pairings do without, and the page
 * fetches them when a relay with glass turns up. A relay with glass cannot be worked out without.
 */
export interface Glassworks {
  /** The relay at a wavelength, or what is wrong with its glass. */
  relay(relay: Relay, wavelengthNm: number): GlassRelay | readonly Problem[];
}

/** What the glass of this pairing's relay is, or what is wrong with it; undefined where it has none. */
export function worked({ relay, wavelengthNm }: Pairing, works: Glassworks | undefined): GlassRelay | readonly Problem[] | undefined {
  if (!relay.glass) return undefined;
  if (!works) throw new TypeError('a relay with glass is worked out with glassworks');
  return works.relay(relay, wavelengthNm ?? DEFAULTS.wavelengthNm);
}

/** The same for a pairing that has passed `contradictions`. */
export function glassOf(pairing: Pairing, works: Glassworks | undefined): GlassRelay | undefined {
  const glass = worked(pairing, works);
  return glass && 'focalLengthMm' in glass ? glass : undefined;
}
