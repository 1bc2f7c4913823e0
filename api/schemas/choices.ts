import { z } from '@hono/zod-openapi';
import { BETTER, type Choices, LIMIT_NAMES, MOST_TOLD, type OneMore, VARIABLES, wantSchema } from '../../core/choosing.ts';
import { BOUNDS, CIRCLES, FIGURE_IDS, type FigureId, settingShape } from '../../core/index.ts';
import { answerSchema, figuresSchema } from './answer.ts';
import { exactly } from './exactly.ts';
import { anyObjective, anyRelay, anySensor, objective, relay, sensor } from './parts.ts';

/** The question of the two routes that choose, and their answers. */

const MOST_LISTED = 1000;
const MOST_SPACES = 12;

const figure = z.enum(FIGURE_IDS);
const rated = z.enum(Object.keys(BETTER) as [FigureId, ...FigureId[]]);

const asked = {
  want: z.strictObject(wantSchema.shape).openapi('Want', {
    description: 'what is left out is not asked for; coverage is judged on the subject, or on as much of the frame as minCoveredShare says',
  }),
  infinitySpacesMm: z
    .array(z.number().min(BOUNDS.infinitySpaceMm[0]).max(BOUNDS.infinitySpaceMm[1]))
    .min(1)
    .max(MOST_SPACES)
    .optional()
    .openapi({ description: '30, 60 and 90 where they are left out' }),
  sort: z
    .strictObject({ by: z.enum([...FIGURE_IDS, 'price']), first: z.enum(['least', 'greatest']) })
    .optional()
    .openapi({ description: 'by the finest separation recorded, least first, where it is left out; what is not known comes last' }),
  frontier: z
    .array(rated)
    .min(2)
    .max(3)
    .optional()
    .openapi({ description: 'figures of which one way is better: finest separation and field width where they are left out' }),
  eachPairOnce: z
    .boolean()
    .optional()
    .openapi({ description: 'of an objective and a relay only the spacing that comes first is listed, with the others that do' }),
  most: z
    .number()
    .int()
    .min(1)
    .max(MOST_TOLD)
    .optional()
    .openapi({ description: 'how many choices are told, besides those on the frontier' }),
};

const listOf = <S extends z.ZodType>(part: S) =>
  z.union([z.enum(['owned', 'all']), z.array(part).min(1).max(MOST_LISTED)]).openapi({ description: 'all where it is left out' });

/** A search as a request may write it. Requests are described by this and judged by `readAsked`. */
export const choicesRequest = z
  .strictObject({
    sensor: anySensor,
    from: z.strictObject({ objectives: listOf(anyObjective).optional(), relays: listOf(anyRelay).optional() }).optional(),
    ...asked,
  })
  .openapi('ChoicesRequest');

const anyList = z.union([z.enum(['owned', 'all']), z.array(z.unknown()).min(1).max(MOST_LISTED)]);

/** What surrounds the parts: these are judged on their own, so that a problem names its exact field. */
export const choicesEnvelope = z.strictObject({
  sensor: z.unknown().optional(),
  from: z.strictObject({ objectives: anyList.optional(), relays: anyList.optional() }).optional(),
  ...asked,
});

const pairing = z
  .strictObject({ objective, relay, sensor, ...settingShape })
  .openapi('WholePairing', { description: 'its parts written out: it can be sent to the pairing routes as it stands' });
const ids = z.strictObject({ objective: z.string().optional(), relay: z.string().optional() });
const part = z.enum(['objective', 'relay']);
const priced = {
  price: z.number().min(0).optional().openapi({ description: 'of what is not owned, as far as it is known' }),
  priceMissing: z.array(part).optional(),
};

const limit = z
  .strictObject({
    name: z.enum([...LIMIT_NAMES, 'price']),
    figure: figure.optional(),
    state: z.enum(['known', 'unlimited', 'unknown', 'none']),
    value: z.number().optional(),
    limit: z.number(),
    meets: z.boolean(),
    surely: z.boolean().openapi({ description: 'met, or missed, wherever in its ± the figure is' }),
    margin: z.number().optional().openapi({ description: 'by how much of the limit it is met; negative where it is not' }),
    without: z.array(z.enum(CIRCLES)).optional().openapi({ description: 'circles that are not known, and so not counted' }),
    missing: z.array(z.string()).optional(),
  })
  .openapi('LimitAnswer');

const choice = z
  .strictObject({
    pairing,
    ids,
    figures: figuresSchema,
    limits: z.array(limit),
    bites: z.enum([...LIMIT_NAMES, 'price']).optional(),
    ...priced,
    onFrontier: z.boolean().optional(),
    spacesMm: z.array(z.number()).optional(),
    levelWithPrevious: z.boolean().optional(),
    tieWithPrevious: z.boolean().optional(),
    unknown: z.array(z.enum(CIRCLES)),
    line: z.string(),
    cautions: z.array(z.string()),
  })
  .openapi('Choice');

const count = z.number().int().min(0);

const limitNames = [...LIMIT_NAMES, 'price'] as const;
/** A count for any of them: of a record with some of its names the document would leave open which. */
const counts = Object.fromEntries(limitNames.map((name) => [name, count.optional()])) as Record<
  (typeof limitNames)[number],
  z.ZodOptional<typeof count>
>;

export const choicesSchema = exactly<Choices>()(
  z
    .strictObject({
      considered: count,
      impossible: count.openapi({ description: 'pairings that contradict themselves' }),
      feasible: count,
      unpriced: count.openapi({ description: 'of the feasible, those with a part to be bought whose price is not known' }),
      frontier: count,
      stopped: z.strictObject(counts).openapi({ description: 'how many pairings each limit stops, alone or with others' }),
      choices: z.array(choice),
      nearMisses: z.array(
        z
          .strictObject({
            pairing,
            ids,
            missing: z.array(limit),
            wouldMeetIf: z
              .strictObject({ path: z.enum(VARIABLES), value: z.number(), from: z.number(), pairing })
              .optional()
              .openapi({ description: 'the one change of the rig that meets every limit; path is a JSON Pointer into the pairing' }),
            ...priced,
            cautions: z.array(z.string()),
          })
          .openapi('NearMiss'),
      ),
    })
    .openapi('Choices'),
);

const shift = z
  .strictObject({ figure, from: answerSchema, to: answerSchema, difference: answerSchema })
  .openapi('Shift', { description: 'a figure of the best that is owned, of the best with the part, and the second less the first' });

export const oneMoreSchema = exactly<OneMore>()(
  z
    .strictObject({
      owned: z.strictObject({ objectives: count, relays: count, feasible: count, best: choice.optional() }),
      openings: z.array(
        z
          .strictObject({
            kind: part,
            id: z.string().optional(),
            part: z.union([objective, relay]),
            price: z.number().optional(),
            opens: count,
            best: choice,
            gains: z.array(shift),
            loses: z.array(shift),
            verify: z.array(z.string()),
          })
          .openapi('Opening'),
      ),
      others: count,
    })
    .openapi('OneMore'),
);
