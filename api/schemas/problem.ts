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
  413: problem('the body is larger than 256 kB, or than 8 MB where a drawer is taken in'),
  415: problem('the content type is none that the route reads'),
  422: problem('JSON that fails the schema, names an unknown part or contradicts itself'),
};

/** What a route that searches may say instead of its answer. */
export const BUSY_REFUSAL = { 503: problem('too many searches wait already; Retry-After says when to ask again') };

/** What a route that writes the drawer may say instead of its answer. */
export const WRITE_REFUSALS = {
  401: problem('sent from another device than the server runs on, without the key that it printed when it started'),
  409: problem("the id is taken or is the catalogue's, or the drawer is full, or its file is not understood and left as it is"),
  422: BODY_REFUSALS[422],
  503: problem('the drawer cannot be written now; it is as it was'),
  507: problem('the disk is full; the drawer is as it was'),
};

/** What a route that changes what is in the drawer may say besides. */
export const CHANGE_REFUSALS = {
  ...WRITE_REFUSALS,
  404: problem('no part of the drawer has this id'),
  412: problem('If-Match names a version that has been changed since; ETag tells the present one'),
  428: problem('If-Match is missing'),
};

/** What the routes that hand out the drawer may say instead of it. */
export const EXPORT_REFUSALS = { ...ANY_REFUSAL, 409: problem('the file of the drawer is not understood and left as it is') };
