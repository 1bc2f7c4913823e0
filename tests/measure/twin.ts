import type { OpenAPIHono } from '@hono/zod-openapi';
import { buildApp } from '../../api/app.ts';
import { stockOf } from '../../api/catalogue.ts';
import { readJson } from '../../api/limits.ts';
import { Refusal } from '../../api/problems.ts';
import { readPairing } from '../../api/read-pairing.ts';
import { openDesk } from '../../api/searching/desk.ts';
import { startServer } from '../../api/server.ts';
import { NO_DRAWER } from './no-drawer.ts';
import type { Memory, Told } from './told.ts';

/**
 * The server that is measured, in a process of its own: the whole app as it is shipped, and beside it a bare
 * route. That one goes through the same listener, guard, headers and limits, reads the same body, and validates it
 * as the report's route does; then it only says that it did. Started by `fork`, with `--expose-gc`.
 */
const desk = openDesk(new URL('../choosing.worker.js', import.meta.url));
const setting = { host: '127.0.0.1', drawer: NO_DRAWER, desk, page: new Map(), onFault: (error: unknown) => console.error(error) };
const app = buildApp(setting);
const stock = stockOf(NO_DRAWER);
// Typed as an app whose routes are not known: what is added here is no part of its contract.
(app as unknown as OpenAPIHono).post('/api/bare', async (c) => {
  const { pairing, problems } = readPairing(await readJson(c), stock.shelf());
  if (!pairing) throw new Refusal(422, problems);
  return c.json({ valid: true }, 200);
});
const { address } = await startServer(0, setting, app);

const tell = (told: Told): void => void process.send?.(told);

function memory(): Memory {
  // Twice: what the first pass finds dead may have been all that held something else.
  globalThis.gc?.();
  globalThis.gc?.();
  const { heapUsed, rss } = process.memoryUsage();
  return { heapBytes: heapUsed, residentBytes: rss };
}

process.on('message', (asked) => {
  const { user, system } = process.cpuUsage();
  tell(asked === 'memory' ? { memory: memory() } : { cpuMs: (user + system) / 1000 });
});
process.on('disconnect', () => process.exit(0));
tell({ address });
