import type { Random } from '../support/random.ts';
import type { Sent } from './client.ts';
import type { Description, Operation } from './document.ts';
import { drawn, pushed } from './drawn.ts';
import { spoilt } from './hostile.ts';
import { rawText } from './raw.ts';
import { newPart, SOUND } from './sound.ts';
import { onTheWire } from './wire.ts';

/** What is sent next, and of which kind it is. */

const KINDS = ['sound', 'pushed', 'described', 'spoilt', 'raw', 'wire'] as const;
export type Kind = (typeof KINDS)[number];
/** Of a hundred requests that ask an operation with a body. */
const SHARES: Readonly<Record<Kind, number>> = { sound: 26, pushed: 22, described: 12, spoilt: 22, raw: 9, wire: 9 };

/** How often each is asked beside the others: what searches is slow, what reads is always the same. */
const OFTEN: Readonly<Record<string, number>> = {
  'POST /api/choices': 0.8,
  'POST /api/choices/one-more': 1,
  'POST /api/choices/window': 6,
  'POST /api/pairings/sweep': 3,
  'POST /api/pairings/compare': 2,
  'POST /api/sightings': 5,
  'POST /api/infinity': 5,
  'POST /api/relays/class': 0.3,
  'GET /api/openapi.json': 0.2,
  'GET /api/parts': 1,
  'GET /api/figures': 0.3,
  'GET /api/glasses': 0.3,
  'GET /api/health': 0.5,
  'GET /api/parts/drawer.json': 2,
  'GET /api/parts/drawer.csv': 2,
};
const USUAL = 8;

/** What is known of the drawer: the parts that lie there, and its table. */
export interface Known {
  readonly parts: Map<string, { version: number; kind: string }>;
  table: string;
}

export function drawingOf(description: Description) {
  const bag = description.operations.flatMap((operation) =>
    Array.from({ length: Math.round(10 * (OFTEN[operation.name] ?? USUAL)) }, () => operation),
  );
  const kinds = KINDS.flatMap((kind) => Array.from({ length: SHARES[kind] }, () => kind));
  const remove = description.operations.find(({ method }) => method === 'DELETE') as Operation;

  return (r: Random, known: Known): { operation: Operation; kind: Kind; sent: Sent } => {
    const picked = r.oneOf(bag);
    const fills = picked.name === 'POST /api/parts' || picked.name === 'POST /api/parts/drawer';
    // A drawer that only fills would be slower with every request.
    const operation = fills && known.parts.size > 25 && r.chance(0.8) ? remove : picked;
    const kind = r.oneOf(kinds);
    const sound = soundly(operation, r, known);
    return {
      operation,
      kind,
      sent: kind === 'wire' ? onTheWire(sound, r) : kind === 'sound' ? sound : { ...sound, ...bodily(kind, operation, sound, r) },
    };
  };

  function bodily(kind: Kind, operation: Operation, sound: Sent, r: Random): Partial<Sent> {
    if (!operation.body || !sound.body) return {};
    if (sound.headers['content-type'] === 'text/csv') return { body: spoiltTable(sound.body, r) };
    const body: unknown = JSON.parse(sound.body.toString());
    if (kind === 'pushed') return { body: json(pushed(description, operation.body, body, r)) };
    if (kind === 'described') return { body: json(r.chance(0.5) ? mended(operation, body, r) : drawn(description, operation.body, r)) };
    return { body: kind === 'raw' ? rawText(body, r) : json(spoilt(body, r)) };
  }

  /** A sound body in which one name of its own stands for another value that the description lets in. */
  function mended({ body: schema }: Operation, body: unknown, r: Random): unknown {
    const one = r.oneOf(description.branches(schema as NonNullable<typeof schema>));
    const [name, inner] = r.oneOf(Object.entries(one.properties ?? {}).filter(([, { $ref }]) => $ref === undefined || r.chance(0.3))) ?? [];
    return name === undefined || inner === undefined ? body : { ...(body as object), [name]: drawn(description, inner, r) };
  }
}

const json = (body: unknown): Buffer => Buffer.from(JSON.stringify(body) ?? 'null');
const JSON_TYPE = { 'content-type': 'application/json' };

function soundly({ name, method, path }: Operation, r: Random, { parts, table }: Known): Sent {
  if (path === '/api/parts/{id}') {
    const stranger = [`part-${r.integer(1, 30)}`, { version: r.integer(1, 3), kind: 'relay' }] as const;
    const [id, { version, kind }] = r.chance(0.9) && parts.size > 0 ? r.oneOf([...parts]) : stranger;
    const headers = {
      'if-match': r.chance(0.9) ? `"${version}"` : r.oneOf(['"1"', '*', 'W/"1"', '1', `"${version}", "7"`, '""', 'x'.repeat(300)]),
    };
    const to = path.replace('{id}', id);
    return method === 'PUT'
      ? { method, path: to, headers: { ...headers, ...JSON_TYPE }, body: json(newPart(r, r.chance(0.95) ? kind : undefined)) }
      : { method, path: to, headers };
  }
  const body = SOUND[name];
  if (!body) return { method, path, headers: {} };
  const query = path === '/api/parts/drawer' ? r.oneOf(['', '?replace=true', '?replace=false']) : '';
  if (query !== '' && table !== '' && r.chance(0.4))
    return { method, path: path + query, headers: { 'content-type': 'text/csv' }, body: Buffer.from(table) };
  const lines: Record<string, string> = /choices(\/one-more)?$/.test(path) && r.chance(0.3) ? { accept: 'application/x-ndjson' } : {};
  return { method, path: path + query, headers: { ...JSON_TYPE, ...lines }, body: json(body(r)) };
}

const CELLS = [
  '',
  '1e400',
  '=1+1',
  '"',
  '""',
  'yes',
  '\u0000',
  '-0',
  '1,5',
  'x'.repeat(3000),
  '\uD83D',
  '{"class":"singlet"}',
  '[',
  '\r\n',
  '\u202E',
  '__proto__',
];

function spoiltTable(table: Buffer, r: Random): Buffer {
  const text = table.toString();
  const at = r.integer(0, text.length);
  const end = Math.min(text.length, at + r.oneOf([0, 1, 5, 40]));
  const put = r.oneOf([...CELLS, ',', ';', '\t', '\n', `${text.slice(0, 200)}\n`]);
  const whole = Buffer.from(text.slice(0, at) + put + text.slice(end));
  if (r.chance(0.1) && whole.length > 0) whole[r.integer(0, whole.length - 1)] = 0xff;
  return whole;
}
