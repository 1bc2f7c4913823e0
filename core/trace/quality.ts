import { UM_PER_MM } from '../units.ts';
import { type Beam, launch } from './beam.ts';
import { cardinal } from './cardinal.ts';
import { oneFrame, valueAt } from './focus.ts';
import type { Lens } from './lens.ts';
import { ringsAndSpokes } from './points.ts';
import { type Prescription, prescription } from './prescription.ts';
import { type Rays, REFLECTED, rays, trace } from './rays.ts';
import { meanAt, type Spot, spot } from './spot.ts';
import { strehl, withoutTilt } from './strehl.ts';
import { type Through, through } from './through.ts';
import { chiefRay, wavefront } from './wavefront.ts';

/**
 * Where the image is judged: on the paraxial focal plane, on the one flat plane whose worst spot is
 * smallest, or each field point at its own smallest spot; always for the first wavelength.
 */
export const FOCUS_PLANES = ['paraxial', 'one-frame', 'each-best'] as const;

/** What is asked of a lens with the objective's exit pupil before it. */
export interface QualityAsked {
  readonly pupilDiameterMm: number;
  /** From the pupil to the first vertex. */
  readonly pupilDistanceMm: number;
  readonly slopes: readonly number[];
  /** The first is the one that is judged; the others are compared with it. */
  readonly wavelengthsNm: readonly number[];
  readonly focus: (typeof FOCUS_PLANES)[number];
}

interface Counted {
  readonly slope: number;
  /** The slope times the focal length. */
  readonly radiusMm: number;
  /** Rays that met no glass: beyond a surface's height, or beside its sphere. */
  readonly raysClipped: number;
  readonly raysReflected: number;
}

/** A field point that nothing reaches. */
interface DarkField extends Counted {
  readonly state: 'none';
  readonly raysThrough: 0;
  readonly why: string;
}

/**
 * A field point's image on the plane `planeMm` behind the last vertex. Means are by area over the part of
 * the pupil that comes through; spots are rms about the centroid, sagittal across the field axis and
 * tangential along it; the wavefront's piston and tilt are taken out, and so they are in the Strehl ratio.
 */
interface LitField extends Counted {
  readonly state: 'known';
  readonly raysThrough: number;
  /** Of the pupil's area. */
  readonly shareThrough: number;
  readonly planeMm: number;
  readonly centroidMm: number;
  readonly rmsSpotUm: number;
  readonly sagittalRmsUm: number;
  readonly tangentialRmsUm: number;
  readonly rmsWavefrontWaves: number;
  readonly strehl: number;
  /** From the paraxial focal plane to where this field's spot is smallest, positive away from the lens; likewise its two directions. */
  readonly focusShiftMm: number;
  readonly sagittalFocusShiftMm: number;
  readonly tangentialFocusShiftMm: number;
  /** For each wavelength its centroid less the first one's, along the field; absent if one of them does not come through at all. */
  readonly lateralColourUm?: number[];
  /** About the centroid of all wavelengths, each counting the same; absent like the lateral colour. */
  readonly allColoursRmsSpotUm?: number;
}

export interface ImageQuality {
  readonly effectiveFocalLengthMm: number;
  readonly backFocalLengthMm: number;
  /** For each wavelength its back focal length less the first one's. */
  readonly chromaticBackFocusShiftMm: number[];
  readonly fields: (LitField | DarkField)[];
}

/** 384 rays: spots of relays to a hundred-thousandth, and a clipped beam's area to about one in a hundred. */
const POINTS = ringsAndSpokes(12, 32);

/** A field point's beam in one wavelength. */
interface Traced {
  readonly from: Beam;
  readonly bundle: Rays;
  readonly came: Through;
  /** Flat, and without width, where nothing came through. */
  readonly spot: Spot;
}

/**
 * Image quality over the field. The lens must have power at every wavelength asked for.
 * @throws WavelengthError where a glass is not known for one
 */
