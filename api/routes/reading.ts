import { createRoute, z } from '@hono/zod-openapi';
import { DIMENSION, FIGURE_IDS, type Figure, figureById, GROUPS, RADIUS_IDS, type Unit } from '../../core/index.ts';
import { TABLE_FIGURES, TABLE_GROUPS } from '../../core/table.ts';
import { partsSchema } from '../schemas/parts.ts';
import { ANY_REFUSAL } from '../schemas/problem.ts';
import { json } from './described.ts';

/** The routes that only read. */

const health = z.strictObject({ status: z.literal('ok') }).openapi('Health');

const figureSchema = z
  .strictObject({
    id: z.enum([...FIGURE_IDS, ...RADIUS_IDS, ...TABLE_FIGURES.map(({ id }) => id)]),
    group: z.string().openapi({ description: 'where a report tells it, the part of it that does, or the part of the table' }),
    unit: z.enum(Object.keys(DIMENSION) as [Unit, ...Unit[]]),
    symbol: z.string(),
    words: z.string(),
    source: z.string(),
  })
  .openapi('Figure');

export const healthRoute = createRoute({
  method: 'get',
  path: '/api/health',
  summary: 'is it there',
  responses: { 200: json(health, 'it is'), ...ANY_REFUSAL },
});

export const openApiRoute = createRoute({
  method: 'get',
  path: '/api/openapi.json',
  summary: 'this description',
  responses: { 200: json(z.looseObject({ openapi: z.string() }).openapi('OpenApi'), 'OpenAPI 3.1'), ...ANY_REFUSAL },
});

export const partsRoute = createRoute({
  method: 'get',
  path: '/api/parts',
  summary: 'the parts that an id can stand for',
  responses: { 200: json(partsSchema, 'objectives, relays, sensors'), ...ANY_REFUSAL },
});

export const figuresRoute = createRoute({
  method: 'get',
  path: '/api/figures',
  summary: 'every figure of a report and of the table: unit, symbol, words, source',
  responses: {
    200: json(z.strictObject({ figures: z.array(figureSchema) }).openapi('FigureList'), 'in the order in which they are read'),
    ...ANY_REFUSAL,
  },
});

type Told = z.infer<typeof figureSchema>;
const told = (group: string, { id, unit, symbol, words, source }: Figure<Told['id']>): Told => ({ id, group, unit, symbol, words, source });

/** Core's registries as they stand: the one home of these texts. */
export const FIGURE_LIST: Told[] = [
  ...Object.entries(GROUPS).flatMap(([group, figures]) => figures.map((f) => told(group, f))),
  ...RADIUS_IDS.map((id) => told('vignetting', figureById(id) as Figure<Told['id']>)),
  ...Object.entries(TABLE_GROUPS).flatMap(([group, { figures }]) => figures.map((f) => told(group, f))),
];
