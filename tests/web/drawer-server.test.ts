import { afterEach, expect, it, vi } from 'vitest';
import { type OwnPart, ownPartSchema } from '../../core/index.ts';
import { opened, openParts, replaceFromLast } from '../../web/drawer/file.ts';
import { add, change, takeAway } from '../../web/drawer/server.ts';
import { catalogue } from '../../web/state/catalogue.ts';

/** What the page asks of the server's drawer, and what it makes of the answers: with a server of words alone. */

const RELAY: OwnPart = ownPartSchema.parse({ kind: 'relay', owned: true, part: { name: 'Mine', kind: 'tube-lens', focalLengthMm: 200 } });

interface Asked {
  method: string | undefined;
  address: string;
  headers: Record<string, string> | undefined;
  body: unknown;
}
const asked: Asked[] = [];

/** Answers each change in turn, and the list of parts always. */
function answering(...answers: (Response | Error)[]): void {
  asked.length = 0;
  vi.stubGlobal('fetch', async (address: string, { method, headers, body }: RequestInit = {}) => {
    if (address === '/api/parts' && method === undefined) return Response.json({ objectives: [], relays: [], sensors: [] });
    asked.push({ method, address, headers: headers as Record<string, string>, body });
    const next = answers.shift();
    if (next instanceof Error || !next) throw next;
    return next;
  });
}
afterEach(() => {
  vi.unstubAllGlobals();
  catalogue.value = 'asking';
});

const problem = (code: string, path = '') => ({ path, code, message: 'is wrong', given: 'x', expected: 'y' });
const refusing = (status: number, ...codes: string[]) => Response.json({ errors: codes.map((code) => problem(code)) }, { status });

it('puts in, changes and takes out, each change under the version that was seen', async () => {
  answering(
    Response.json({ id: 'mine', version: 1, ...RELAY }, { status: 201 }),
    Response.json({ id: 'mine', version: 5, ...RELAY }, { status: 201 }),
    Response.json({ id: 'mine', version: 6, ...RELAY }),
    new Response(null, { status: 204 }),
  );
  expect(await add(RELAY)).toEqual({ state: 'done', id: 'mine', version: 1 });
  expect(await add(RELAY, 'mine')).toEqual({ state: 'done', id: 'mine', version: 5 });
  expect(await change({ id: 'mine', version: 5 }, RELAY)).toEqual({ state: 'done', id: 'mine', version: 6 });
  expect(await takeAway({ id: 'mine', version: 6 })).toEqual({ state: 'done', id: 'mine', version: 6 });
  expect(asked.map(({ method, address, headers }) => [method, address, headers?.['if-match']])).toEqual([
    ['POST', '/api/parts', undefined],
    ['POST', '/api/parts', undefined],
    ['PUT', '/api/parts/mine', '"5"'],
    ['DELETE', '/api/parts/mine', '"6"'],
  ]);
  expect(asked.slice(0, 3).map(({ body }) => JSON.parse(String(body)))).toEqual([RELAY, { id: 'mine', ...RELAY }, RELAY]);
});

it('tells what was changed, has gone, is refused or not answered at all apart', async () => {
  const at = { id: 'mine', version: 1 };
  answering(
    refusing(412, 'versionPassed'),
    refusing(404, 'unknownPart'),
    refusing(409, 'drawerRefused', 'b'),
    new Response('<html>', { status: 502 }),
    new TypeError('no network'),
  );
  expect(await change(at, RELAY)).toEqual({ state: 'changed' });
  expect(await takeAway(at)).toEqual({ state: 'gone' });
  expect(await add(RELAY)).toEqual({ state: 'refused', problems: [problem('drawerRefused'), problem('b')] });
  expect(await add(RELAY)).toMatchObject({ state: 'refused', problems: [{ message: 'answered 502' }] });
  expect(await add(RELAY)).toEqual({ state: 'silent' });
});

it('sends a file as what it is, and says what came of it', async () => {
  const came = { added: 1, replaced: 0, unchanged: 2, refused: [] };
  answering(Response.json(came), Response.json(came), Response.json(came), refusing(422, 'laterVersion'), new TypeError('no network'));
  const file = (name: string, text: string | Uint8Array<ArrayBuffer>) => new File([text], name);
  const open = async (name: string, text: string | Uint8Array<ArrayBuffer>) => {
    await openParts(file(name, text));
    return opened.peek();
  };
  expect(await open('mine.csv', 'id,kind')).toEqual({ state: 'came', name: 'mine.csv', table: true, came });
  expect(await open('mine.txt', '  {"pupilwalkDrawer": 1}')).toMatchObject({ state: 'came', table: false });
  await replaceFromLast();
  expect(asked.map(({ address, headers }) => [address, headers?.['content-type']])).toEqual([
    ['/api/parts/drawer', 'text/csv'],
    ['/api/parts/drawer', 'application/json'],
    ['/api/parts/drawer?replace=true', 'application/json'],
  ]);
  expect(await open('new.json', '{}')).toEqual({ state: 'fault', name: 'new.json', why: 'it is wrong; what would do: y' });
  expect(await open('new.json', '{}')).toMatchObject({ why: expect.stringContaining('the server does not answer') });
  expect(await open('moss.jpg', new Uint8Array([0xff, 0xd8, 0xff]))).toMatchObject({ why: expect.stringContaining('not text in UTF-8') });
  expect(await open('big.csv', 'x'.repeat(8 * 1024 * 1024 + 1))).toMatchObject({ why: expect.stringContaining('larger than 8 MB') });
  expect(asked).toHaveLength(5);
});
