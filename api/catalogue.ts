import { objectiveSchema, type PartKind, relaySchema, type Shelf, sensorSchema } from '../core/index.ts';
import objectives from '../data/objectives.json' with { type: 'json' };
import relays from '../data/relays.json' with { type: 'json' };
import sensors from '../data/sensors.json' with { type: 'json' };
import type { Drawer, DrawerState } from './drawer/drawer.ts';
import type { Stored } from './drawer/form.ts';

/** A part with its id and where its numbers come from, as they stand in `data/`. */
interface Entry<Part> {
  id: string;
  provenance: string;
  part: Part;
}

const read = <Part>(file: { parts: { id: string; provenance: string; part: unknown }[] }, schema: { parse(part: unknown): Part }) =>
  file.parts.map(({ id, provenance, part }): Entry<Part> => ({ id, provenance, part: schema.parse(part) }));

/** The built-in parts, read once by the schema of the user's own input. */
const BUILT_IN = {
  objective: read(objectives, objectiveSchema),
  relay: read(relays, relaySchema),
  sensor: read(sensors, sensorSchema),
};

const KINDS = Object.keys(BUILT_IN) as PartKind[];
const BUILT_IN_IDS: ReadonlySet<string> = new Set(KINDS.flatMap((kind) => BUILT_IN[kind].map(({ id }) => id)));

/** Whether an id is the catalogue's, of whatever kind. */
export const isBuiltIn = (id: string): boolean => BUILT_IN_IDS.has(id);

type PartOf = { [K in PartKind]: (typeof BUILT_IN)[K][number]['part'] };

/** A part that a search may try: the user's own or the catalogue's, which counts as not owned. */
export interface StockPart<Kind extends PartKind = PartKind> {
  kind: Kind;
  id: string;
  part: PartOf[Kind];
  owned: boolean;
  price?: number;
  own: boolean;
}

/** All parts that an id can stand for, as they are at this moment: the user's own first. */
export interface Stock {
  /** Where the ids of a pairing are looked up. */
  shelf(): Shelf;
  partsOf<Kind extends PartKind>(kind: Kind): readonly StockPart<Kind>[];
  /** As GET /api/parts lists them: what is said of a part stands beside its own fields. */
  listed(): ReturnType<typeof listing>;
}

type OfKind<Kind extends PartKind> = Extract<Stored, { kind: Kind }>;

/** The catalogue's parts of a kind; an own part that has the id of one stands in its place. */
const others = <Kind extends PartKind>(kind: Kind, taken: ReadonlySet<string>): Entry<PartOf[Kind]>[] =>
  (BUILT_IN[kind] as Entry<PartOf[Kind]>[]).filter(({ id }) => !taken.has(id));

const said = ({ owned, price, notes, version }: Stored) => ({
  owned,
  ...(price === undefined ? {} : { price }),
  ...(notes === undefined ? {} : { notes }),
  version,
});

function listing(own: readonly Stored[], drawer: DrawerState) {
  const taken = new Set(own.map(({ id }) => id));
  const list = <Kind extends PartKind>(kind: Kind) => [
    ...own
      .filter((part): part is OfKind<Kind> => part.kind === kind)
      .map((stored) => ({ id: stored.id, provenance: 'own', own: said(stored), ...(stored.part as PartOf[Kind]) })),
    ...others(kind, taken).map(({ id, provenance, part }) => ({ id, provenance, ...part })),
  ];
  const { file } = drawer;
  return {
    objectives: list('objective'),
    relays: list('relay'),
    sensors: list('sensor'),
    drawer:
      drawer.state === 'open'
        ? { state: drawer.state, revision: drawer.contents.revision, parts: own.length, file }
        : { state: drawer.state, why: drawer.why, file },
  };
}

/** The catalogue and a drawer together; worked out anew only when the drawer has changed. */
export function stockOf(drawer: Drawer): Stock {
  const whole = (state: DrawerState) => {
    const own = state.state === 'open' ? [...state.contents.parts.values()] : [];
    const taken = new Set(own.map(({ id }) => id));
    const partsOf = <Kind extends PartKind>(kind: Kind): StockPart<Kind>[] => [
      ...own
        .filter((part): part is OfKind<Kind> => part.kind === kind)
        .map(({ id, part, owned, price }) => ({
          kind,
          id,
          part: part as PartOf[Kind],
          owned,
          ...(price === undefined ? {} : { price }),
          own: true,
        })),
      ...others(kind, taken).map(({ id, part }) => ({ kind, id, part, owned: false, own: false })),
    ];
    const parts = { objective: partsOf('objective'), relay: partsOf('relay'), sensor: partsOf('sensor') };
    const byId = (kind: PartKind) => new Map(parts[kind].map(({ id, part }): [string, object] => [id, part]));
    const shelf: Shelf = { objectives: byId('objective'), relays: byId('relay'), sensors: byId('sensor') };
    return { state, parts, shelf, listed: listing(own, state) };
  };
  let last: ReturnType<typeof whole> | undefined;
  const present = () => {
    const state = drawer.now();
    if (last?.state !== state) last = whole(state);
    return last;
  };
  return {
    shelf: () => present().shelf,
    partsOf: <Kind extends PartKind>(kind: Kind) => present().parts[kind] as unknown as readonly StockPart<Kind>[],
    listed: () => present().listed,
  };
}
