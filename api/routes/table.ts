import { createRoute, type OpenAPIHono } from '@hono/zod-openapi';
import { PairingError, problemsOf } from '../../core/index.ts';
import {
  evaluateTable,
  planOf,
  SETTINGS,
  TABLE_GROUP_NAMES,
  TABLE_GROUPS,
  type TableGroup,
  tableAssumptions,
  tableCautions,
} from '../../core/table.ts';
import type { Stock } from '../catalogue.ts';
import { readJson } from '../limits.ts';
import { under } from '../problems.ts';
import { BODY_REFUSALS } from '../schemas/problem.ts';
import { tableAnswer, tableEnvelope, tableRequest } from '../schemas/table.ts';
import { TABLE_PARTS } from '../table/parts.ts';
import { WORKS } from '../works.ts';
import { body, described, json } from './described.ts';
import { refuse, whole } from './pairings.ts';

const PLANS = Object.fromEntries(TABLE_GROUP_NAMES.map((group) => [group, planOf(group)])) as Record<TableGroup, ReturnType<typeof planOf>>;
const ENVELOPES = Object.fromEntries(TABLE_GROUP_NAMES.map((group) => [group, tableEnvelope(group, TABLE_PARTS[group])])) as Record<
  TableGroup,
  ReturnType<typeof tableEnvelope>
>;

/** A route for each group of the table's figures. */
export function tableRoutes(app: OpenAPIHono, stock: Stock): void {
  for (const group of TABLE_GROUP_NAMES) {
    const part = TABLE_PARTS[group];
    const route = createRoute({
      method: 'post',
      path: part.path,
      summary: part.summary,
      request: body(tableRequest(group, part)),
      responses: { 200: json(tableAnswer(group, part), 'its figures and all that goes with them'), ...BODY_REFUSALS },
    });
    app.openapi(described(app, route), async (c) => c.json(tableFor(group, await readJson(c), stock), 200) as never);
  }
}

/** @throws Refusal 422 */
function tableFor(group: TableGroup, given: unknown, stock: Stock): object {
  const shelf = stock.shelf();
  const envelope = ENVELOPES[group].safeParse(given);
  if (!envelope.success) return refuse(problemsOf(envelope.error, given));
  const asked: Record<string, unknown> = envelope.data;
  const read = whole(envelope.data.pairing, shelf, '/pairing');
  const pairing = envelope.data.subject ? { ...read, subject: envelope.data.subject } : read;
  const keys = new Set<string>(TABLE_GROUPS[group].settings.map(({ key }) => key));
  const settings = Object.fromEntries(
    SETTINGS.flatMap(({ key }) => (keys.has(key) && asked[key] !== undefined ? [[key, asked[key]]] : [])),
  );
  try {
    const evaluation = evaluateTable(pairing, settings, WORKS, PLANS[group]);
    return {
      figures: evaluation.answers,
      assumptions: tableAssumptions(evaluation),
      cautions: tableCautions(evaluation, group),
      ...TABLE_PARTS[group].more(evaluation, asked, shelf, stock),
    };
  } catch (error) {
    if (error instanceof PairingError) return refuse(under('/pairing', error.problems));
    throw error;
  }
}
