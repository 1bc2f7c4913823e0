import { random } from '../support/random.ts';
import type { Got, Sent } from './client.ts';
import { descriptionOf, openObjects } from './document.ts';
import { judgeOf } from './judge.ts';
import { drawingOf, type Known } from './requests.ts';
import { type Asked, alike, serverWith } from './servers.ts';
import { heaviestReport } from './sound.ts';
import { Findings } from './tally.ts';
import { measured, type Work } from './work.ts';

/**
 * How many times the heaviest report's work a request may take. What comes in many pieces lets others in between
 * them: there it is the longest stretch that counts, and the number of pieces has a limit of its own.
 */
const MOST_WORK = 12;
const IN_PIECES: Readonly<Record<string, number>> = {
  'POST /api/pairings/sweep': 400,
  'POST /api/pairings/compare': 40,
  'POST /api/choices': 400,
  'POST /api/choices/one-more': 400,
  'POST /api/choices/window': 100,
  'POST /api/relays/class': 40,
};
/** Of those the ones with long pieces: the built server has searches done by a worker, away from all else. */
const AT_ONCE: Readonly<Record<string, number>> = {
  'POST /api/pairings/compare': 40,
  'POST /api/choices': 40,
  'POST /api/choices/one-more': 40,
};

/** Of what does not write this share is asked twice. */
const TWICE = 0.12;

const PROTOTYPES = [Object.prototype, Array.prototype, Function.prototype, String.prototype, Number.prototype];
const namesOf = (): string => PROTOTYPES.map((one) => Reflect.ownKeys(one).map(String).join()).join(';');

/**
 * Any number of requests, good and bad, sent to two servers that began alike: whatever comes, both must say the
 * same, what they say must be as the description of the API has it, and it must be said with little work.
 *
 * @returns what was found, the heaviest report's work, ms, and how many operations the API has
 */
export async function fuzzed(
  requests: number,
  seed: number,
  say: (line: string) => void = () => {},
): Promise<{ found: Findings; unitMs: number; operations: number }> {
  const [one, other] = await Promise.all([serverWith(), serverWith()]);
  try {
    const description = descriptionOf(JSON.parse((await one.send({ method: 'GET', path: '/api/openapi.json', headers: {} })).text));
    const judge = judgeOf(description);
    const draw = drawingOf(description);
    const r = random(seed);
    const found = new Findings();
    const natural = namesOf();
    const nothing = { sent: { method: 'GET', path: '/api/openapi.json', headers: {} }, got: { status: 200, headers: {}, text: '' } };
    for (const open of openObjects(description))
      if (!open.startsWith('GET /api/openapi.json')) found.blame(`leaves open ${open}`, 'described', nothing.sent, nothing.got);
    const unitMs = await workOf(one, heaviestReport(), 5);
    const drawer: Known = { parts: new Map(), table: '' };

    for (let n = 1; n <= requests; n++) {
      const { operation, kind, sent } = draw(r, drawer);
      const { result: got, work } = await measured(() => one.send(sent));
      const blame = (fault: string): void => found.blame(fault, kind, sent, got);
      for (const fault of judge(sent, got)) blame(fault);
      const writes = sent.path.includes('parts') && sent.method !== 'GET';
      // What writes can't be asked twice of one server: there the other's work is the second look.
      let cost = work;
      if (writes || r.chance(TWICE)) {
        const { result: again, work: there } = await measured(() => other.send(sent));
        cost = lesser(work, there);
        if (!alike(got, again)) blame(`is answered otherwise by another server: ${again.status} ${again.text.slice(0, 200)}`);
      }
      if (namesOf() !== natural) blame('has given a prototype other names than it had');
      for (const error of [...one.faults.splice(0), ...other.faults.splice(0)]) blame(`is told as a fault: ${(error as Error).stack}`);
      if (tooMuch(operation.name, cost, unitMs) && !writes) cost = await least(one, sent, cost);
      if (tooMuch(operation.name, cost, unitMs))
        blame(`takes ${cost.all.toFixed(0)} ms, ${cost.stretch.toFixed(0)} at one stretch; the heaviest report takes ${unitMs.toFixed(0)}`);
      found.add(operation.name, kind, got, cost);
      await follow(drawer, sent, got, one);
      if (n % 5000 === 0) say(`${n} requests, ${found.count} faults`);
    }
    return { found, unitMs, operations: description.operations.length };
  } finally {
    await Promise.all([one.stop(), other.stop()]);
  }
}

const tooMuch = (name: string, { all, stretch }: Work, unitMs: number): boolean =>
  all > unitMs * (IN_PIECES[name] ?? MOST_WORK) || stretch > unitMs * (AT_ONCE[name] ?? MOST_WORK);

const lesser = (a: Work, b: Work): Work => ({ all: Math.min(a.all, b.all), stretch: Math.min(a.stretch, b.stretch) });

/** The least that a request takes of several times: whatever else happened meanwhile is not its own. */
async function least(server: Asked, sent: Sent, first: Work): Promise<Work> {
  let work = first;
  for (let i = 0; i < 2; i++) work = lesser(work, (await measured(() => server.send(sent))).work);
  return work;
}

async function workOf(server: Asked, sent: Sent, times: number): Promise<number> {
  let ms = Number.POSITIVE_INFINITY;
  for (let i = 0; i < times; i++) {
    const { result, work } = await measured(() => server.send(sent));
    if (result.status !== 200) throw new Error(`the heaviest report is not let in: ${result.text}`);
    ms = Math.min(ms, work.all);
  }
  return ms;
}

/** What the drawer holds after an answer. */
async function follow(drawer: Known, { method, path }: Sent, { status, text }: Got, server: Asked): Promise<void> {
  if (status >= 300) return;
  if (path === '/api/parts/drawer.csv' && method === 'GET') drawer.table = text.slice(0, 40_000);
  if (!path.startsWith('/api/parts') || !['POST', 'PUT', 'DELETE'].includes(method)) return;
  const file = await server.send({ method: 'GET', path: '/api/parts/drawer.json', headers: {} });
  const { parts } = JSON.parse(file.text) as { parts: { id: string; version: number; kind: string }[] };
  drawer.parts.clear();
  for (const { id, version, kind } of parts) drawer.parts.set(id, { version, kind });
}
