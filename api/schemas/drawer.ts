import { z } from '@hono/zod-openapi';
import { ownId } from '../../core/index.ts';
import type { TakenIn } from '../drawer/take-in.ts';
import { exactly } from './exactly.ts';
import { storedPartSchema } from './parts.ts';
import { problemSchema } from './problem.ts';

/** The drawer's file, and what is told of one that was taken in. */

const count = z.number().int().min(0);

export const drawerFile = z
  .strictObject({
    pupilwalkDrawer: z.literal(1),
    revision: count,
    parts: z.array(storedPartSchema),
    gone: z.array(z.strictObject({ id: ownId, version: z.number().int().min(1) })).optional(),
  })
  .openapi('DrawerFile', { description: 'gone: the last versions of parts that were taken out' });

export const takenInSchema = exactly<TakenIn>()(
  z
    .strictObject({
      added: count,
      replaced: count,
      unchanged: count,
      refused: z.array(
        z.strictObject({
          line: z
            .number()
            .int()
            .min(1)
            .openapi({ description: 'of a table the line in the file, its head being 1; of JSON the place in the list, from 1' }),
          id: z.string().optional(),
          problems: problemSchema.shape.errors,
        }),
      ),
    })
    .openapi('TakenIn'),
);
