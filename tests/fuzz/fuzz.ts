/**
 * The API under 100,000 requests, drawn from its own description, from known good bodies and from ill will:
 * `npm run fuzz` (`REQUESTS=`, `SEED=`). Ends on what was found, and with 1 where anything was.
 */
import type { Kind } from './requests.ts';
import { fuzzed } from './run.ts';

const requests = Number(process.env.REQUESTS ?? 100_000);
const seed = Number(process.env.SEED ?? 1);
const began = Date.now();
const { found, unitMs } = await fuzzed(requests, seed, console.log);

const statuses = [...new Set([...found.tallies.values()].flatMap(({ byStatus }) => [...byStatus.keys()]))].sort((a, b) => a - b);
const SHOWN: readonly Kind[] = ['sound', 'pushed', 'described', 'spoilt', 'raw'];
const row = (cells: readonly (string | number)[]): string =>
  cells.map((cell, i) => (i === 0 ? String(cell).padEnd(32) : String(cell).padStart(i < 7 ? 10 : 8))).join('');
console.log(`Work in times of the heaviest report (${unitMs.toFixed(1)} ms of the processor): all of it, and the longest stretch.`);
console.log('Of a hundred of each kind, how many got through; how many were answered with each status.');
console.log(row(['', 'asked', ...SHOWN, ...statuses, 'work', 'stretch']));
for (const [name, { asked, byStatus, kinds, worst }] of [...found.tallies].sort(([a], [b]) => a.localeCompare(b))) {
  const through = SHOWN.map((kind) => {
    const of = kinds.get(kind);
    return of ? Math.round((100 * of.through) / of.asked) : '';
  });
  const work = [worst.all, worst.stretch].map((ms) => (ms / unitMs).toFixed(2));
  console.log(row([name, asked, ...through, ...statuses.map((status) => byStatus.get(status) ?? ''), ...work]));
}
for (const { fault, kind, sent, got } of found.faults) {
  console.log(`\n${sent.method} ${sent.path.slice(0, 120)} (${kind}) ${fault}`);
  console.log(`  sent ${JSON.stringify(sent.headers).slice(0, 200)} ${sent.body?.toString().slice(0, 2000) ?? ''}`);
  console.log(`  got ${got.status} ${got.text.slice(0, 600)}`);
}
const seconds = ((Date.now() - began) / 1000).toFixed(0);
console.log(`\n${requests} requests with seed ${seed} in ${seconds} s: ${found.count === 0 ? 'all held' : `${found.count} faults`}`);
process.exitCode = found.count === 0 ? 0 : 1;
