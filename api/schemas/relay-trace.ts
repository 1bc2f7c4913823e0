import { z } from '@hono/zod-openapi';
import { FOCUS_PLANES, type ImageQuality } from '../../core/glassworks.ts';
import { BOUNDS } from '../../core/index.ts';
import { exactly } from './exactly.ts';
import { anyRelay } from './parts.ts';

const MOST_FIELDS = 16;
const MOST_WAVELENGTHS = 12;

const wavelength = z.number().min(BOUNDS.wavelengthNm[0]).max(BOUNDS.wavelengthNm[1]);
const [, widest] = BOUNDS.radiusMm;

const question = {
  pupilDiameterMm: z.number().min(0.01).max(500).openapi({ description: "of the objective's exit pupil" }),
  pupilDistanceMm: z
    .number()
    .min(-500)
    .max(2300)
    .openapi({ description: "from the pupil to the relay's first vertex as it stands; negative where the pupil lies behind that" }),
  fieldRadiiMm: z
    .array(z.number().min(0).max(widest))
    .min(1)
    .max(MOST_FIELDS)
    .optional()
    .openapi({ description: 'radii on the sensor: each stands for the slope r / f, f that of the first wavelength' }),
  slopes: z
    .array(z.number().min(-2).max(2))
    .min(1)
    .max(MOST_FIELDS)
    .optional()
    .openapi({ description: 'tangents of the angles at which the beams leave the objective, instead of radii' }),
  wavelengthsNm: z
    .array(wavelength)
    .min(1)
    .max(MOST_WAVELENGTHS)
    .openapi({ description: 'figures of merit are for the first; the others are compared with it' }),
  focus: z.enum(FOCUS_PLANES).openapi({
    description:
      "the plane that is judged: the first wavelength's paraxial focus, the one flat plane with the smallest worst rms spot over the fields asked for, or each field's own smallest rms spot",
  }),
};

/** A question about a relay's glass. Requests are described by this and judged by `traceOn`. */
export const traceRequest = z.strictObject({ relay: anyRelay, ...question }).openapi('TraceRequest');

/** What surrounds the relay, which is judged on its own. */
export const traceEnvelope = z.strictObject({ relay: z.unknown().optional(), ...question });

const count = z.number().int().min(0);
const counted = {
  slope: z.number(),
  radiusMm: z.number().openapi({ description: "the slope times the first wavelength's focal length" }),
  raysClipped: count.openapi({ description: 'rays beyond the height of a surface or beside its sphere' }),
  raysReflected: count.openapi({ description: 'rays totally reflected' }),
};
const shift = (of: string) =>
  z.number().openapi({ description: `where ${of} is smallest, from the first wavelength's paraxial focus, positive away from the lens` });

const litField = z
  .strictObject({
    state: z.literal('known'),
    ...counted,
    raysThrough: count,
    shareThrough: z.number().min(0).max(1).openapi({ description: "of the pupil's area; every mean is over it, evenly by area" }),
    planeMm: z.number().openapi({ description: 'the plane judged, from the last vertex' }),
    centroidMm: z.number(),
    rmsSpotUm: z.number().openapi({ description: 'about the centroid' }),
    sagittalRmsUm: z.number().openapi({ description: 'across the field axis' }),
    tangentialRmsUm: z.number().openapi({ description: 'along the field axis' }),
    rmsWavefrontWaves: z.number().openapi({
      description:
        'piston and tilt removed, on a sphere about where the chief ray meets the plane, through the point where it leaves the glass',
    }),
    strehl: z.number().min(0).max(1).openapi({ description: 'of that wavefront, tilt removed' }),
    focusShiftMm: shift("the field's spot"),
    sagittalFocusShiftMm: shift('its width across the field axis'),
    tangentialFocusShiftMm: shift('its width along the field axis'),
    lateralColourUm: z
      .array(z.number())
      .optional()
      .openapi({ description: "each wavelength's centroid less the first one's; absent if one does not come through" }),
    allColoursRmsSpotUm: z.number().optional().openapi({ description: 'rms spot of all wavelengths together, each counting the same' }),
  })
  .openapi('LitField');

const darkField = z
  .strictObject({ state: z.literal('none'), ...counted, raysThrough: z.literal(0), why: z.string() })
  .openapi('DarkField', { description: 'a field point that no ray reaches' });

export const traceSchema = exactly<ImageQuality>()(
  z
    .strictObject({
      effectiveFocalLengthMm: z.number(),
      backFocalLengthMm: z.number().openapi({ description: 'from the last vertex' }),
      chromaticBackFocusShiftMm: z.array(z.number()).openapi({ description: "each wavelength's back focal length less the first one's" }),
      fields: z.array(z.discriminatedUnion('state', [litField, darkField])),
    })
    .openapi('RelayTrace'),
);
