import { type Colours, coloursOf, spectrumOf } from '../contrast/colours.ts';
import type { Setting } from '../contrast/field.ts';
import { depthOfFieldUm } from '../pairing/depth-of-field.ts';
import { bareRigOf, type Evaluation, raw, stopsOf } from '../pairing/evaluate.ts';
import { systemMagnification } from '../pairing/first-order.ts';
import { sharpDetail } from '../pairing/image-circles.ts';
import { subjectIndex } from '../pairing/leaves.ts';
import { pixelPitchUm } from '../pairing/resolution.ts';
import { DEFAULTS, type SharpFocus } from '../pairing/schema.ts';
import { coverageOf } from '../pairing/verdict.ts';
import { diagonalOf } from '../parts/sensor.ts';
import { type Rig, type SeenStops, scaleOf, seenStops } from '../pupil/stops.ts';
import { type Cardinal, cardinal } from '../trace/cardinal.ts';
import { type Lens, reversed } from '../trace/lens.ts';
import { type Prescription, prescription } from '../trace/prescription.ts';

/** What of the picture is to be sharp. */
export const SHARP_OVER = ['picture', 'subject'] as const;
export type SharpOver = (typeof SHARP_OVER)[number];

/** Half of the subject's diagonal on the sensor; undefined where its size is not told. */
function subjectCorner(evaluation: Evaluation): number | undefined {
  const subject = coverageOf(evaluation).subject;
  return subject && subject.diagonalMm / 2;
}

/** How far the objective's exit pupil may be from where it is taken to be, mm. */
export const pupilDoubtOf = ({ inputs }: Evaluation): number =>
  inputs.find((input) => input.path === '/objective/exitPupilFromShoulderMm')?.plusMinus ?? 0;

/** A lens one way round, in the light that it is judged in. */
export interface WayRound {
  readonly reversed: boolean;
  readonly lens: Lens;
  readonly colours: Colours;
  /** At the pairing's wavelength, which focus and spots refer to. */
  readonly prescribed: Prescription;
  readonly cardinal: Cardinal;
}

/** What a pairing's glass is judged by, and where it may stand. */
export interface Judging {
  /** As listed, and the other way round. */
  readonly ways: readonly [WayRound, WayRound];
  /** The way round in which it stands. */
  readonly reversed: boolean;
  readonly rig: Rig;
  readonly over: SharpOver;
  /** Half of its diagonal, on the sensor. */
  readonly cornerMm: number;
  /** On the sensor, lp/mm. */
  readonly frequency: number;
  readonly wavelengthNm: number;
  readonly criterion: number;
  readonly focus: SharpFocus;
  readonly magnification: number;
  /** Of what surrounds the subject. */
  readonly subjectIndex: number;
  /** Of the subject, for one frame, µm. */
  readonly depthOfFieldUm: number;
  /** How far the objective's exit pupil may be from where it is taken to be, mm. */
  readonly pupilDoubtMm: number;
  readonly pixelUm: number;
}

/**
 * The judging of a pairing with a lens in its relay's place.
 *
 * @param lens as listed, whichever way round the relay stands
 * @param over what is to be sharp; of a subject whose size is not told, all of the picture
 */
export function judgingOf(evaluation: Evaluation, lens: Lens, over: SharpOver = 'picture'): Judging {
  const { pairing, sheet } = evaluation;
  const { wavelengthNm = DEFAULTS.wavelengthNm, sharp, relay } = pairing;
  const spectrum = spectrumOf(sharp?.spectrum ?? DEFAULTS.sharpSpectrum, wavelengthNm);
  const way = (turned: boolean): WayRound => {
    const standing = turned ? reversed(lens) : lens;
    const prescribed = prescription(standing, wavelengthNm);
    return {
      reversed: turned,
      lens: standing,
      colours: coloursOf(standing, spectrum, wavelengthNm),
      prescribed,
      cardinal: cardinal(prescribed),
    };
  };
  const subject = over === 'subject' ? subjectCorner(evaluation) : undefined;
  return {
    ways: [way(false), way(true)],
    reversed: relay.reversed ?? false,
    rig: stopsOf(sheet)?.rig ?? bareRigOf(sheet),
    over: subject === undefined ? 'picture' : 'subject',
    cornerMm: subject ?? diagonalOf(pairing.sensor) / 2,
    frequency: raw(sheet, sharpDetail) as number,
    wavelengthNm,
    pupilDoubtMm: pupilDoubtOf(evaluation),
    magnification: raw(sheet, systemMagnification) as number,
    subjectIndex: raw(sheet, subjectIndex) as number,
    depthOfFieldUm: raw(sheet, depthOfFieldUm) as number,
    pixelUm: raw(sheet, pixelPitchUm) as number,
    criterion: sharp?.relativeContrast ?? DEFAULTS.relativeContrast,
    focus: sharp?.focus ?? DEFAULTS.sharpFocus,
  };
}

/** The rig with the lens one way round at an infinity space. */
const rigAt = ({ rig }: Judging, way: WayRound, infinitySpaceMm: number): Rig => ({
  ...rig,
  infinitySpaceMm,
  principalPlaneFromRimMm: way.cardinal.frontPrincipalPlaneMm,
  relayFocalLengthMm: way.cardinal.effectiveFocalLengthMm,
});

/** What contrast is worked out from there, and the height on the sensor per unit of slope. */
export function settingAt(
  judging: Judging,
  way: WayRound,
  infinitySpaceMm: number,
): Setting & { readonly discs: SeenStops; readonly scaleMm: number } {
  const rig = rigAt(judging, way, infinitySpaceMm);
  return {
    colours: way.colours,
    discs: seenStops(rig),
    pupilDistanceMm: infinitySpaceMm - rig.exitPupilFromShoulderMm,
    frequency: judging.frequency,
    scaleMm: scaleOf(rig),
  };
}
