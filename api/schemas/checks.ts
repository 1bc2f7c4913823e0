import { z } from '@hono/zod-openapi';

const number = z
  .strictObject({
    what: z.string().optional().openapi({ description: 'which of the numbers it is, where there are several' }),
    expected: z.string().openapi({ description: 'as it is printed; of a law, as it follows' }),
    computed: z.number().optional().openapi({ description: 'left out where nothing came out: then `fault` says why' }),
    below: z.number().openapi({ description: 'by how much it may lie below what is expected' }),
    above: z.number(),
    tolerance: z.string().openapi({ description: 'how below and above arise' }),
    holds: z.boolean(),
    fault: z.string().optional(),
    figure: z.string().optional(),
  })
  .openapi('CheckedNumber');

const check = z
  .strictObject({
    id: z.string().optional().openapi({ description: 'left out of a law' }),
    claim: z.string(),
    source: z.string().openapi({ description: 'where it is printed, in neutral words' }),
    known: z.enum(['read', 'formula read', 'from memory', 'by definition']),
    how: z.string().optional(),
    numbers: z.array(number),
  })
  .openapi('Check');

/** Every published check and every law, as the server works it out. */
export const checksSchema = z
  .strictObject({
    says: z.array(z.string()),
    numbers: z.int(),
    sources: z.int(),
    equalities: z.int(),
    failing: z.int(),
    subjects: z.array(z.strictObject({ title: z.string(), checks: z.array(check) })),
  })
  .openapi('Checks');
