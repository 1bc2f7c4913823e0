import { z } from 'zod';
import { DEPTH_CONVENTIONS } from '../diffraction/depth.ts';
import { objectiveSchema } from '../parts/objective.ts';
import { bounded, quantity } from '../parts/quantity.ts';
import { relaySchema } from '../parts/relay.ts';
import { sensorSchema } from '../parts/sensor.ts';
import { stopSchema } from '../parts/stop.ts';

const subjectSchema = z.strictObject({
  widthMm: bounded('subjectWidthMm').optional(),
  heightMm: bounded('subjectHeightMm').optional(),
  depthMm: bounded('subjectDepthMm').optional(),
  index: bounded('index').optional(),
});

const depthSchema = z.strictObject({
  convention: z.enum(DEPTH_CONVENTIONS).optional(),
  blurUm: bounded('blurUm').optional(),
});

/** How a picture is taken: with one flat focus for all of it, or every part at its own best. */
export const SHARP_FOCUS = ['one frame', 'stack'] as const;
export type SharpFocus = (typeof SHARP_FOCUS)[number];
/** The light in which sharpness is judged: white as the eye weighs it, or the pairing's wavelength alone. */
export const SHARP_SPECTRA = ['photopic', 'one wavelength'] as const;
export type SharpSpectrum = (typeof SHARP_SPECTRA)[number];

/** How sharp is sharp: used with the relay's glass. `frequency` is on the sensor, lp/mm. */
const sharpSchema = z.strictObject({
  relativeContrast: bounded('relativeContrast').optional(),
  frequency: bounded('frequencyLpPerMm').optional(),
  focus: z.enum(SHARP_FOCUS).optional(),
  spectrum: z.enum(SHARP_SPECTRA).optional(),
});

/** Everything of a pairing but its three parts. */
export const settingShape = {
  infinitySpaceMm: quantity('infinitySpaceMm'),
  stops: z.array(stopSchema).max(8).optional(),
  subject: subjectSchema.optional(),
  wavelengthNm: bounded('wavelengthNm').optional(),
  sensorOffsetMm: quantity('sensorOffsetMm').optional(),
  litThreshold: bounded('litThreshold').optional(),
  depth: depthSchema.optional(),
  sharp: sharpSchema.optional(),
  radiiMm: z.array(bounded('radiusMm')).min(1).max(512).optional(),
};

/** An objective, a relay, a sensor and their spacing: shape and bounds; `contradictions` does the rest. */
export const pairingSchema = z.strictObject({
  objective: objectiveSchema,
  relay: relaySchema,
  sensor: sensorSchema,
  ...settingShape,
});

export type Pairing = z.infer<typeof pairingSchema>;

/** The values that an absent setting stands for. */
export const DEFAULTS = {
  wavelengthNm: 550,
  sensorOffsetMm: 0,
  litThreshold: 0.5,
  immersionIndex: 1,
  depthConvention: 'wave-and-pixel',
  /** Hopkins's tolerance (1957, from memory). */
  relativeContrast: 0.8,
  sharpFocus: 'one frame',
  sharpSpectrum: 'photopic',
} as const;
