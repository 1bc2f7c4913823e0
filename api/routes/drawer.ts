import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { type OwnPart, ownId } from '../../core/index.ts';
import { added, removed, replaced, tagOf } from '../drawer/changes.ts';
import { type Drawer, openOnly } from '../drawer/drawer.ts';
import { MOST_BYTES, type Stored, textOf } from '../drawer/form.ts';
import { judge } from '../drawer/judge.ts';
import { rowsOfTable } from '../drawer/table/read.ts';
import { tableOf } from '../drawer/table/write.ts';
import { judging, rowsOfFile, type TakenIn, takenIn, wrongId } from '../drawer/take-in.ts';
import { readJson, readJsonOrTable } from '../limits.ts';
import { Refusal, refusal } from '../problems.ts';
import { drawerFile, takenInSchema } from '../schemas/drawer.ts';
import { newPartRequest, ownPartRequest, storedPartSchema } from '../schemas/parts.ts';
import { ANY_REFUSAL, BODY_REFUSALS, CHANGE_REFUSALS, EXPORT_REFUSALS, WRITE_REFUSALS } from '../schemas/problem.ts';
import { unhurried } from '../unhurried.ts';
import { body, json } from './described.ts';

/** The user's own parts: put in, changed, taken out, handed out and taken in whole. */

const etag = z.object({ etag: z.string().openapi({ description: 'the version, for If-Match', example: '"1"' }) });
const oneOf = z.object({ id: ownId });
const ifMatch = z.object({ 'if-match': z.string().openapi({ description: 'the version that was read', example: '"1"' }) });

export const addRoute = createRoute({
  method: 'post',
  path: '/api/parts',
  summary: 'a part put into the drawer',
  request: body(newPartRequest),
  responses: { 201: { ...json(storedPartSchema, 'as it is kept'), headers: etag }, ...BODY_REFUSALS, ...WRITE_REFUSALS },
});

export const changeRoute = createRoute({
  method: 'put',
  path: '/api/parts/{id}',
  summary: 'a part of the drawer written anew',
  request: { params: oneOf, headers: ifMatch, ...body(ownPartRequest) },
  responses: { 200: { ...json(storedPartSchema, 'as it is kept now'), headers: etag }, ...BODY_REFUSALS, ...CHANGE_REFUSALS },
});

export const removeRoute = createRoute({
  method: 'delete',
  path: '/api/parts/{id}',
  summary: 'a part taken out of the drawer',
  request: { params: oneOf, headers: ifMatch },
  responses: { 204: { description: 'it is out' }, ...ANY_REFUSAL, ...CHANGE_REFUSALS },
});

export const fileRoute = createRoute({
  method: 'get',
  path: '/api/parts/drawer.json',
  summary: 'the drawer as a file, in the form in which it is kept',
  responses: { 200: json(drawerFile, 'for keeping, and for taking in elsewhere'), ...EXPORT_REFUSALS },
});

export const tableRoute = createRoute({
  method: 'get',
  path: '/api/parts/drawer.csv',
  summary: 'the drawer as a table',
  responses: {
    200: { description: 'UTF-8, columns named in the first line', content: { 'text/csv': { schema: z.string() } } },
    ...EXPORT_REFUSALS,
  },
});

export const takeInRoute = createRoute({
  method: 'post',
  path: '/api/parts/drawer',
  summary: 'the parts of a file put into the drawer',
  request: {
    query: z.object({
      replace: z.enum(['true', 'false']).optional().openapi({ description: 'whether parts of the same id are written over' }),
    }),
    body: { required: true, content: { 'application/json': { schema: drawerFile }, 'text/csv': { schema: z.string() } } },
  },
  responses: { 200: json(takenInSchema, 'what came in, and what did not by the line'), ...BODY_REFUSALS, ...WRITE_REFUSALS },
});

/** @throws Refusal 422 */
function partOf(given: unknown): OwnPart {
  const { part, problems } = judge(given);
  if (!part) throw new Refusal(422, problems);
  return part;
}

/** @throws Refusal as the route's description says, as do those below */
export async function addPart(c: Context, drawer: Drawer): Promise<Stored> {
  const given = await readJson(c);
  if (typeof given !== 'object' || given === null || !Object.hasOwn(given, 'id')) return drawer.change((now) => added(now, partOf(given)));
  const { id, ...rest } = given as { id: unknown };
  const read = ownId.safeParse(id);
  if (!read.success) throw new Refusal(422, [wrongId(id)]);
  const own = partOf(rest);
  return drawer.change((now) => added(now, own, read.data));
}

export async function changePart(c: Context, drawer: Drawer): Promise<Stored> {
  const own = partOf(await readJson(c));
  return drawer.change((now) => replaced(now, c.req.param('id') ?? '', c.req.header('if-match'), own));
}

export const removePart = (c: Context, drawer: Drawer): Promise<undefined> =>
  drawer.change((now) => removed(now, c.req.param('id') ?? '', c.req.header('if-match')));

export async function takeIn(c: Context, drawer: Drawer): Promise<TakenIn> {
  const replace = c.req.query('replace') ?? 'false';
  if (replace !== 'true' && replace !== 'false')
    throw refusal(422, 'notOneOf', 'has a wrong "replace" in its address', replace, '"true" or "false"');
  const given = await readJsonOrTable(c, MOST_BYTES);
  const rows = await unhurried(judging('table' in given ? rowsOfTable(given.table) : rowsOfFile(given.value)));
  return drawer.change((now) => takenIn(now, rows, replace === 'true'));
}

const attached = (name: string, type: string) => ({ 'content-type': type, 'content-disposition': `attachment; filename="${name}"` });

export const fileAnswer = (drawer: Drawer): Response =>
  new Response(textOf(openOnly(drawer.now()).contents), { headers: attached('drawer.json', 'application/json') });

export const tableAnswer = (drawer: Drawer): Response =>
  new Response(tableOf([...openOnly(drawer.now()).contents.parts.values()]), {
    headers: attached('drawer.csv', 'text/csv; charset=utf-8'),
  });

export const keptHeaders = ({ id, version }: Stored) => ({ etag: tagOf(version), location: `/api/parts/${id}` });
