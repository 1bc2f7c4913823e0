import { reports, searchWithGlass } from '../measure/asks.ts';
import { errorsOf, type Measured, median, quantile } from '../measure/processes.ts';

/**
 * How long reports take while a search over 100,000 pairings runs, some of them with glass, against how long they
 * take without: the two by turns, because whatever else the machine does comes and goes. One connection, so that a
 * report waits for the search alone and not for other reports.
 */

const TURNS = 4;
const TURN_MS = 2_500;
const SEARCH = searchWithGlass(100, 176, 24);

const p99 = async (measured: Measured) => {
  const done = await measured.send(reports(500), { connections: 1, ms: TURN_MS });
  const { ms = [] } = done.kinds.report ?? {};
  return { p50: quantile(ms, 0.5), p99: quantile(ms, 0.99), worst: ms.at(-1) ?? Number.NaN, ...errorsOf(done) };
};

type Timed = Awaited<ReturnType<typeof p99>>;

/** A search that is broken off as soon as the reports have been timed: it need not be waited for. */
async function searched(address: string, meanwhile: () => Promise<void>): Promise<boolean> {
  const ending = new AbortController();
  let over = false;
  const search = fetch(`${address}${SEARCH.path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: SEARCH.body,
    signal: ending.signal,
  })
    .then((answer) => answer.text())
    .then((text) => {
      over = true;
      return text;
    })
    .catch(() => '');
  await new Promise((done) => setTimeout(done, 300));
  await meanwhile();
  const lasted = !over;
  ending.abort();
  await search;
  await new Promise((done) => setTimeout(done, 300));
  return lasted;
}

export async function starving(measured: Measured) {
  await p99(measured);
  const without: Timed[] = [];
  const during: Timed[] = [];
  let lasted = 0;
  for (let i = 0; i < TURNS; i++) {
    without.push(await p99(measured));
    if (await searched(measured.address, async () => void during.push(await p99(measured)))) lasted++;
  }
  const all = [...without, ...during];
  return {
    errors: all.reduce((sum, { count }) => sum + count, 0),
    said: all.flatMap(({ said }) => said).slice(0, 3),
    /** Turns in which the search was still running when the reports had been timed. */
    searchesThatLasted: lasted,
    p99Ms: { without: median(without.map((x) => x.p99)), during: median(during.map((x) => x.p99)) },
    p50Ms: { without: median(without.map((x) => x.p50)), during: median(during.map((x) => x.p50)) },
    worstMs: { without: Math.max(...without.map((x) => x.worst)), during: Math.max(...during.map((x) => x.worst)) },
    p99DuringOverWithout: median(during.map((x) => x.p99)) / median(without.map((x) => x.p99)),
    turns: TURNS,
  };
}
