import { type Asked, choosing, wantSchema } from '../../core/choosing.ts';
import { SEARCHED, SPACES, search } from '../measure/asks.ts';
import { errorsOf, type Measured, median } from '../measure/processes.ts';
import { manyParts } from '../support/many-parts.ts';

/**
 * How a search grows with what it considers: parts without glass, five spaces, a wish of six limits. Through the
 * route, in the worker as it is built, at 1,000, 10,000 and 100,000 pairings; in core, beyond what the route takes,
 * at 10,000, 100,000 and a million.
 */

interface Growth {
  pairings: number;
  seconds: number;
  usEach: number;
}

const grown = (pairings: number, seconds: number): Growth => ({
  pairings,
  seconds: Number(seconds.toPrecision(3)),
  usEach: Number(((1e6 * seconds) / pairings).toPrecision(3)),
});

const THROUGH_API = [
  [10, 20],
  [50, 40],
  [100, 200],
] as const;
const IN_CORE = [
  [50, 40],
  [100, 200],
  [500, 400],
] as const;
const TIMES = 3;

async function throughApi(measured: Measured): Promise<Growth[]> {
  const one = async (objectives: number, relays: number): Promise<number> => {
    const done = await measured.send([search(objectives, relays)], { connections: 1, requests: 1 });
    if (errorsOf(done).count > 0) throw new Error(`a search failed: ${errorsOf(done).said.join('; ')}`);
    return (done.kinds.search?.ms[0] as number) / 1000;
  };
  await one(50, 40);
  const all: Growth[] = [];
  for (const [objectives, relays] of THROUGH_API) {
    const times: number[] = [];
    for (let i = 0; i < TIMES; i++) times.push(await one(objectives, relays));
    all.push(grown(objectives * relays * SPACES.length, median(times)));
  }
  return all;
}

function inCore(): { growth: Growth[]; heapBytesPerPairing: number; heapMbPeak: number } {
  const parts = manyParts(500);
  const asked = (objectives: number, relays: number): Asked => ({
    want: wantSchema.parse(SEARCHED.want),
    sensor: SEARCHED.sensor,
    objectives: parts.objectives.slice(0, objectives),
    relays: parts.relays.slice(0, relays),
    infinitySpacesMm: SPACES,
    sort: { by: 'resolvedDetailUm', first: 'least' },
    frontier: ['resolvedDetailUm', 'objectFieldWidthMm'],
    most: 24,
  });
  const heap = (): number => {
    globalThis.gc?.();
    return process.memoryUsage().heapUsed;
  };
  /** Seconds, and what it holds at the most while it runs, its garbage collected at ten moments. */
  const one = (objectives: number, relays: number, looking: boolean): { seconds: number; held: number } => {
    const before = heap();
    const began = performance.now();
    const searching = choosing(asked(objectives, relays));
    let held = 0;
    let next = 0.1;
    for (;;) {
      const step = searching.next();
      if (step.done) break;
      if (!looking || step.value.done / step.value.of < next) continue;
      next += 0.1;
      held = Math.max(held, heap() - before);
    }
    return { seconds: (performance.now() - began) / 1000, held };
  };
  one(50, 40, false);
  const growth = IN_CORE.map(([objectives, relays]) => {
    const times = Array.from({ length: objectives > 200 ? 1 : TIMES }, () => one(objectives, relays, false).seconds);
    return grown(objectives * relays * SPACES.length, median(times));
  });
  const [small, large] = [one(50, 40, true).held, one(250, 200, true).held];
  const more = (250 * 200 - 50 * 40) * SPACES.length;
  return { growth, heapBytesPerPairing: Math.max(0, large - small) / more, heapMbPeak: Number((large / 1e6).toFixed(2)) };
}

const spread = (all: readonly Growth[]): number => (all.at(-1) as Growth).usEach / (all.find((g) => g.pairings >= 10_000) as Growth).usEach;

export async function searches(measured: Measured) {
  const api = await throughApi(measured);
  const core = inCore();
  return {
    api,
    core: core.growth,
    heapBytesPerPairing: core.heapBytesPerPairing,
    heapMbPeak: core.heapMbPeak,
    apiGrowth: spread(api),
    coreGrowth: spread(core.growth),
  };
}
