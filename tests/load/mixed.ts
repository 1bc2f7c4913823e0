import { bare, manifold, reports, search, sweeps } from '../measure/asks.ts';
import { errorsOf, type Measured, median, quantile, rateOf } from '../measure/processes.ts';
import type { Ask } from '../measure/told.ts';

/** Reports, sweeps and searches from 32 connections at once, against the bare route from as many. */

const CONNECTIONS = 32;
const MIXED_MS = 30_000;
const BARE_MS = 2_500;
/** Of a thousand requests so many are sweeps of 20 steps, and so many searches of 500 pairings; the rest are reports. */
const OF_THOUSAND = { sweep: 40, search: 2 };

/** Spread evenly, so that whatever moment is looked at holds the same mixture. */
function mixture(): Ask[] {
  const kinds = { report: [...reports(500), ...manifold(458)], sweep: sweeps(OF_THOUSAND.sweep), search: searches(OF_THOUSAND.search) };
  return Object.values(kinds)
    .flatMap((asks) => asks.map((ask, i) => ({ ask, at: (i + 0.5) / asks.length })))
    .toSorted((a, b) => a.at - b.at)
    .map(({ ask }) => ask);
}

const searches = (count: number): Ask[] => Array.from({ length: count }, (_, i) => search(10, 10, 100 + i));

export async function mixed(measured: Measured) {
  const alone = bare(1000);
  await measured.send(alone, { connections: CONNECTIONS, ms: 1000 });
  const before = await measured.send(alone, { connections: CONNECTIONS, ms: BARE_MS });
  const all = await measured.send(mixture(), { connections: CONNECTIONS, ms: MIXED_MS });
  const after = await measured.send(alone, { connections: CONNECTIONS, ms: BARE_MS });
  const bares = [before, after];
  const p99 = (kind: string): number => quantile(all.kinds[kind]?.ms ?? [], 0.99);
  const bareP99 = median(bares.map(({ kinds }) => quantile(kinds.bare?.ms ?? [], 0.99)));
  const bareRate = median(bares.map(rateOf));
  const { count, said } = errorsOf(all);
  return {
    errors: count,
    said,
    seconds: all.seconds,
    requests: Object.fromEntries(Object.entries(all.kinds).map(([kind, { requests }]) => [kind, requests])),
    perSecond: rateOf(all),
    barePerSecond: bareRate,
    p99Ms: { report: p99('report'), sweep: p99('sweep'), search: p99('search'), bare: bareP99 },
    throughputOfBare: rateOf(all) / bareRate,
    p99OfBare: p99('report') / bareP99,
  };
}
