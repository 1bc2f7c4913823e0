/**
 * Servers killed while they write the drawer: `npm run killed` does 2,000 acknowledged writes with at least
 * 100 kills while a write is in flight, then the same with two servers on one drawer. After each kill the
 * file must be whole, and hold every write that was acknowledged; one in flight may be there or not.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';

/** Requests under way at once, each about parts of its own, so that it is known what each of them may have done. */
const HANDS = 4;
const PARTS_AT_FIRST = 150;

const sensor = (name, price) => ({
  kind: 'sensor',
  owned: true,
  price,
  // So long that the file takes a while to write, and of differing lengths.
  notes: `"${name}"; -1, =1 `.repeat(20 + (price % 50)),
  part: { name, widthMm: 36, heightMm: 24, pixelPitchUm: { value: 4.3, plusMinus: 0.1, origin: 'measured', marked: 4.35 } },
});

/** One server on the drawer in `data`. */
async function startServer(server, data) {
  const child = spawn(process.execPath, [server], { env: { PATH: process.env.PATH, PUPILWALK_DATA: data, PORT: '0' }, stdio: 'pipe' });
  let said = '';
  child.stderr.on('data', (text) => process.stderr.write(text));
  const address = await new Promise((resolve, reject) => {
    child.once('exit', () => reject(new Error(`the server ended: ${said}`)));
    child.stdout.on('data', (text) => {
      said += text;
      const [, url] = said.match(/at (http:\S+)\n/) ?? [];
      if (url) resolve(url);
    });
  });
  const ended = new Promise((resolve) => child.once('exit', resolve));
  return { child, ended, address, agent: new Agent({ keepAlive: true }), inFlight: new Set() };
}

/** Sends a write; answers its status and body, or nothing where the connection broke. `inFlight` holds it from sent to answered. */
function send(to, method, path, body, headers) {
  return new Promise((resolve) => {
    const sent = request(`${to.address}${path}`, { method, agent: to.agent, headers: { 'content-type': 'application/json', ...headers } });
    const done = (answer) => {
      to.inFlight.delete(sent);
      resolve(answer);
    };
    sent.on('finish', () => to.inFlight.add(sent));
    sent.on('response', (response) => {
      let text = '';
      response.on('data', (chunk) => {
        text += chunk;
      });
      response.on('end', () => done({ status: response.statusCode, text }));
      response.on('error', () => done(undefined));
    });
    sent.on('error', () => done(undefined));
    sent.end(body === undefined ? undefined : JSON.stringify(body));
  });
}

/**
 * @param server the built server's file
 * @param random numbers from 0 to 1
 * @returns what was counted; `faults` is empty where all went well
 */
