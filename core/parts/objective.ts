import { z } from 'zod';
import { name, quantity } from './quantity.ts';

const CORRECTIONS = ['achromat', 'semi-apochromat', 'apochromat'] as const;

/** An infinity-corrected objective, as engraved and as measured. */
export const objectiveSchema = z.strictObject({
  name: name.optional(),
  magnification: quantity('magnification'),
  na: quantity('na'),
  referenceFocalLengthMm: quantity('referenceFocalLengthMm'),
  fieldNumberMm: quantity('fieldNumberMm').optional(),
  testedFieldMm: quantity('testedFieldMm').optional(),
  workingDistanceMm: quantity('workingDistanceMm').optional(),
  parfocalDistanceMm: quantity('parfocalDistanceMm').optional(),
  noseDiameterMm: quantity('noseDiameterMm').optional(),
  mountThread: name.optional(),
  coverGlassMm: quantity('coverGlassMm').optional(),
  immersionIndex: quantity('immersionIndex').optional(),
  correction: z.enum(CORRECTIONS).optional(),
  flatField: z.boolean().optional(),
  tubeLensCorrectsColour: z.boolean().optional(),
  exitPupilFromShoulderMm: quantity('exitPupilFromShoulderMm').optional(),
});

export type Objective = z.infer<typeof objectiveSchema>;
