import { type ChildProcess, spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect, createServer } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
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
  /** What comes first on either stream. */
  line: Promise<string>;
  /** All that has come on both so far. */
  said: () => string;
  ended: Promise<number | null>;
}

function run(env: Record<string, string>, file = 'server.js'): Run {
  return watched(
    spawn(process.execPath, [join(folder, file)], { env: { PATH: process.env.PATH, PUPILWALK_DATA: folder, ...env }, stdio: 'pipe' }),
  );
}

function watched(process_: ChildProcess): Run {
  let text = '';
  const line = new Promise<string>((resolve) => {
    for (const stream of [process_.stdout, process_.stderr])
      stream?.on('data', (more) => {
        text += more;
        resolve(text);
      });
  });
  return { process: process_, line, said: () => text, ended: new Promise((resolve) => process_.once('exit', resolve)) };
}

const good = JSON.stringify({ objective: 'plan-10x-0-25-200', relay: 'close-up-5d-58', sensor: 'full-frame-45mp', infinitySpaceMm: 60 });

/** A request whose body has come in half; `rest` sends the other half and tells what is answered. */
async function begun(address: string): Promise<{ rest: () => Promise<string>; hangUp: () => void }> {
  const { hostname, port } = new URL(address);
  const socket = connect(Number(port), hostname);
  let got = '';
  socket.on('data', (chunk) => {
    got += chunk;
  });
  socket.on('error', () => {});
  const closed = new Promise((resolve) => socket.once('close', resolve));
  const head = `POST /api/pairings/report HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: ${good.length}\r\n\r\n`;
  await new Promise((resolve) => socket.write(head + good.slice(0, 20), resolve));
  // Asked after it, and answered: so the first one is there.
  await fetch(`${address}/api/health`).then((answer) => answer.text());
  return {
    rest: async () => {
      socket.write(good.slice(20));
      await closed;
      return got;
    },
    hangUp: () => socket.destroy(),
  };
}

const reached = (address: string): Promise<boolean> =>
  new Promise((resolve) => {
    const { hostname, port } = new URL(address);
    const socket = connect(Number(port), hostname);
    socket.once('connect', () => resolve(true)).once('error', () => resolve(false));
    socket.once('connect', () => socket.destroy());
  });

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
  [
    { PORT: '0', ALLOWED_HOSTS: 'bench.local,http://rig' },
    /^ALLOWED_HOSTS=bench\.local,http:\/\/rig holds "http:\/\/rig", which is no name: .*\.\n$/,
  ],
])(
  '%o: one sentence, and it ends',
  async (env, sentence) => {
    const { line, ended } = run(env as Record<string, string>);
    expect(await line).toMatch(sentence);
    expect(await ended).toBe(1);
  },
  20_000,
);

test('told to stop it finishes the request in hand, takes no new one, and ends well', async () => {
  const { process: server, line, ended } = run({ PORT: '0' });
  const address = (await line).trim().split(' ').at(-1) as string;
  const { rest } = await begun(address);
  server.kill('SIGTERM');
  await expect.poll(() => reached(address)).toBe(false);
  const answer = await rest();
  expect(answer).toMatch(/^HTTP\/1\.1 200 /);
  expect(JSON.parse(answer.slice(answer.indexOf('\r\n\r\n'))).sentence).toContain('At 10×');
  expect(await ended).toBe(0);
}, 20_000);

test('told twice it does not wait for what is in hand, and says by its code that it did not', async () => {
  const { process: server, line, ended } = run({ PORT: '0' });
  const address = (await line).trim().split(' ').at(-1) as string;
  const { hangUp } = await begun(address);
  server.kill('SIGINT');
  await setTimeout(700);
  server.kill('SIGINT');
  expect(await ended).toBe(1);
  hangUp();
}, 20_000);

