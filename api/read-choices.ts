import {
  type Asked,
  DEFAULT_FRONTIER,
  DEFAULT_SORT,
  DEFAULT_SPACES_MM,
  DEFAULT_TOLD,
  MOST_CONSIDERED,
  type Offered,
} from '../core/choosing.ts';
import {
  contradictionsAlone,
  type OwnPart,
  objectiveSchema,
  type PartKind,
  type Problem,
  problemsOf,
  relaySchema,
  resolveParts,
  type Shelf,
  sensorSchema,
} from '../core/index.ts';
import type { Stock, StockPart } from './catalogue.ts';
import { under } from './problems.ts';
import { choicesEnvelope } from './schemas/choices.ts';
import { WORKS } from './works.ts';

const SCHEMAS = { objective: objectiveSchema, relay: relaySchema, sensor: sensorSchema } as const;

interface Schema<Part> {
  safeParse(given: unknown): { success: true; data: Part } | { success: false; error: import('zod').ZodError };
}

/** More than these help nobody. */
const MOST_PROBLEMS = 20;

/** A search as it was sent, its parts written out, or what is wrong with it. */
export function readAsked(
  given: unknown,
  stock: Stock,
): { asked: Asked; problems?: undefined } | { problems: Problem[]; asked?: undefined } {
  const envelope = choicesEnvelope.safeParse(given);
  if (!envelope.success) return { problems: problemsOf(envelope.error, given).slice(0, MOST_PROBLEMS) };
  const { want, sensor, from = {}, infinitySpacesMm = [...DEFAULT_SPACES_MM], ...rest } = envelope.data;
  const { eachPairOnce = false, sort = DEFAULT_SORT, frontier = [...DEFAULT_FRONTIER], most = DEFAULT_TOLD } = rest;
  const shelf = stock.shelf();
  const camera = partOf('sensor', sensor, shelf, '/sensor');
  const objectives = partsOf('objective', from.objectives, stock, shelf);
  const relays = partsOf('relay', from.relays, stock, shelf);
  const spaces = [...new Set(infinitySpacesMm)];
  const considered = objectives.parts.length * relays.parts.length * spaces.length;
  const problems = [
    ...camera.problems,
    ...objectives.problems,
    ...relays.problems,
    ...(new Set(frontier).size < frontier.length ? [twice(frontier)] : []),
    ...(considered > MOST_CONSIDERED ? [tooMany(considered)] : []),
  ];
  if (!camera.part || problems.length > 0) return { problems: problems.slice(0, MOST_PROBLEMS) };
  return {
    asked: {
      want,
      sensor: camera.part,
      objectives: objectives.parts,
      relays: relays.parts,
      infinitySpacesMm: spaces,
      sort,
      frontier,
      most,
      eachPairOnce,
    },
  };
}

const twice = (frontier: readonly string[]): Problem => ({
  path: '/frontier',
  code: 'contradiction',
  message: 'names a figure twice',
  given: frontier.join(', ').slice(0, 80),
  expected: 'different figures',
});

const tooMany = (considered: number): Problem => ({
  path: '/from',
  code: 'tooBig',
  message: 'makes more pairings than one search considers, spacings counted',
  given: String(considered),
  expected: `at most ${MOST_CONSIDERED}`,
});

type PartOf = { [K in PartKind]: StockPart<K>['part'] };

/** One part: an id, a part with what differs, or written out. */
function partOf<Kind extends PartKind>(kind: Kind, given: unknown, shelf: Shelf, at: string): { part?: PartOf[Kind]; problems: Problem[] } {
  const { pairing, problems } = resolveParts({ [kind]: given }, shelf);
  const placed = (found: readonly Problem[]): Problem[] => found.map((p) => ({ ...p, path: at + p.path.slice(kind.length + 1) }));
  if (problems.length > 0) return { problems: placed(problems) };
  const part = (pairing as Record<string, unknown>)[kind];
  const read = (SCHEMAS[kind] as Schema<PartOf[Kind]>).safeParse(part);
  if (!read.success) return { problems: under(at, problemsOf(read.error, part)) };
  // What every pairing with it would be refused for is told here, by its field, and not counted as so many impossible ones.
  const own = { kind, owned: false, part: { name: 'as sent', ...read.data } } as OwnPart;
  const alone = contradictionsAlone(own, WORKS).map((p) => ({ ...p, path: at + p.path.replace(/^\/part/, '') }));
  return alone.length > 0 ? { problems: alone } : { part: read.data, problems: [] };
}

function partsOf<Kind extends 'objective' | 'relay'>(
  kind: Kind,
  given: 'owned' | 'all' | unknown[] = 'all',
  stock: Stock,
  shelf: Shelf,
): { parts: Offered<PartOf[Kind]>[]; problems: Problem[] } {
  const all = stock.partsOf(kind);
  const offered = ({ id, part, owned, price }: StockPart<Kind>): Offered<PartOf[Kind]> => ({
    id,
    part,
    ...(owned ? { owned } : {}),
    ...(price === undefined ? {} : { price }),
  });
  if (given === 'all') return { parts: all.map(offered), problems: [] };
  if (given === 'owned') return { parts: all.filter(({ owned }) => owned).map(offered), problems: [] };
  const known = new Map(all.map((stocked) => [stocked.id, stocked]));
  const read = given.map((entry, i) => {
    const stocked = typeof entry === 'string' ? known.get(entry) : undefined;
    if (stocked) return { part: offered(stocked), problems: [] };
    const { part, problems } = partOf(kind, entry, shelf, `/from/${kind}s/${i}`);
    return { part: part && { part }, problems };
  });
  return { parts: read.flatMap(({ part }) => (part ? [part] : [])), problems: read.flatMap(({ problems }) => problems) };
}
