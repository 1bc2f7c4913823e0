import { setImmediate } from 'node:timers/promises';
import { inARow } from './in-a-row.ts';

/** As long as this, in ms, nobody minds waiting. */
const BREATH = 20;

/** All items of a slow source, with a pause for other requests whenever it has taken a while. */
export async function unhurried<T>(source: Iterable<T>): Promise<T[]> {
  const items: T[] = [];
  let began = performance.now();
  for (const item of source) {
    items.push(item);
    if (performance.now() - began < BREATH) continue;
    await setImmediate();
    // Who has come in meanwhile stands in the row already, and goes first.
    await inARow();
    began = performance.now();
  }
  return items;
}