test.each([
  ['a terminal stops all of it at once', (npm: ChildProcess) => process.kill(-(npm.pid as number), 'SIGINT')],
  ['npm alone is stopped', (npm: ChildProcess) => npm.kill('SIGTERM')],
])(
  'under npm start: %s, the request in hand is finished and no server is left behind',
  async (_, stop) => {
    const program = mkdtempSync(join(tmpdir(), 'program-'));
    copyFileSync('package.json', join(program, 'package.json'));
    mkdirSync(join(program, 'dist'));
    for (const name of readdirSync(folder).filter((name) => name.endsWith('.js')))
      copyFileSync(join(folder, name), join(program, 'dist', name));
    // What would build it first is left out: it is built.
    const env = { PATH: process.env.PATH, HOME: program, PUPILWALK_DATA: folder, PORT: '0' };
    const {
      process: npm,
      said,
      ended,
    } = watched(spawn('npm', ['start', '--silent', '--ignore-scripts'], { cwd: program, env, stdio: 'pipe', detached: true }));
    await expect.poll(said, { timeout: 20_000 }).toMatch(/^Pupilwalk is at http:\S+\n/);
    const address = said().trim().split(' ').at(-1) as string;
    const { rest } = await begun(address);
    stop(npm);
    await expect.poll(() => reached(address)).toBe(false);
    expect(await rest()).toMatch(/^HTTP\/1\.1 200 /);
    await ended;
    expect(await reached(address)).toBe(false);
    rmSync(program, { recursive: true });
  },
  40_000,
);

test('opened to the network it prints where, and a key that other devices need to write', async () => {
  const {
    process: server,
    line,
    said,
    ended,
  } = run({ PORT: '0', HOST: '0.0.0.0', ALLOWED_HOSTS: 'bench.local', PUPILWALK_DATA: join(folder, 'open') });
  await line;
  await expect.poll(said).toMatch(/The next start makes another\.\n$/);
  const [first = '', read, ...rest] = said().split('\n');
  const write = rest.find((line) => line.includes('key=')) ?? '';
  const [, port] = first.match(/^Pupilwalk is at http:\/\/127\.0\.0\.1:(\d+)$/) ?? [];
  expect(read).toMatch(new RegExp(`^Other devices may read it at .*http://bench\\.local:${port}\\.$`));
  const [, key = ''] = write.match(/^A device that shall write as well opens this once: http:\S+\/open\?key=([\w-]{22})$/) ?? [];
  expect(key).not.toBe('');

  // An address of this machine in a network is as good as another device; without one a name that is not loopback's is.
  const own = Object.values(networkInterfaces())
    .flatMap((list = []) => list)
    .find(({ internal, family }) => !internal && family === 'IPv4')?.address;
  const part = JSON.stringify({ kind: 'sensor', owned: true, part: { name: 'x', widthMm: 36, heightMm: 24, columns: 6000, rows: 4000 } });
  const asked = (
    method: string,
    path: string,
    headers: Record<string, string> = {},
    body = '',
  ): Promise<{ status: number; cookie: string }> =>
    new Promise((resolve, reject) => {
      const all = { host: 'bench.local', ...(body ? { 'content-type': 'application/json' } : {}), ...headers };
      const sent = request({ host: own ?? '127.0.0.1', port, method, path, headers: all }, (answer) => {
        answer.resume();
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, cookie: answer.headers['set-cookie']?.[0]?.split(';')[0] ?? '' }));
      });
      sent.on('error', reject);
      sent.end(body);
    });
  expect((await asked('GET', '/api/parts')).status).toBe(200);
  expect((await asked('GET', '/api/parts', { host: 'evil.example' })).status).toBe(403);
  expect((await asked('POST', '/api/pairings/report', {}, good)).status).toBe(200);
  expect((await asked('POST', '/api/parts', {}, part)).status).toBe(401);
  if (own) expect((await asked('POST', '/api/parts', { host: 'localhost' }, part)).status).toBe(401);
  expect((await asked('GET', '/open?key=wrong')).status).toBe(401);
  const { status, cookie } = await asked('GET', `/open?key=${key}`);
  expect(status).toBe(303);
  expect((await asked('POST', '/api/parts', { cookie }, part)).status).toBe(201);
  expect((await asked('POST', '/api/parts', { authorization: `Bearer ${key}` }, part)).status).toBe(201);
  // Here itself, as ever.
  const here = { method: 'POST', headers: { 'content-type': 'application/json' }, body: part };
  expect((await fetch(`http://127.0.0.1:${port}/api/parts`, here)).status).toBe(201);
  server.kill('SIGTERM');
  expect(await ended).toBe(0);
  expect(said().split(key)).toHaveLength(2);
}, 30_000);

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
