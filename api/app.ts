import { OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { stockOf } from './catalogue.ts';
import { type Drawer, openDrawer } from './drawer/drawer.ts';
import { dataFolder } from './drawer/place.ts';
import { guarded, secured } from './guard.ts';
import { inARow } from './in-a-row.ts';
import { ENTRANCE, entrance, keptFromOthers } from './key.ts';
import { readJson } from './limits.ts';
import { problemAnswer, Refusal, refusal } from './problems.ts';
import { checksRoute, checksTeller } from './routes/checks.ts';
import { choicesRoute, oneMoreRoute, searched } from './routes/choices.ts';
import { classFamily, classRoute } from './routes/classes.ts';
import { described } from './routes/described.ts';
import {
  addPart,
  addRoute,
  changePart,
  changeRoute,
  fileAnswer,
  fileRoute,
  keptHeaders,
  removePart,
  removeRoute,
  tableAnswer,
  tableRoute,
  takeIn,
  takeInRoute,
} from './routes/drawer.ts';
import { compareAbreast, compareRoute, reportOn, reportRoute, sweepOver, sweepRoute } from './routes/pairings.ts';
import { FIGURE_LIST, figuresRoute, healthRoute, openApiRoute, partsRoute } from './routes/reading.ts';
import { GLASS_LIST, glassesRoute, traceOn, traceRoute } from './routes/relays.ts';
import { sawOn, sightingsRoute } from './routes/sightings.ts';
import { tableRoutes } from './routes/table.ts';
import { windowFor, windowRoute } from './routes/window.ts';
import { type Desk, openDesk } from './searching/desk.ts';
import { builtPage, type Page, readPage, servePage } from './static.ts';

export interface Setting {
  /** The name or address that the server listens on: requests may be sent to it as well as to loopback. */
  host?: string;
  /** Other names that requests may be sent to. */
  names?: readonly string[];
  /** What lets other devices write; without one they cannot. */
  key?: string;
  /** The built page; by default what stands in `dist/web`. */
  page?: Page;
  /** The user's own parts; by default the file in the folder that the environment names. */
  drawer?: Drawer;
  /** Where searches are done. */
  desk?: Desk;
  /** Told of every fault of our own, which the answer keeps to itself. */
  onFault?: (error: unknown) => void;
}

const ABOUT = {
  openapi: '3.1.0',
  info: {
    title: 'Pupilwalk',
    version: '1',
    description:
      'Plans a photomacrography rig: an infinity-corrected objective, a relay as its tube lens, a camera. Lengths in mm unless a name says otherwise.',
  },
};

/** The whole API and the page, without a server. */
export function buildApp({
  host = '127.0.0.1',
  names = [],
  key,
  page = readPage(builtPage()),
  onFault = () => {},
  drawer = openDrawer({ folder: dataFolder(), onFault }),
  desk = openDesk(),
}: Setting = {}) {
  const app = new OpenAPIHono();
  const stock = stockOf(drawer);
  app.use(secured);
  app.use(guarded({ host, names }));
  app.use('/api/parts/*', keptFromOthers(key));
  app.use(ENTRANCE, (c, next) => (c.req.method === 'GET' ? entrance(key)(c, next) : next()));
  app.onError((error) => {
    if (!(error instanceof Refusal)) onFault(error);
    return problemAnswer(error);
  });
  app.notFound((c) => elsewhere(app, page, c));
  tableRoutes(app, stock);
  const checksTold = checksTeller();
  // Made when it is first asked for: that takes as long as many a report, and it is always the same.
  let made: { openapi: string } | undefined;
  const document = () => {
    made ??= { ...app.getOpenAPI31Document(ABOUT) };
    return made;
  };

  return app
    .openapi(healthRoute, (c) => c.json({ status: 'ok' as const }, 200))
    .openapi(openApiRoute, (c) => c.json(document(), 200))
    .openapi(partsRoute, (c) => c.json(stock.listed(), 200))
    .openapi(figuresRoute, (c) => c.json({ figures: FIGURE_LIST }, 200))
    .openapi(checksRoute, async (c) => c.json(await checksTold(), 200))
    .openapi(glassesRoute, (c) => c.json({ glasses: GLASS_LIST }, 200))
    .openapi(described(app, reportRoute), async (c) => {
      const given = await readJson(c);
      await inARow();
      return c.json(reportOn(given, stock.shelf()), 200);
    })
    .openapi(described(app, sweepRoute), async (c) => c.json(await sweepOver(await readJson(c), stock.shelf()), 200))
    .openapi(described(app, compareRoute), async (c) => c.json(compareAbreast(await readJson(c), stock.shelf()), 200))
    .openapi(described(app, sightingsRoute), async (c) => c.json(sawOn(await readJson(c), stock.shelf()), 200) as never)
    .openapi(described(app, windowRoute), async (c) => c.json(await windowFor(await readJson(c), stock.shelf()), 200))
    .openapi(described(app, traceRoute), async (c) => c.json(traceOn(await readJson(c), stock.shelf()), 200))
    .openapi(described(app, classRoute), async (c) => c.json(await classFamily(await readJson(c)), 200))
    .openapi(described(app, choicesRoute), async (c) => (await searched(c, 'choosing', stock, desk)) as never)
    .openapi(described(app, oneMoreRoute), async (c) => (await searched(c, 'oneMore', stock, desk)) as never)
    .openapi(fileRoute, () => fileAnswer(drawer) as never)
    .openapi(tableRoute, () => tableAnswer(drawer) as never)
    .openapi(described(app, takeInRoute), async (c) => c.json(await takeIn(c, drawer), 200))
    .openapi(described(app, addRoute), async (c) => {
      const stored = await addPart(c, drawer);
      return c.json(stored, 201, keptHeaders(stored));
    })
    .openapi(described(app, changeRoute), async (c) => {
      const stored = await changePart(c, drawer);
      return c.json(stored, 200, keptHeaders(stored));
    })
    .openapi(described(app, removeRoute), async (c) => {
      await removePart(c, drawer);
      return c.body(null, 204);
    });
}

/** For the page: the routes with the types of what they take and answer. */
export type App = ReturnType<typeof buildApp>;

/** Whether a route's path, one of its steps perhaps `:any`, is this one. */
const isAt = (route: string, path: string): boolean => {
  const steps = path.split('/');
  const wanted = route.split('/');
  return wanted.length === steps.length && wanted.every((step, i) => (step.startsWith(':') ? steps[i] !== '' : step === steps[i]));
};

/** A file of the page, the methods that an address knows, or nothing. */
function elsewhere(app: OpenAPIHono, page: Page, c: Context): Response {
  const { method, path } = c.req;
  const methods = new Set(app.routes.filter((r) => isAt(r.path, path) && r.method !== 'ALL').map((r) => r.method));
  if (methods.has('GET') || page.has(path)) methods.add('GET').add('HEAD');
  if (method === 'GET' || method === 'HEAD') {
    const file = servePage(page, c);
    if (file) return file;
  }
  const allow = [...methods, 'OPTIONS'].join(', ');
  if (methods.size > 0 && method === 'OPTIONS') return new Response(null, { status: 204, headers: { allow } });
  return problemAnswer(
    methods.size > 0
      ? refusal(405, 'wrongMethod', 'uses a method that this address does not know', method, allow, { allow })
      : refusal(
          404,
          'unknownAddress',
          'asks for an address that means nothing here',
          path,
          path === '/' ? 'the built page: npm run build' : 'an address that GET /api/openapi.json lists',
        ),
  );
}
