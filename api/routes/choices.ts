import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import type { Stock } from '../catalogue.ts';
import { readJson } from '../limits.ts';
import { problemAnswer, Refusal } from '../problems.ts';
import { readAsked } from '../read-choices.ts';
import { choicesRequest, choicesSchema, oneMoreSchema } from '../schemas/choices.ts';
import { BODY_REFUSALS, BUSY_REFUSAL } from '../schemas/problem.ts';
import type { Desk } from '../searching/desk.ts';
import type { Answers } from '../searching/task.ts';
import { body } from './described.ts';

/** From what is wanted to the pairings that give it, and to the part that would open more. */

const LINES = 'application/x-ndjson';

const eitherWay = <S extends z.ZodType>(schema: S, description: string) => ({
  description: `${description}; asked for as ${LINES} it comes in lines: {"done", "of"} from time to time, and the answer last`,
  content: { 'application/json': { schema }, [LINES]: { schema: z.string() } },
});

export const choicesRoute = createRoute({
  method: 'post',
  path: '/api/choices',
  summary: 'the pairings that meet a wish, and those that nearly do',
  request: body(choicesRequest),
  responses: { 200: eitherWay(choicesSchema, 'sorted as asked, with the frontier among them'), ...BODY_REFUSALS, ...BUSY_REFUSAL },
});

export const oneMoreRoute = createRoute({
  method: 'post',
  path: '/api/choices/one-more',
  summary: 'what one more part would open, with what is owned',
  request: body(choicesRequest),
  responses: { 200: eitherWay(oneMoreSchema, 'the parts that open anything'), ...BODY_REFUSALS, ...BUSY_REFUSAL },
});

/**
 * Searches, and answers whole or in lines as it goes. Who hangs up ends the search.
 * @throws Refusal 422, 503
 */
export async function searched<Name extends keyof Answers>(c: Context, name: Name, stock: Stock, desk: Desk): Promise<Response> {
  const { asked, problems } = readAsked(await readJson(c), stock);
  if (!asked) throw new Refusal(422, problems);
  const { signal } = c.req.raw;
  if (!(c.req.header('accept') ?? '').includes(LINES)) {
    try {
      return c.json(await desk.search({ name, asked }, signal));
    } catch (error) {
      // Nobody is there any more to be answered.
      if (signal.aborted) return new Response(null, { status: 499 });
      throw error;
    }
  }
  const ending = new AbortController();
  const either = AbortSignal.any([signal, ending.signal]);
  const encoder = new TextEncoder();
  let open = true;
  const lines = new ReadableStream<Uint8Array>({
    async start(stream) {
      const write = (line: unknown): void => {
        if (open) stream.enqueue(encoder.encode(`${JSON.stringify(line)}\n`));
      };
      try {
        write(await desk.search({ name, asked }, either, write));
      } catch (error) {
        if (!either.aborted) write(await problemAnswer(error).json());
      }
      if (open) stream.close();
      open = false;
    },
    cancel() {
      open = false;
      ending.abort();
    },
  });
  return new Response(lines, { headers: { 'content-type': LINES } });
}
