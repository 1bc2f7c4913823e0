import { createRoute, z } from '@hono/zod-openapi';
import { abbeNumber, GLASS_NAMES, glassNamed, type ImageQuality, indexAtLine, type Medium, tracedRelay } from '../../core/glassworks.ts';
import { type Problem, problemsOf, type Relay, relaySchema, resolveParts, type Shelf } from '../../core/index.ts';
import { Refusal } from '../problems.ts';
import { ANY_REFUSAL, BODY_REFUSALS } from '../schemas/problem.ts';
import { traceEnvelope, traceRequest, traceSchema } from '../schemas/relay-trace.ts';
import { body, json } from './described.ts';

/** What is asked about a relay's glass alone. */

export const traceRoute = createRoute({
  method: 'post',
  path: '/api/relays/trace',
  summary: "a relay's glass traced: image quality over the field",
  request: body(traceRequest),
  responses: { 200: json(traceSchema, 'first order, and each field on the plane asked for'), ...BODY_REFUSALS },
});

const glassSchema = z
  .strictObject({ name: z.string(), nd: z.number(), vd: z.number(), rangeNm: z.tuple([z.number(), z.number()]) })
  .openapi('Glass', { description: 'index for the d line, Abbe number, and the wavelengths that it is known for' });

export const glassesRoute = createRoute({
  method: 'get',
  path: '/api/glasses',
  summary: 'the glasses that a listing can name',
  responses: {
    200: json(
      z.strictObject({ glasses: z.array(glassSchema) }).openapi('GlassList'),
      'by name; a listing takes "air" and a plain index too',
    ),
    ...ANY_REFUSAL,
  },
});

export const GLASS_LIST: z.infer<typeof glassSchema>[] = GLASS_NAMES.map((name) => {
  const glass = glassNamed(name) as Medium;
  const [least, greatest] = glass.rangeNm;
  return { name, nd: indexAtLine(glass, 'd'), vd: abbeNumber(glass, 'd'), rangeNm: [least, greatest] };
});

/** More than these help nobody. */
const MOST_PROBLEMS = 20;

/** @throws Refusal 422 */
export function traceOn(given: unknown, shelf: Shelf): ImageQuality {
  const envelope = traceEnvelope.safeParse(given);
  const read = readRelay(given, shelf);
  const problems = [...(envelope.success ? [] : problemsOf(envelope.error, given)), ...read.problems];
  if (!envelope.success || !read.relay) throw new Refusal(422, problems.slice(0, MOST_PROBLEMS));
  const { relay: _, ...asked } = envelope.data;
  const traced = tracedRelay(read.relay, asked);
  if (traced.problems) throw new Refusal(422, traced.problems.slice(0, MOST_PROBLEMS));
  return traced.quality;
}

const alone = z.strictObject({ relay: relaySchema });

/** The relay of a body, its part written out. */
function readRelay(given: unknown, shelf: Shelf): { relay?: Relay; problems: Problem[] } {
  // A body that is no object is the envelope's to complain of.
  if (typeof given !== 'object' || given === null || Array.isArray(given)) return { problems: [] };
  const { pairing: resolved, problems } = resolveParts(
    Object.hasOwn(given, 'relay') ? { relay: (given as { relay: unknown }).relay } : {},
    shelf,
  );
  if (problems.length > 0) return { problems };
  const parsed = alone.safeParse(resolved);
  return parsed.success ? { relay: parsed.data.relay, problems: [] } : { problems: problemsOf(parsed.error, resolved) };
}
