import { createRoute, type z } from '@hono/zod-openapi';
import { type Answered, type Answers, checkedSays, checking, type Entry, summaryOf } from '../../core/checked.ts';
import { checksSchema } from '../schemas/checks.ts';
import { ANY_REFUSAL } from '../schemas/problem.ts';
import { unhurried } from '../unhurried.ts';
import { json } from './described.ts';

type Told = z.infer<typeof checksSchema>;

export const checksRoute = createRoute({
  method: 'get',
  path: '/api/checks',
  summary: 'every published number that the optics are checked against, worked out by this server',
  responses: { 200: json(checksSchema, 'by subject, each number with its tolerance'), ...ANY_REFUSAL },
});

/** Worked out once, with pauses for other requests: neither the checks nor the optics change while a server runs. */
export function checksTeller(): () => Promise<Told> {
  let told: Promise<Told> | undefined;
  return () => {
    told ??= workedOut();
    return told;
  };
}

async function workedOut(): Promise<Told> {
  let answers: readonly Answers[] = [];
  const steps = (function* () {
    answers = yield* checking();
  })();
  await unhurried(steps);
  const summary = summaryOf(answers);
  const { numbers, sources, equalities, failing } = summary;
  const subjects = answers.map(({ title, entries }) => ({ title, checks: entries.map(checkOf) }));
  return { says: [...checkedSays(summary)], numbers, sources, equalities, failing: failing.length, subjects };
}

type Check = Told['subjects'][number]['checks'][number];

const checkOf = ({ id, claim, source, known, how, values }: Entry): Check => ({
  ...(id && { id }),
  claim,
  source,
  known,
  ...(how && { how }),
  numbers: values.map(numberOf),
});

const numberOf = ({ what, expected, computed, room: [below, above], why, holds, fault, figure }: Answered): Check['numbers'][number] => ({
  ...(what && { what }),
  expected,
  ...(computed !== undefined && { computed }),
  below,
  above,
  tolerance: why,
  holds,
  ...(fault !== undefined && { fault }),
  ...(figure && { figure }),
});
