import { createRoute } from '@hono/zod-openapi';
import { limitsOf, subjectOf, type Want, type WindowAnswer, windowing } from '../../core/choosing.ts';
import { contradictions, type Pairing, PairingError, problemsOf, type Shelf } from '../../core/index.ts';
import { under } from '../problems.ts';
import { BODY_REFUSALS } from '../schemas/problem.ts';
import { windowEnvelope, windowRequest, windowSchema } from '../schemas/window.ts';
import { unhurried } from '../unhurried.ts';
import { WORKS } from '../works.ts';
import { body, json } from './described.ts';
import { refuse, whole } from './pairings.ts';

export const windowRoute = createRoute({
  method: 'post',
  path: '/api/choices/window',
  summary: 'between which values of one quantity a wish is met',
  request: body(windowRequest),
  responses: { 200: json(windowSchema, 'where each limit is met, what they have in common, and what closes it'), ...BODY_REFUSALS },
});

/**
 * With glass many places are traced: others are answered between them.
 * @throws Refusal 422
 */
export async function windowFor(given: unknown, shelf: Shelf): Promise<WindowAnswer> {
  const envelope = windowEnvelope.safeParse(given);
  if (!envelope.success) return refuse(problemsOf(envelope.error, given));
  const { want, vary = '/relay/focalLengthMm', from, to } = envelope.data;
  const pairing = wished(whole(envelope.data.pairing, shelf, '/pairing'), want);
  const own = contradictions(pairing, WORKS);
  if (own.length > 0) return refuse(under('/pairing', own));
  try {
    const steps = await unhurried(windowing({ pairing, vary, from, to, limits: limitsOf(want) }, WORKS));
    return steps.at(-1) as WindowAnswer;
  } catch (error) {
    if (error instanceof PairingError) return refuse(error.problems);
    throw error;
  }
}

/** The pairing before the subject that is wished for; what is around the subject stays. */
function wished(pairing: Pairing, want: Want): Pairing {
  const subject = subjectOf(want);
  if (!subject) return pairing;
  const index = pairing.subject?.index;
  return { ...pairing, subject: { ...subject, ...(index === undefined ? {} : { index }) } };
}
