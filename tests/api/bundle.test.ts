import { type ChildProcess, spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { random } from '../support/random.ts';
import { ordeal } from '../tools/killed.mjs';

/** The server as it is shipped: one bundled file under plain node. */

let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bundle-'));
  for (const configFile of ['vite.server.config.ts', 'vite.worker.config.ts'])
    await build({ configFile, logLevel: 'error', build: { outDir: folder } });
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true }));

interface Run {
  process: ChildProcess;
  /** The first line on either stream. */
  line: Promise<string>;
  ended: Promise<number | null>;
}

function run(env: Record<string, string>, file = 'server.js'): Run {
  const process_ = spawn(process.execPath, [join(folder, file)], {
    env: { PATH: process.env.PATH, PUPILWALK_DATA: folder, ...env },
    stdio: 'pipe',
  });
  const line = new Promise<string>((resolve) => {
    for (const stream of [process_.stdout, process_.stderr]) stream.once('data', (text) => resolve(String(text)));
  });
  return { process: process_, line, ended: new Promise((resolve) => process_.once('exit', resolve)) };
}

test.each(['SIGINT', 'SIGTERM'] as const)(
  'prints its address as one plain line, answers, and stops on %s',
  async (signal) => {
    const { process: server, line, ended } = run({ PORT: '0' });
    const said = await line;
    expect(said).toMatch(/^Pupilwalk is at http:\/\/127\.0\.0\.1:\d+\n$/);
    const address = said.trim().split(' ').at(-1);
    expect(await (await fetch(`${address}/api/health`)).json()).toEqual({ status: 'ok' });
    server.kill(signal);
    expect(await ended).toBe(0);
  },
  20_000,
);

test('a port that is taken: one sentence, and it ends', async () => {
  const other = createServer();
  const port = await new Promise<number>((resolve) =>
    other.listen(0, '127.0.0.1', () => resolve((other.address() as { port: number }).port)),
  );
  const { line, ended } = run({ PORT: String(port) });
  expect(await line).toBe(`Port ${port} is taken: stop what uses it, or choose another with PORT=${port + 1}.\n`);
  expect(await ended).toBe(1);
  other.close();
}, 20_000);

test.each([
  [{ PORT: 'abc' }, /^PORT=abc is no port: .*65535\.\n$/],
  [{ PORT: '70000' }, /^PORT=70000 is no port/],
  [{ PORT: '8787.5' }, /^PORT=8787\.5 is no port/],
  [{ PORT: '0', HOST: '203.0.113.9' }, /^HOST=203\.0\.113\.9 is no address of this machine\.\n$/],
])(
  '%o: one sentence, and it ends',
  async (env, sentence) => {
    const { line, ended } = run(env as Record<string, string>);
    expect(await line).toMatch(sentence);
    expect(await ended).toBe(1);
  },
  20_000,
);

test('a data folder inside the program: one sentence, and it ends', async () => {
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
  const built = readdirSync(folder).filter((name) => name.endsWith('.js'));
  mkdirSync(join(folder, 'dist'));
  for (const name of built) copyFileSync(join(folder, name), join(folder, 'dist', name));
  const { line, ended } = run({ PORT: '0', PUPILWALK_DATA: join(folder, 'data') }, join('dist', 'server.js'));
  expect(await line).toBe(
    `PUPILWALK_DATA=${join(folder, 'data')} lies inside the program, where a new version would sweep your parts away: choose a folder outside it.\n`,
  );
  expect(await ended).toBe(1);
}, 20_000);

test('killed five times while it writes the drawer, it has kept whatever it had answered for', async () => {
  const { between } = random(Number(process.env.SEED ?? 7));
  const counted = await ordeal({ server: join(folder, 'server.js'), writes: 30, kills: 5, random: () => between(0, 1) });
  expect(counted.faults).toEqual([]);
  expect(counted.acknowledged).toBeGreaterThanOrEqual(30);
  expect(counted.killsInFlight).toBeGreaterThanOrEqual(5);
}, 60_000);

test('searches in a worker: others are answered meanwhile, who hangs up ends it, and too many are told so', async () => {
  const { process: server, line, ended } = run({ PORT: '0' });
  const address = (await line).trim().split(' ').at(-1);
  const asked = (body: object, headers: object, signal?: AbortSignal) =>
    fetch(`${address}/api/choices`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...headers },
      body: JSON.stringify(body),
      ...(signal ? { signal } : {}),
    });
  const wish = { want: { minCoveredShare: 0.5 }, sensor: 'full-frame-61mp' };
  // Ten minutes and more of glass to look through, if nobody ended it.
  const glass = { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] };
  const relays = Array.from({ length: 200 }, (_, i) => ({ kind: 'supplementary', clearApertureMm: 50 + i / 100, glass }));
  const endless = { ...wish, from: { relays }, infinitySpacesMm: [20, 40, 60, 80, 100, 120] };

  const hanging = new AbortController();
  const long = await asked(endless, { accept: 'application/x-ndjson' }, hanging.signal);
  const reader = (long.body as ReadableStream<Uint8Array>).getReader();
  const first = new TextDecoder().decode((await reader.read()).value);
  expect(JSON.parse(first.split('\n')[0] as string)).toEqual({ done: expect.any(Number), of: 19 * 200 * 6 });
  const health = await fetch(`${address}/api/health`);
  expect(await health.json()).toEqual({ status: 'ok' });

  // With the one that runs eight may be there. Of eight more, whichever comes last is refused; the rest wait.
  const waiting = new AbortController();
  const others = Array.from({ length: 8 }, () => asked(endless, {}, waiting.signal));
  const refused = await Promise.race(others);
  expect(refused.status).toBe(503);
  expect(refused.headers.get('retry-after')).toBe('5');
  expect((await refused.json()).errors[0].code).toBe('busy');

  hanging.abort();
  waiting.abort();
  const left = await Promise.allSettled(others);
  expect(left.filter(({ status }) => status === 'rejected')).toHaveLength(7);
  // Once the server has seen them go, nobody waits any more: a short search is done, and again by the worker that it leaves.
  const short = () => asked({ ...wish, from: { relays: ['tele-200-f4'] }, infinitySpacesMm: [60] }, {});
  await expect.poll(async () => (await short()).status, { timeout: 30_000 }).toBe(200);
  expect((await (await short()).json()).considered).toBe(19);
  server.kill('SIGTERM');
  expect(await ended).toBe(0);
}, 60_000);
