/**
 * `npm run bench`: how fast, as ratios within one run, because the machine is shared. Prints a table and
 * writes the same as JSON to the file that BENCH names, if any. Medians; rates are per second.
 */
import { writeFileSync } from 'node:fs';
import { OpenAPIHono } from '@hono/zod-openapi';
import { Bench } from 'tinybench';
import { buildApp } from '../../api/app.ts';
import { familyOf, spacings, trace } from '../../core/glassworks.ts';
import { evaluate, pairingSchema, relativeIllumination, report, scaleOf, stopsOf, sweep } from '../../core/index.ts';
import { inputsOf } from '../../core/pairing/inputs.ts';
import { GRAPH } from '../../core/pairing/registry.ts';
import opening from '../../data/opening.json' with { type: 'json' };
import { growth } from './choosing.ts';
import { handling } from './dragging.ts';
import { firstAnswers } from './first-answer.ts';
import { NO_DRAWER } from './no-drawer.ts';
import { byHand, copy, like } from './rays.ts';
import { BEAM, GLASSED, JUDGING, PRESCRIBED, WORKS } from './relay.ts';
import { sampledIllumination } from './sampled.ts';
import { straightLine } from './straight-line.ts';

const pairing = pairingSchema.parse(opening.pairing);
/** The same with a rim that cuts, so that the light has something to do. */
const cut = pairingSchema.parse({ ...opening.pairing, relay: { ...opening.pairing.relay, clearApertureMm: 16 }, infinitySpaceMm: 120 });
const body = JSON.stringify(pairing);
const leaves = inputsOf(pairing).values;
const stops = stopsOf(evaluate(cut).sheet);
if (!stops) throw new Error('the bench pairing has an opening that is not known');
const scale = scaleOf(stops.rig);
const radii = Array.from({ length: 128 }, (_, i) => i / 8);

/** A route that does nothing but read and validate the same body, in the same framework and process. */
const bare = new OpenAPIHono();
bare.post('/bare', async (c) => {
  const parsed = pairingSchema.safeParse(await c.req.json());
  return c.json({ ok: parsed.success });
});
const app = buildApp({ drawer: NO_DRAWER });
const post = (to: { fetch: (request: Request) => Response | Promise<Response> }, path: string) => async () => {
  const answer = await to.fetch(
    new Request(`http://127.0.0.1${path}`, { method: 'POST', body, headers: { 'content-type': 'application/json', host: '127.0.0.1' } }),
  );
  if (answer.status !== 200) throw new Error(`${path} answered ${answer.status}`);
  await answer.text();
};

/** Bundles to trace into, so that neither way pays for more than its copy. */
const [own, hands] = [like(BEAM), like(BEAM)];

const bench = new Bench({ time: 1500, warmupTime: 500 });
bench
  .add('report, ± and 128 points', () => report(pairing))
  .add('figures with ±', () => evaluate(pairing))
  .add('figures alone', () => GRAPH.fill(leaves))
  .add('the same figures, straight line', () => straightLine(pairing))
  .add('light at 128 radii', () => radii.map((r) => relativeIllumination(stops.seen, r / scale)))
  .add('light at 128 radii, pupil sampled', () => radii.map((r) => sampledIllumination(stops.seen, r / scale)))
  .add('vary the relay, 60 values', () => sweep({ pairing, vary: '/relay/focalLengthMm', from: 100, to: 400, steps: 60 }))
  .add('rays through three surfaces', () => trace(PRESCRIBED, copy(BEAM, own)))
  .add('the same rays, by hand', () => byHand(PRESCRIBED, BEAM, copy(BEAM, hands)))
  .add('search, 2 x 60 spacings', () => [...spacings(JUDGING, { fromMm: 20, toMm: 150, count: 60 })])
  .add('a class of 16 cemented lenses', () => familyOf('cemented-achromat', 200, 54))
  .add('report of a relay with glass', () => report({ ...GLASSED }, WORKS))
  .add('POST report', post(app, '/api/pairings/report'))
  .add('POST bare, same body validated', post(bare, '/bare'));
await bench.run();

const rate = (name: string): number => {
  const latency = bench.getTask(name)?.result as { latency?: { p50: number } } | undefined;
  if (!latency?.latency) throw new Error(`no result for ${name}`);
  return 1000 / latency.latency.p50;
};
const ratio = (a: string, b: string): number => rate(a) / rate(b);

const rates = Object.fromEntries(bench.tasks.map((task) => [task.name, Number(rate(task.name).toPrecision(3))]));
const ratios = {
  'figures alone / straight line': ratio('figures alone', 'the same figures, straight line'),
  'closed form / sampled pupil': ratio('light at 128 radii', 'light at 128 radii, pupil sampled'),
  'rays / by hand': ratio('rays through three surfaces', 'the same rays, by hand'),
  'POST report / POST bare': ratio('POST report', 'POST bare, same body validated'),
  'report / figures with ±': ratio('report, ± and 128 points', 'figures with ±'),
};
const raysTimesSurfaces = (3 * BEAM.count * rate('rays through three surfaces')) / 1e6;
console.log(
  `rays x surfaces: ${raysTimesSurfaces.toFixed(1)} million a second; a search takes ${(1000 / rate('search, 2 x 60 spacings')).toFixed(0)} ms`,
);
console.table(rates);
console.table(Object.fromEntries(Object.entries(ratios).map(([name, value]) => [name, Number(value.toPrecision(3))])));
const searches = growth();
console.log('a search over pairings without glass, on one core');
console.table(searches);
const visits = await firstAnswers();
const firstAnswerMs = visits && {
  median: Math.round(visits[Math.floor(visits.length / 2)] as number),
  worst: Math.round(visits.at(-1) as number),
};
console.log(
  firstAnswerMs
    ? `first answer on the page, of ${visits?.length} visits: median ${firstAnswerMs.median} ms, worst ${firstAnswerMs.worst} ms`
    : 'no Chromium: the page was not measured',
);
const page = await handling();
if (page) {
  console.log('from a movement of the hand to the painted page, ms');
  console.table(page.dragging);
  console.log(
    `script before the first answer: ${(page.firstScriptBytes / 1000).toFixed(1)} kB; what moved by itself on a slow visit:`,
    page.shifted,
  );
}
if (process.env.BENCH)
  writeFileSync(process.env.BENCH, `${JSON.stringify({ rates, ratios, searches, firstAnswerMs, ...page }, null, 2)}\n`);