export async function ordeal({ server, writes, kills, servers = 1, random = Math.random, say = () => {} }) {
  const data = mkdtempSync(join(tmpdir(), 'pupilwalk-killed-'));
  const file = join(data, 'drawer.json');
  const counted = { acknowledged: 0, kills: 0, killsInFlight: 0, unfinishedLeft: 0, flagsLeft: 0, appliedUnanswered: 0, faults: [] };
  const fault = (text) => counted.faults.push(text);
  /** What the drawer holds by all that was acknowledged, by id, and the writes that may have been done besides. */
  const held = new Map();
  const open = new Map();
  let revision = 0;
  let sinceChecked = 0;
  let number = 0;

  const living = [];
  for (let i = 0; i < servers; i++) living.push(await startServer(server, data));

  const first = Array.from({ length: PARTS_AT_FIRST }, (_, i) => ({ id: `first-${i}`, version: 1, ...sensor(`first ${i}`, i) }));
  const file1 = { pupilwalkDrawer: 1, revision: 0, parts: first };
  const took = await send(living[0], 'POST', '/api/parts/drawer', file1);
  if (took?.status !== 200) throw new Error(`the first parts were not taken in: ${took?.text}`);
  for (const part of first) held.set(part.id, part);
  revision = 1;

  /** One write of a hand: a new part, a change of one, or one taken out. */
  async function write(to, mine) {
    const ids = [...held.keys()].filter((id) => id.startsWith(mine));
    const id = ids[Math.floor(random() * ids.length)];
    const old = id && held.get(id);
    const chance = random();
    number++;
    let attempt;
    if (!old || (chance < 0.3 && ids.length < 20)) {
      const fresh = `${mine}${number}`;
      const body = sensor(`part ${number}`, number);
      attempt = {
        id: fresh,
        before: undefined,
        after: { id: fresh, version: 1, ...body },
        ask: ['POST', '/api/parts', { id: fresh, ...body }, {}],
      };
    } else if (chance < 0.85) {
      const body = sensor(old.part.name, number);
      attempt = {
        id,
        before: old,
        after: { id, version: old.version + 1, ...body },
        ask: ['PUT', `/api/parts/${id}`, body, { 'if-match': `"${old.version}"` }],
      };
    } else
      attempt = { id, before: old, after: undefined, ask: ['DELETE', `/api/parts/${id}`, undefined, { 'if-match': `"${old.version}"` }] };
    open.set(attempt.id, attempt);
    const answer = await send(to, ...attempt.ask);
    if (!answer) return false;
    open.delete(attempt.id);
    if (answer.status < 200 || answer.status > 299) {
      fault(`${attempt.ask[0]} ${attempt.id} answered ${answer.status}: ${answer.text.slice(0, 200)}`);
      return false;
    }
    counted.acknowledged++;
    sinceChecked++;
    if (attempt.after) held.set(attempt.id, attempt.after);
    else held.delete(attempt.id);
    return true;
  }

  /** The file against all that is known; what was in flight is settled by what is there. */
  function check() {
    let found;
    try {
      found = JSON.parse(readFileSync(file, 'utf8'));
    } catch (error) {
      fault(`after kill ${counted.kills} the file is no JSON: ${error.message}`);
      return;
    }
    const least = revision + sinceChecked;
    if (found.pupilwalkDrawer !== 1 || !(found.revision >= least && found.revision <= least + open.size))
      fault(`after kill ${counted.kills} the revision is ${found.revision}, not from ${least} to ${least + open.size}`);
    let applied = 0;
    const there = new Map(found.parts.map((part) => [part.id, part]));
    if (there.size !== found.parts.length) fault(`after kill ${counted.kills} an id stands there twice`);
    for (const id of new Set([...held.keys(), ...there.keys(), ...open.keys()])) {
      const attempt = open.get(id);
      const is = there.get(id);
      if (attempt && isDeepStrictEqual(is, attempt.after)) {
        applied++;
        if (is) held.set(id, is);
        else held.delete(id);
      } else if (!isDeepStrictEqual(is, held.get(id)))
        fault(
          `after kill ${counted.kills} ${id} is ${JSON.stringify(is)?.slice(0, 150)}, acknowledged was ${JSON.stringify(held.get(id))?.slice(0, 150)}`,
        );
    }
    if (found.revision !== least + applied)
      fault(`after kill ${counted.kills} revision ${found.revision} does not count ${applied} writes in flight`);
    counted.appliedUnanswered += applied;
    open.clear();
    revision = found.revision;
    sinceChecked = 0;
  }

  const enough = () => counted.acknowledged >= writes && counted.killsInFlight >= kills;
  while (!enough() && counted.faults.length === 0) {
    const victim = living[Math.floor(random() * living.length)];
    const goal = counted.acknowledged + Math.round((2 * random() * writes) / kills);
    let stop = false;
    const hands = living.flatMap((to, s) =>
      Array.from({ length: HANDS }, async (_, hand) => {
        while (!stop && (await write(to, `hand-${s}-${hand}-`)));
      }),
    );
    const goesOn = () => counted.faults.length === 0 && victim.child.exitCode === null;
    while (goesOn() && counted.acknowledged < goal) await new Promise((resolve) => setTimeout(resolve, 1));
    await new Promise((resolve) => setTimeout(resolve, 6 * random()));
    // To the turn in which a request is under way: there is hardly another.
    while (goesOn() && victim.inFlight.size === 0) await new Promise((resolve) => setImmediate(resolve));
    if (victim.child.exitCode !== null) fault(`a server ended by itself with ${victim.child.exitCode}`);
    counted.kills++;
    counted.killsInFlight++;
    victim.child.kill('SIGKILL');
    stop = true;
    await Promise.all([victim.ended, ...hands]);
    const names = readdirSync(data);
    if (names.some((name) => name.endsWith('.new'))) counted.unfinishedLeft++;
    if (names.some((name) => name.includes('.turn.'))) counted.flagsLeft++;
    check();
    victim.agent.destroy();
    living[living.indexOf(victim)] = await startServer(server, data);
    if (counted.kills % 20 === 0) say(`${counted.kills} kills, ${counted.acknowledged} writes acknowledged`);
  }

  // One more write tidies up after the last that was killed; then each goes in peace.
  await write(living[0], 'hand-0-0-');
  check();
  for (const { child, ended, agent } of living) {
    child.kill('SIGTERM');
    agent.destroy();
    await ended;
  }
  const names = readdirSync(data);
  if (names.join() !== 'drawer.json') fault(`left behind: ${names.join(', ')}`);
  rmSync(data, { recursive: true });
  return counted;
}

if (process.argv[1] === import.meta.filename) {
  const server = join(import.meta.dirname, '..', '..', 'dist', 'server.js');
  for (const [servers, writes, kills] of [
    [1, 2000, 100],
    [2, 600, 30],
  ]) {
    const began = Date.now();
    console.log(`${servers} server${servers > 1 ? 's on one drawer' : ''}:`);
    const { faults, ...counted } = await ordeal({ server, writes, kills, servers, say: (text) => console.log(`  ${text}`) });
    for (const fault of faults) console.log(`  FAULT ${fault}`);
    console.log(`  ${JSON.stringify(counted)}, ${((Date.now() - began) / 1000).toFixed(0)} s, ${faults.length} faults`);
    if (faults.length > 0 || counted.acknowledged < writes || counted.killsInFlight < kills) process.exitCode = 1;
  }
}
