import { createRoute } from '@hono/zod-openapi';
import { PairingError, problemsOf, type Shelf } from '../../core/index.ts';
import { findingInWords, inconsistentInWords, sawOf, seenInWords, unsolvedInWords } from '../../core/table.ts';
import { contradictionsOf } from '../read-pairing.ts';
import { BODY_REFUSALS } from '../schemas/problem.ts';
import { type SightingsAnswer, sightingsAnswer, sightingsEnvelope, sightingsRequest } from '../schemas/sightings.ts';
import { WORKS } from '../works.ts';
import { body, json } from './described.ts';
import { refuse, whole } from './pairings.ts';

export const sightingsRoute = createRoute({
  method: 'post',
  path: '/api/sightings',
  summary: 'what was seen on the table, as measured numbers of the pairing',
  request: body(sightingsRequest),
  responses: { 200: json(sightingsAnswer, 'what was found, the pairing with it taken, and what tightens'), ...BODY_REFUSALS },
});

/** @throws Refusal 422 */
export function sawOn(given: unknown, shelf: Shelf): SightingsAnswer {
  const envelope = sightingsEnvelope.safeParse(given);
  if (!envelope.success) return refuse(problemsOf(envelope.error, given));
  const { pairing: asked, ...input } = envelope.data;
  const pairing = whole(asked, shelf, '/pairing');
  const own = contradictionsOf(pairing, '/pairing');
  if (own.length > 0) return refuse(own);
  try {
    const saw = sawOf(pairing, input, WORKS);
    const { magnification } = saw;
    return {
      ...saw,
      results: saw.results.map((result) => ({ ...result, says: findingInWords(result) })),
      unsolved: saw.unsolved.map((one) => ({ ...one, says: unsolvedInWords(one, input.sightings) })),
      inconsistent: saw.inconsistent.map((one) => ({ ...one, says: inconsistentInWords(one, input.sightings) })),
      ...(magnification ? { magnification: { ...magnification, says: seenInWords(magnification) } } : {}),
    } as SightingsAnswer;
  } catch (error) {
    if (error instanceof PairingError) return refuse(error.problems);
    throw error;
  }
}
