import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { median } from '../measure/processes.ts';

/** From the start of the process to its first answer: the built server, against a server of Node's own that only says yes. */

const TIMES = 7;
const BARE = `require('node:http').createServer((_, answer) => answer.end('{}')).listen(0, '127.0.0.1', function () {
  console.log('at http://127.0.0.1:' + this.address().port);
})`;

/** Milliseconds to the first 200. */
async function started(args: string[], env: NodeJS.ProcessEnv): Promise<number> {
  const began = performance.now();
  const child = spawn(process.execPath, args, { env: { PATH: process.env.PATH, ...env }, stdio: ['ignore', 'pipe', 'inherit'] });
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.once('exit', () => reject(new Error(`the server ended: ${said}`)));
    child.stdout.on('data', (text) => {
      said += text;
      const url = said.match(/at (http:\S+)\s/)?.[1];
      if (url) resolve(url);
    });
  });
  const { status } = await fetch(`${address}/api/health`);
  const took = performance.now() - began;
  if (status !== 200) throw new Error(`the first answer was ${status}`);
  child.removeAllListeners('exit');
  const ended = new Promise((done) => child.once('exit', done));
  child.kill('SIGKILL');
  await ended;
  return took;
}

export async function starting() {
  const data = mkdtempSync(join(tmpdir(), 'pupilwalk-bench-'));
  const rounds = [];
  // The first start reads everything from the disk.
  for (let i = 0; i <= TIMES; i++) {
    const own = await started(['dist/server.js'], { PORT: '0', PUPILWALK_DATA: data });
    rounds.push([own, await started(['-e', BARE], {})] as const);
  }
  rmSync(data, { recursive: true, force: true });
  const counted = rounds.slice(1);
  return {
    medianMs: median(counted.map(([own]) => own)),
    bareMs: median(counted.map(([, bare]) => bare)),
    ratio: median(counted.map(([own, bare]) => own / bare)),
  };
}
