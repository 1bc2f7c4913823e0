import { BETTER } from '../../core/choosing.ts';
import { FOCUS_PLANES, MADE_KINDS } from '../../core/glassworks.ts';
import { FIGURE_IDS } from '../../core/index.ts';
import { TABLE_GROUPS, type TableGroup } from '../../core/table.ts';
import { OBJECTIVES, PLAIN_RELAYS, RELAYS, SENSORS } from '../core/choose/catalogue.ts';
import { GLASS } from '../core/lens/rigs.ts';
import { fullPairing } from '../core/support/full-pairing.ts';
import { fullSettings } from '../core/table/full-settings.ts';
import { LENSES, WALLS } from '../core/table/saw/kinds.ts';
import { randomPairing } from '../support/pairings.ts';
import type { Random } from '../support/random.ts';
import type { Sent } from './client.ts';
import { type Body, id, listed, type Maker, soundPairing } from './pairings.ts';

/** Bodies that people could well send: for each operation the values that get through, or nearly always do. */

const ofPairing = (r: Random): Body => structuredClone(soundPairing(r));
const some = (body: Body, r: Random, share: number): Body => Object.fromEntries(Object.entries(body).filter(() => r.chance(share)));

function sweep(r: Random): Body {
  const pairing = structuredClone(r.oneOf<Maker>([listed, randomPairing as never, fullPairing as never])(r));
  const [vary, from, to] = r.oneOf<readonly [string, number, number]>([
    ['/infinitySpaceMm', 150, 240],
    ['/relay/focalLengthMm', 150, 260],
    ['/relay/powerDioptre', 4, 6],
    ['/objective/magnification', 8, 12],
    ['/sensor/widthMm', 20, 36],
  ]);
  const steps = r.chance(0.98) ? r.integer(2, 3) : r.integer(20, 40);
  const figures = [...new Set(Array.from({ length: 4 }, () => r.oneOf(FIGURE_IDS)))];
  return { pairing, vary, from: r.between(from, to), to: r.between(from, to), steps, ...(r.chance(0.6) ? { figures } : {}) };
}

function want(r: Random): Body {
  const low = r.between(1, 8);
  return some(
    {
      subject: { widthMm: r.between(0.5, 4), ...(r.chance(0.5) ? { depthMm: r.between(0.05, 1) } : {}) },
      magnification: [low, low * r.between(1.1, 4)],
      finestDetailUm: r.between(1, 8),
      minWorkingDistanceMm: r.between(2, 30),
      lightingClearance: { depthMm: r.between(1, 10), minConeDeg: r.between(5, 40) },
      minCoveredShare: r.between(0.3, 1),
      minCornerIllumination: r.between(0.2, 0.9),
      samplingRatio: [0.3, 4],
      maxLengthMm: r.between(200, 900),
      maxPrice: r.between(100, 3000),
      fieldWidthMm: [0.5, 9],
    },
    r,
    0.35,
  );
}

const few = <T>(r: Random, one: (r: Random) => T): T[] => Array.from({ length: r.integer(1, 3) }, () => one(r));

function search(r: Random): Body {
  const lists = {
    objectives: r.chance(0.1) ? 'owned' : few(r, () => id(r, OBJECTIVES)),
    relays: r.chance(0.1) ? 'owned' : few(r, () => (r.chance(0.7) ? id(r, PLAIN_RELAYS) : r.oneOf(PLAIN_RELAYS).part)),
  };
  const figures = Object.keys(BETTER);
  return {
    want: want(r),
    sensor: r.chance(0.7) ? id(r, SENSORS) : r.oneOf(SENSORS).part,
    from: lists,
    ...some(
      {
        infinitySpacesMm: few(r, () => r.between(20, 120)),
        sort: { by: r.oneOf([...FIGURE_IDS, 'price']), first: r.oneOf(['least', 'greatest']) },
        frontier: [...new Set([r.oneOf(figures), r.oneOf(figures), 'objectFieldWidthMm'])].slice(0, 2),
        most: r.integer(1, 20),
        eachPairOnce: r.chance(0.5),
      },
      r,
      0.4,
    ),
  };
}

const windowAsked = (r: Random): Body => ({
  pairing: structuredClone(r.oneOf<Maker>([listed, randomPairing as never])(r)),
  want: want(r),
  ...some({ vary: r.oneOf(['/relay/focalLengthMm', '/infinitySpaceMm', '/relay/clearApertureMm']) }, r, 0.7),
});

const tableAsked =
  (group: TableGroup, more: Maker = () => ({})): Maker =>
  (r) => {
    const settings: Body = fullSettings(r);
    const own = Object.fromEntries(TABLE_GROUPS[group].settings.flatMap(({ key }) => (r.chance(0.5) ? [[key, settings[key]]] : [])));
    return { pairing: ofPairing(r), ...own, ...more(r) };
  };

