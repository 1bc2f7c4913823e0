import { z } from 'zod';
import { hypot2 } from '../numeric.ts';
import { amount, name, quantity } from './quantity.ts';

const pixels = z.number().int().min(2).max(1_000_000);

/** The camera behind it all: the picture area, its pixels, and the mount in front of it. */
export const sensorSchema = z.strictObject({
  name: name.optional(),
  widthMm: quantity('widthMm'),
  heightMm: quantity('heightMm'),
  pixelPitchUm: quantity('pixelPitchUm').optional(),
  columns: pixels.optional(),
  rows: pixels.optional(),
  colourFilter: z.boolean().optional(),
  registerMm: quantity('registerMm').optional(),
  throatDiameterMm: quantity('throatDiameterMm').optional(),
});

export type Sensor = z.infer<typeof sensorSchema>;

/** From corner to corner, mm. */
export const diagonalOf = ({ widthMm, heightMm }: Pick<Sensor, 'widthMm' | 'heightMm'>): number =>
  hypot2(amount(widthMm), amount(heightMm));
