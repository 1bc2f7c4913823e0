import { z } from '@hono/zod-openapi';
import { settingShape } from '../../core/index.ts';
import { shapeOf, TABLE_GROUPS, type TableGroup } from '../../core/table.ts';
import type { TablePart } from '../table/part.ts';
import { answersOf } from './answer.ts';
import { assumptionSchema } from './report.ts';
import { pairingRequest } from './requests.ts';

/** What a request for one group holds beside its pairing, which is judged on its own. */
const around = (group: TableGroup, { asks }: TablePart) => ({
  subject: settingShape.subject,
  ...shapeOf(TABLE_GROUPS[group].settings),
  ...asks,
});

const named = (group: TableGroup): string => group.charAt(0).toUpperCase() + group.slice(1);

export const tableRequest = (group: TableGroup, part: TablePart) =>
  z.strictObject({ pairing: pairingRequest, ...around(group, part) }).openapi(`${named(group)}Request`);

export const tableEnvelope = (group: TableGroup, part: TablePart) =>
  z.strictObject({ pairing: z.unknown().optional(), ...around(group, part), ...part.unjudged });

export const tableAnswer = (group: TableGroup, { answers }: TablePart) =>
  z
    .strictObject({
      figures: answersOf(TABLE_GROUPS[group].figures.map(({ id }) => id)),
      assumptions: z.array(assumptionSchema),
      cautions: z.array(z.string()),
      ...answers,
    })
    .openapi(`${named(group)}Answer`);
