import { createRoute } from '@hono/zod-openapi';
import {
  type Comparison,
  compare,
  contradictions,
  type Pairing,
  PairingError,
  problemsOf,
  type Report,
  report,
  type Shelf,
  type SweepAnswer,
  sweepReports,
  sweepValues,
} from '../../core/index.ts';
import { Refusal, under } from '../problems.ts';
import { contradictionsOf, readPairing } from '../read-pairing.ts';
import { BODY_REFUSALS } from '../schemas/problem.ts';
import { comparisonSchema, reportSchema, sweepSchema } from '../schemas/report.ts';
import { compareEnvelope, compareRequest, pairingRequest, sweepEnvelope, sweepRequest } from '../schemas/requests.ts';
import { unhurried } from '../unhurried.ts';
import { WORKS } from '../works.ts';
import { body, json } from './described.ts';

/** The three questions about pairings: each reads a body, and refuses with problems or answers. */

export const reportRoute = createRoute({
  method: 'post',
  path: '/api/pairings/report',
  summary: 'a pairing worked out',
  request: body(pairingRequest),
  responses: { 200: json(reportSchema, 'every figure, the corner light, the sentence'), ...BODY_REFUSALS },
});

export const sweepRoute = createRoute({
  method: 'post',
  path: '/api/pairings/sweep',
  summary: 'a pairing with one of its numbers varied',
  request: body(sweepRequest),
  responses: { 200: json(sweepSchema, 'figures and coverage at each value'), ...BODY_REFUSALS },
});

export const compareRoute = createRoute({
  method: 'post',
  path: '/api/pairings/compare',
  summary: 'pairings side by side',
  request: body(compareRequest),
  responses: { 200: json(comparisonSchema, 'a report each, and each less the first'), ...BODY_REFUSALS },
});

/** More than these help nobody. */
const MOST_PROBLEMS = 20;

export const refuse = (problems: PairingError['problems']): never => {
  throw new Refusal(422, problems.slice(0, MOST_PROBLEMS));
};

/** @throws Refusal 422 */
export function whole(given: unknown, shelf: Shelf, at: string): Pairing {
  const read = readPairing(given, shelf, at);
  return read.pairing ?? refuse(read.problems);
}

/** @throws Refusal 422 */
export function reportOn(given: unknown, shelf: Shelf): Report {
  const pairing = whole(given, shelf, '');
  try {
    return report(pairing, WORKS);
  } catch (error) {
    if (error instanceof PairingError) return refuse(error.problems);
    throw error;
  }
}

/**
 * Many steps of a pairing with many rings take seconds: others are answered between them.
 * @throws Refusal 422
 */
export async function sweepOver(given: unknown, shelf: Shelf): Promise<SweepAnswer> {
  const envelope = sweepEnvelope.safeParse(given);
  if (!envelope.success) return refuse(problemsOf(envelope.error, given));
  const pairing = whole(envelope.data.pairing, shelf, '/pairing');
  const asked = { ...envelope.data, pairing };
  try {
    return { vary: asked.vary, values: sweepValues(asked), reports: await unhurried(sweepReports(asked, WORKS)) };
  } catch (error) {
    if (!(error instanceof PairingError)) throw error;
    // A pairing that contradicts itself as sent is to blame, not the end of the range.
    const own = contradictions(pairing, WORKS);
    return refuse(own.length > 0 ? under('/pairing', own) : error.problems);
  }
}

/** @throws Refusal 422 */
export function compareAbreast(given: unknown, shelf: Shelf): Comparison {
  const envelope = compareEnvelope.safeParse(given);
  if (!envelope.success) return refuse(problemsOf(envelope.error, given));
  const read = envelope.data.pairings.map((pairing, i) => readPairing(pairing, shelf, `/pairings/${i}`));
  const pairings = read.flatMap(({ pairing }) => (pairing ? [pairing] : []));
  const problems = [
    ...read.flatMap((r) => r.problems),
    ...read.flatMap(({ pairing }, i) => (pairing ? contradictionsOf(pairing, `/pairings/${i}`) : [])),
  ];
  return problems.length > 0 ? refuse(problems) : compare(pairings, WORKS);
}
