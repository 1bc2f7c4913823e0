import { STATUS_CODES } from 'node:http';
import type { Problem } from '../core/index.ts';

/** What an answer other than 200 says, RFC 9457. `errors` names each field, what was given, what would do. */
export interface ProblemAnswer {
  type: 'about:blank';
  title: string;
  status: number;
  detail: string;
  errors: Problem[];
}

export type RefusalStatus = 400 | 401 | 403 | 408 | 404 | 405 | 409 | 412 | 413 | 415 | 422 | 428 | 431 | 500 | 503 | 507;

/** A request that is not answered, thrown wherever that is found out. */
export class Refusal extends Error {
  constructor(
    readonly status: RefusalStatus,
    readonly problems: Problem[],
    readonly headers: Readonly<Record<string, string>> = {},
  ) {
    super(problems.map((p) => `${p.path} ${p.message}`).join('; '));
    this.name = 'Refusal';
  }
}

/** A refusal that blames one thing. */
export const refusal = (
  status: RefusalStatus,
  code: string,
  message: string,
  given: string,
  expected: string,
  headers: Readonly<Record<string, string>> = {},
): Refusal => new Refusal(status, [{ path: '', code, message, given: cutShort(given || 'nothing'), expected }], headers);

/** The same problems, seen from where the pairing stands in the body. */
export const under = (prefix: string, problems: readonly Problem[]): Problem[] => problems.map((p) => ({ ...p, path: prefix + p.path }));

const LONGEST_GIVEN = 80;
const cutShort = (text: string): string => (text.length > LONGEST_GIVEN ? `${text.slice(0, LONGEST_GIVEN - 1)}…` : text);

/** What went wrong on our side is nobody's input: no cause, no stack. */
const OURS: Problem = { path: '', code: 'fault', message: 'the program failed at this', given: '', expected: 'please report it' };

/** What is said of an error, and the headers that go with it. */
export function problemOf(error: unknown): { answer: ProblemAnswer; headers: Readonly<Record<string, string>> } {
  const { status, problems, headers } = error instanceof Refusal ? error : { status: 500 as const, problems: [OURS], headers: {} };
  const answer: ProblemAnswer = {
    type: 'about:blank',
    title: STATUS_CODES[status] ?? 'Error',
    status,
    detail: problems.map((p) => `${p.path || 'The request'} ${p.message}.`).join(' '),
    errors: problems,
  };
  return { answer, headers: { 'content-type': 'application/problem+json', ...headers } };
}

export function problemAnswer(error: unknown): Response {
  const { answer, headers } = problemOf(error);
  return new Response(JSON.stringify(answer), { status: answer.status, headers });
}
