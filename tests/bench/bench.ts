/**
 * `npm run bench`: how fast, as ratios within one run, because the machine is shared. Bundled as the server is
 * (`tests/tools/measure.mjs`). Prints tables and writes the same as JSON to the file that BENCH names, if any;
 * ends with 1 and a line for each floor that does not hold. BENCH_ONLY=route,light measures those parts alone.
 */
import { writeFileSync } from 'node:fs';
import { held, tell } from '../measure/floors.ts';
import { startMeasured } from '../measure/processes.ts';
import { searches } from './choosing.ts';
import { figures } from './figures.ts';
import { BENCH_FLOORS } from './floors.ts';
import { light } from './light.ts';
import { page } from './page.ts';
import { rates } from './rates.ts';
import { route } from './route.ts';
import { starting } from './starting.ts';
import { tracing } from './tracing.ts';

const measured = await startMeasured();
const PARTS = {
  figures,
  light,
  tracing,
  route: () => route(measured),
  searches: () => searches(measured),
  starting,
  page,
  rates,
} as const;
type Results = { [P in keyof typeof PARTS]?: Awaited<ReturnType<(typeof PARTS)[P]>> };

const only = process.env.BENCH_ONLY?.split(',');
const results: Results = {};
for (const name of Object.keys(PARTS) as (keyof typeof PARTS)[]) {
  if (only && !only.includes(name)) continue;
  Object.assign(results, { [name]: await PARTS[name]() });
  console.log(name);
  console.dir(results[name], { depth: 5 });
}
measured.stop();

const { figures: sums, light: corner, tracing: rays, route: report, searches: grown, starting: start, page: seen } = results;
const kept = held(BENCH_FLOORS, {
  'figures / straight line': sums?.ratio,
  'corner light / sampled at 1e-4': corner?.ratio,
  'rays × surfaces / by hand': rays?.ratio,
  'POST report / POST bare': report?.ratio,
  'search through the API, µs each, 100k / 10k': grown?.apiGrowth,
  'search in core, µs each, 1M / 10k': grown?.coreGrowth,
  'search, heap bytes a pairing more': grown?.heapBytesPerPairing,
  'start to first answer / bare': start?.ratio,
  'first script, kB gzip': seen && seen.firstScriptBytes / 1000,
  'first answer in Chromium / bare page': seen?.firstAnswer.ratio,
  'dragging, worst p95, ms': seen?.dragging.worstP95Ms,
});
// Parts that were not asked for are not missed.
tell(only ? kept.filter(({ measured }) => measured !== undefined) : kept);
if (process.env.BENCH) writeFileSync(process.env.BENCH, `${JSON.stringify({ ...results, floors: kept }, null, 2)}\n`);