const THREADS = ['M42 x 1', 'M52 x 0.75', '58 x 0.75', 'M30.5 x 0.5', 'T2', 'C', 'RMS'];
const end = (r: Random): Body => ({ thread: r.oneOf(THREADS), sex: r.oneOf(['male', 'female']) });
const buildMore = (r: Random): Body =>
  some(
    {
      adapters: few(r, () => ({ ends: [end(r), end(r)], ...some({ lengthMm: r.between(1, 20), clearMm: r.between(15, 40) }, r, 0.5) })),
      tubes: few(r, () => ({ thread: r.oneOf(THREADS), lengthMm: r.between(5, 60) })),
      camera: { thread: r.oneOf(THREADS) },
      relayFront: end(r),
      ownedOnly: r.chance(0.5),
      preferOwned: r.chance(0.5),
    },
    r,
    0.3,
  );

const SIGHTED = [...Object.values(LENSES), ...Object.values(WALLS)];
const sightings = (r: Random): Body => {
  const { given, asked } = r.oneOf(SIGHTED)(r);
  return { pairing: given, ...asked };
};

const traced = (r: Random): Body => ({
  relay: r.chance(0.5)
    ? { kind: 'supplementary', clearApertureMm: 54, glass: GLASS, ...some({ reversed: true }, r, 0.3) }
    : id(
        r,
        RELAYS.filter(({ part }) => part.glass),
      ),
  pupilDiameterMm: r.between(2, 20),
  pupilDistanceMm: r.between(10, 150),
  ...(r.chance(0.5) ? { fieldRadiiMm: few(r, () => r.between(0, 22)) } : { slopes: few(r, () => r.between(-0.1, 0.1)) }),
  wavelengthsNm: few(r, () => r.between(450, 650)),
  focus: r.oneOf(FOCUS_PLANES),
});

const SHELVES = { objective: OBJECTIVES, relay: RELAYS, sensor: SENSORS } as const;
/** What is hard on pages, tables and file systems. */
const NAMES = [
  'My one',
  '<img src=x onerror=alert(1)>',
  '=1+1',
  "'; --",
  'Größe\u202E',
  '\u0000',
  '🔬',
  'x'.repeat(120),
  '- a\n- b',
  '__proto__',
];

export function newPart(r: Random, kind = r.oneOf(['objective', 'relay', 'sensor'])): Body {
  const { part } = r.oneOf(SHELVES[kind as keyof typeof SHELVES] as readonly { part: object }[]);
  const story = some({ price: r.between(0, 3000), notes: r.oneOf(NAMES) }, r, 0.5);
  return { kind, owned: r.chance(0.7), ...story, part: { ...structuredClone(part), name: r.oneOf(NAMES) } };
}

const drawerFile = (r: Random): Body => ({
  pupilwalkDrawer: 1,
  revision: r.integer(0, 9),
  parts: few(r, () => ({ id: `part-${r.integer(1, 30)}`, version: r.integer(1, 4), ...newPart(r) })),
});

/** By the operation's name. */
export const SOUND: Readonly<Record<string, Maker>> = {
  'POST /api/pairings/report': ofPairing,
  'POST /api/pairings/sweep': sweep,
  'POST /api/pairings/compare': (r) => ({ pairings: Array.from({ length: r.chance(0.97) ? 2 : r.integer(3, 12) }, () => ofPairing(r)) }),
  'POST /api/choices': search,
  'POST /api/choices/one-more': search,
  'POST /api/choices/window': windowAsked,
  'POST /api/builds': tableAsked('build', buildMore),
  'POST /api/infinity': tableAsked('infinity'),
  'POST /api/stacks': tableAsked('stack', (r) =>
    some({ objectives: few(r, () => id(r, OBJECTIVES)), subject: { widthMm: 1, depthMm: r.between(0.05, 1) } }, r, 0.5),
  ),
  'POST /api/stillness': tableAsked('stillness'),
  'POST /api/lighting': tableAsked('light'),
  'POST /api/close-ups': tableAsked('closeUp'),
  'POST /api/sightings': sightings,
  'POST /api/relays/trace': traced,
  'POST /api/relays/class': (r) => ({ class: r.oneOf(MADE_KINDS), focalLengthMm: r.between(100, 400), clearApertureMm: r.between(10, 40) }),
  'POST /api/parts': (r) => ({ ...(r.chance(0.4) ? { id: `part-${r.integer(1, 30)}` } : {}), ...newPart(r) }),
  'PUT /api/parts/{id}': (r) => newPart(r),
  'POST /api/parts/drawer': drawerFile,
};

/** The heaviest report that is known: what the work of any other request is told in. */
export function heaviestReport(): Sent {
  const about = (value: number) => ({ value, plusMinus: value / 20, origin: 'assumed' });
  const stops = Array.from({ length: 8 }, (_, i) => ({ diameterMm: about(30 - i), fromSensorMm: about(20 + 9 * i) }));
  const parts = { objective: 'plan-10x-0-25-200', relay: 'tele-200-f4', sensor: 'full-frame-45mp' };
  const body = Buffer.from(JSON.stringify({ ...parts, infinitySpaceMm: about(60), stops, sensorOffsetMm: about(1) }));
  return { method: 'POST', path: '/api/pairings/report', headers: { 'content-type': 'application/json' }, body };
}