export function imageQuality(lens: Lens, asked: QualityAsked): ImageQuality {
  const colours = asked.wavelengthsNm.map((nm) => prescription(lens, nm));
  const [first] = colours as [Prescription];
  const backFocal = colours.map((colour) => cardinal(colour).backFocalLengthMm);
  const { effectiveFocalLengthMm, backFocalLengthMm } = cardinal(first);
  const pass = (colour: Prescription, slope: number): Traced => {
    const from = { pupilRadiusMm: asked.pupilDiameterMm / 2, pupilDistanceMm: asked.pupilDistanceMm, slope };
    const bundle = launch(rays(POINTS.count), POINTS, from);
    trace(colour, bundle);
    const came = through(bundle, POINTS);
    return { from, bundle, came, spot: spot(bundle, came.weights, backFocalLengthMm) };
  };
  const traced = asked.slopes.map((slope) => pass(first, slope));
  const frame = oneFrame(traced.map(({ spot }) => spot.square)) ?? backFocalLengthMm;
  const planeFor = { paraxial: () => backFocalLengthMm, 'one-frame': () => frame, 'each-best': (of: Spot) => of.square.at }[asked.focus];

  const field = (one: Traced): LitField | DarkField => {
    const { slope } = one.from;
    const raysReflected = one.bundle.status.reduce((sum, status) => sum + Number(status === REFLECTED), 0);
    const counted = {
      slope,
      radiusMm: slope * effectiveFocalLengthMm,
      raysClipped: POINTS.count - one.came.rays - raysReflected,
      raysReflected,
    };
    if (one.came.rays === 0) return { state: 'none', ...counted, raysThrough: 0, why: lostWhy(counted) };
    const planeMm = planeFor(one.spot);
    const others = colours.slice(1).map((colour) => pass(colour, slope));
    return {
      state: 'known',
      ...counted,
      raysThrough: one.came.rays,
      shareThrough: Math.min(1, one.came.share),
      planeMm,
      ...spotOn(one.spot, planeMm),
      ...wavesOn(first, one, planeMm, asked.wavelengthsNm[0] as number),
      focusShiftMm: one.spot.square.at - backFocalLengthMm,
      sagittalFocusShiftMm: one.spot.sagittal.square.at - backFocalLengthMm,
      tangentialFocusShiftMm: one.spot.tangential.square.at - backFocalLengthMm,
      ...(others.every(({ came }) => came.rays > 0) ? coloursOn([one.spot, ...others.map((other) => other.spot)], planeMm) : {}),
    };
  };
  return {
    effectiveFocalLengthMm,
    backFocalLengthMm,
    chromaticBackFocusShiftMm: backFocal.map((back) => back - backFocalLengthMm),
    fields: traced.map(field),
  };
}

const lostWhy = ({ raysClipped, raysReflected }: Counted): string =>
  raysReflected === 0
    ? 'the whole beam passes beside the glass'
    : raysClipped === 0
      ? 'the whole beam is totally reflected'
      : 'all of the beam passes beside the glass or is totally reflected';

const rootUm = (squareMm2: number): number => UM_PER_MM * Math.sqrt(squareMm2);

const spotOn = ({ sagittal, tangential, square }: Spot, planeMm: number) => ({
  centroidMm: meanAt(tangential, planeMm),
  rmsSpotUm: rootUm(valueAt(square, planeMm)),
  sagittalRmsUm: rootUm(valueAt(sagittal.square, planeMm)),
  tangentialRmsUm: rootUm(valueAt(tangential.square, planeMm)),
});

function wavesOn(lens: Prescription, { from, bundle, came }: Traced, planeMm: number, wavelengthNm: number) {
  const waves = wavefront(bundle, chiefRay(lens, from, bundle, POINTS), planeMm, wavelengthNm);
  const rmsWavefrontWaves = withoutTilt(waves, POINTS, came.weights);
  return { rmsWavefrontWaves, strehl: strehl(waves, came.weights) };
}

function coloursOn(spots: readonly [Spot, ...Spot[]], planeMm: number) {
  const along = spots.map(({ tangential }) => meanAt(tangential, planeMm));
  const middle = along.reduce((sum, y) => sum + y, 0) / spots.length;
  const square = spots.reduce((sum, one, i) => sum + valueAt(one.square, planeMm) + ((along[i] as number) - middle) ** 2, 0);
  return {
    lateralColourUm: along.map((y) => UM_PER_MM * (y - (along[0] as number))),
    allColoursRmsSpotUm: rootUm(square / spots.length),
  };
}
