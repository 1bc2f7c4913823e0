import { bare, manifold, refused, reports, sweeps } from '../measure/asks.ts';
import { errorsOf, type Measured } from '../measure/processes.ts';
import type { Ask } from '../measure/told.ts';

/** What the server holds after each of ten rounds of requests, its garbage collected, once it has warmed up. */

const ROUNDS = 10;
const IN_A_ROUND = 20_000;
const WARM_UP = 10_000;
const CONNECTIONS = 8;

/** New bodies for each round: what holds on to what was asked would grow. */
const round = (n: number): Ask[] => [
  ...reports(400, 1000 + n),
  ...manifold(200, 2000 + n),
  ...bare(1000, 3000 + n),
  ...refused(390, 4000 + n),
  ...sweeps(10, 5000 + n),
];

/** Slope of a straight line through the points, least squares. */
function slope(ys: readonly number[], step: number): number {
  const middle = (ys.length - 1) / 2;
  const mean = ys.reduce((a, b) => a + b, 0) / ys.length;
  const up = ys.reduce((sum, y, i) => sum + (i - middle) * (y - mean), 0);
  const across = ys.reduce((sum, _, i) => sum + (i - middle) ** 2, 0);
  return up / across / step;
}

export async function memoryOver(measured: Measured) {
  await measured.send(round(0), { connections: CONNECTIONS, requests: WARM_UP });
  const held = [await measured.memory()];
  let errors = 0;
  let said: string[] = [];
  for (let n = 1; n <= ROUNDS; n++) {
    const done = await measured.send(round(n), { connections: CONNECTIONS, requests: IN_A_ROUND });
    const wrong = errorsOf(done);
    errors += wrong.count;
    said = [...said, ...wrong.said].slice(0, 3);
    held.push(await measured.memory());
  }
  const heap = held.map(({ heapBytes }) => heapBytes);
  const resident = held.map(({ residentBytes }) => residentBytes);
  return {
    requests: ROUNDS * IN_A_ROUND,
    errors,
    said,
    heapMb: heap.map((bytes) => Number((bytes / 1e6).toFixed(2))),
    residentMb: resident.map((bytes) => Math.round(bytes / 1e6)),
    heapBytesPerRequest: slope(heap, IN_A_ROUND),
    // The first half lets the heap find its size.
    residentGrowth: Math.max(...resident.slice(ROUNDS / 2)) / Math.max(...resident.slice(0, ROUNDS / 2 + 1)),
  };
}
