import type { OwnPart, Problem } from '../../core/index.ts';

/** How the server took it. */
export type Outcome =
  | { state: 'done'; id: string; version: number }
  /** What lies there is not what was changed here any more. */
  | { state: 'changed' }
  | { state: 'gone' }
  /** What it has against it; by the paths of what was sent. */
  | { state: 'refused'; problems: readonly Problem[] }
  | { state: 'silent' };

/** How long an answer is waited for, ms. */
const PATIENCE_MS = 20_000;

/** Asks, with the time that a server may take; undefined where it does not answer. */
export async function ask(method: string, address: string, more: RequestInit = {}): Promise<Response | undefined> {
  try {
    return await fetch(address, { method, ...more, signal: AbortSignal.timeout(PATIENCE_MS) });
  } catch {
    return undefined;
  }
}

/** What an answer that is none says, whoever wrote it. */
export async function problemsIn(answer: Response): Promise<readonly Problem[]> {
  const told: unknown = await answer.json().catch(() => undefined);
  const { errors } = (typeof told === 'object' && told !== null ? told : {}) as { errors?: unknown };
  if (Array.isArray(errors) && errors.length > 0) return errors as Problem[];
  return [{ path: '', code: 'fault', message: `answered ${answer.status}`, given: '', expected: 'try again' }];
}

const addressOf = (id: string): string => `/api/parts/${encodeURIComponent(id)}`;
const json = (body: unknown): RequestInit => ({ headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });

async function outcomeOf(answer: Response | undefined, of: { id: string; version: number }): Promise<Outcome> {
  if (!answer) return { state: 'silent' };
  if (answer.status === 412) return { state: 'changed' };
  if (answer.status === 404) return { state: 'gone' };
  if (!answer.ok) return { state: 'refused', problems: await problemsIn(answer) };
  if (answer.status === 204) return { state: 'done', ...of };
  const { id, version } = (await answer.json()) as { id: string; version: number };
  return { state: 'done', id, version };
}

/** Puts a part into the drawer; with an id, back where it lay. */
export const add = async (own: OwnPart, id?: string): Promise<Outcome> =>
  outcomeOf(await ask('POST', '/api/parts', json(id === undefined ? own : { id, ...own })), { id: id ?? '', version: 1 });

/** Changes a part, if it still is what it was at `version`. */
export async function change({ id, version }: { id: string; version: number }, own: OwnPart): Promise<Outcome> {
  const { headers, body } = json(own);
  return outcomeOf(await ask('PUT', addressOf(id), { headers: { ...headers, 'if-match': `"${version}"` }, body: body ?? null }), {
    id,
    version,
  });
}

/** Takes a part out, if it still is what it was at `version`. */
export const takeAway = async (of: { id: string; version: number }): Promise<Outcome> =>
  outcomeOf(await ask('DELETE', addressOf(of.id), { headers: { 'if-match': `"${of.version}"` } }), of);
