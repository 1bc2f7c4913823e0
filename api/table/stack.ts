import { z } from '@hono/zod-openapi';
import {
  DEPTH_CONVENTIONS,
  type Objective,
  objectiveSchema,
  type Problem,
  problemsOf,
  resolveParts,
  type Shelf,
} from '../../core/index.ts';
import { byConvention, MOST_OBJECTIVES, stackByObjective, stackSentence } from '../../core/table.ts';
import type { Stock } from '../catalogue.ts';
import { Refusal } from '../problems.ts';
import { anyObjective } from '../schemas/parts.ts';
import { WORKS } from '../works.ts';
import type { TablePart } from './part.ts';

const SHELVES = ['owned', 'all'] as const;

const objectivesAs = <S extends z.ZodType>(one: S) => z.union([z.enum(SHELVES), z.array(one).min(1).max(MOST_OBJECTIVES)]).optional();
const objectivesAsked = objectivesAs(anyObjective).openapi({
  description: 'the same subject with each of these objectives: ids or parts, those that you own, or all',
});

const row = z.strictObject({
  name: z.string(),
  magnification: z.number().optional(),
  depthUm: z.number().optional(),
  stepUm: z.number().optional(),
  frames: z.number().optional(),
  railTravelMm: z.number().optional(),
  timeS: z.number().optional(),
  why: z.string().optional(),
});

const convention = z.strictObject({
  convention: z.enum(DEPTH_CONVENTIONS),
  chosen: z.boolean(),
  depthUm: z.number(),
  frames: z.number().optional(),
});

export const STACK_PART: TablePart = {
  path: '/api/stacks',
  summary: 'the frames for this subject',
  asks: { objectives: objectivesAsked },
  unjudged: { objectives: objectivesAs(z.unknown()) },
  answers: {
    sentence: z.string(),
    conventions: z.array(convention),
    table: z.array(row).optional(),
    leftOut: z.number().optional().openapi({ description: 'objectives beyond those of the table' }),
  },
  more(evaluation, asked, shelf, stock) {
    const objectives = asked.objectives === undefined ? undefined : objectivesOf(asked.objectives, shelf, stock);
    return {
      sentence: stackSentence(evaluation),
      conventions: byConvention(evaluation),
      ...(objectives === undefined
        ? {}
        : {
            table: stackByObjective(evaluation.pairing, evaluation.settings, objectives, WORKS),
            ...(objectives.length > MOST_OBJECTIVES ? { leftOut: objectives.length - MOST_OBJECTIVES } : {}),
          }),
    };
  },
};

/** @throws Refusal 422 */
function objectivesOf(asked: unknown, shelf: Shelf, stock: Stock): readonly Objective[] {
  if (!Array.isArray(asked))
    return stock
      .partsOf('objective')
      .filter(({ owned }) => owned || asked === 'all')
      .map(({ part }) => part);
  const problems: Problem[] = [];
  const read = asked.flatMap((given: unknown, i) => {
    const at = (path: string): string => path.replace(/^\/objective/, `/objectives/${i}`);
    const { pairing, problems: unknownPart } = resolveParts({ objective: given }, shelf);
    const part = (pairing as { objective: unknown }).objective;
    const parsed = objectiveSchema.safeParse(part);
    if (unknownPart.length > 0) problems.push(...unknownPart.map((p) => ({ ...p, path: at(p.path) })));
    else if (!parsed.success) problems.push(...problemsOf(parsed.error, part).map((p) => ({ ...p, path: at(`/objective${p.path}`) })));
    return parsed.success && unknownPart.length === 0 ? [parsed.data] : [];
  });
  if (problems.length > 0) throw new Refusal(422, problems);
  return read;
}
