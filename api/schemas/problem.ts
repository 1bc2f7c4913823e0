import { z } from '@hono/zod-openapi';
import type { ProblemAnswer } from '../problems.ts';
import { exactly } from './exactly.ts';

/** RFC 9457, with the faults one by one. */
export const problemSchema = exactly<ProblemAnswer>()(
  z
    .strictObject({
      type: z.literal('about:blank'),
      title: z.string(),
      status: z.number().int(),
      detail: z.string(),
      errors: z.array(
        z.strictObject({
          path: z.string().openapi({ description: 'JSON Pointer into the body; empty where the request itself is meant' }),
          code: z.string(),
          message: z.string(),
          given: z.string(),
          expected: z.string(),
        }),
      ),
    })
    .openapi('Problem'),
);

const problem = (description: string) => ({ description, content: { 'application/problem+json': { schema: problemSchema } } });

/** What any route may say instead of its answer. */
export const ANY_REFUSAL = { 403: problem('asked under a foreign name or by a foreign page') };

/** What a route that reads a body may say instead of its answer. */
export const BODY_REFUSALS = {
  ...ANY_REFUSAL,
  400: problem('the body is not JSON'),
  413: problem('the body is larger than 256 kB'),
  415: problem('the content type is not application/json'),
  422: problem('JSON that fails the schema, names an unknown part or contradicts itself'),
};
