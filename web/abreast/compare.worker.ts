import type { Glassworks } from '../../core/index.ts';
import type { Answered, Asked } from './compare-task.ts';
import { comparing, emptyMemory } from './comparing.ts';

/**
 * Pairings compared away from the page: relays with glass take a good part of a second each, and as much a
 * pair. A newer question takes the place of the one that is under way.
 */
const memory = emptyMemory();
const tell = (answer: Answered): void => postMessage(answer);

/** So long no other question is looked for, ms. */
const SLICE_MS = 30;
const aside = (): Promise<void> => new Promise((done) => setTimeout(done));

let latest = 0;
let works: Glassworks | undefined;

addEventListener('message', async ({ data: { id, pairings } }: MessageEvent<Asked>) => {
  latest = id;
  try {
    if (pairings.some(({ relay }) => relay.glass)) works ??= (await import('../../core/glassworks.ts')).glassworks();
    let since = performance.now();
    for (const step of comparing(pairings, works, memory)) {
      tell({ id, ...step });
      if (performance.now() - since < SLICE_MS) continue;
      await aside();
      if (latest !== id) return;
      since = performance.now();
    }
  } catch (error) {
    tell({ id, failed: error instanceof Error ? error.message : String(error) });
  }
});
