import {
  contradictionsAlone,
  type OwnPart,
  ownPartSchema,
  type PartKind,
  type Problem,
  problemsOf,
  sameJson,
  steps,
  valueAt,
} from '../../core/index.ts';
import { inputPath } from '../fields/names.ts';
import { partsOf } from '../fields/whole.ts';
import type { Catalogue, Listed } from '../state/catalogue.ts';
import { firstOfEach } from '../state/draft.ts';
import { withAt } from '../state/json.ts';
import { LINES } from './called.ts';

/** A part as it lay in the drawer when that was last seen. */
export interface Standing {
  id: string;
  version: number;
  own: OwnPart;
}

/** The slip of one part: what stands in its fields, and what lies in the drawer. */
export interface Slip {
  kind: PartKind;
  /** Undefined while it has never been kept. */
  standing: Standing | undefined;
  /** The part as it was laid out: what its engraving says is kept from here when a number is measured. */
  base: object;
  /** `{kind, owned, price?, notes?, part}`, where anything may have been typed. */
  draft: object;
  /** What is said against it, by the paths of a pairing: `/relay/fNumber`, and `/price`, `/notes`. */
  told: readonly Problem[];
  /** What became of it elsewhere while it was changed here. */
  meanwhile: Standing | 'taken out' | undefined;
}

/** What lies in the drawer of one kind, in its order. */
export function standingIn(catalogue: Catalogue, kind: PartKind): Standing[] {
  const listed: readonly Listed<object>[] = catalogue[LINES[kind].shelf];
  return listed.flatMap(({ id, part, own }) => {
    if (!own) return [];
    const { version, ...story } = own;
    return [{ id, version, own: { kind, ...story, part } as OwnPart }];
  });
}

export const laidOut = (standing: Standing): Slip => ({
  kind: standing.own.kind,
  standing,
  base: standing.own.part,
  draft: standing.own,
  told: [],
  meanwhile: undefined,
});

/** A part that is not in the drawer yet. */
export function fresh(kind: PartKind, part: object, story: Pick<OwnPart, 'owned'> & Partial<OwnPart> = { owned: true }): Slip {
  return { kind, standing: undefined, base: part, draft: { ...story, kind, part }, told: [], meanwhile: undefined };
}

/** Whether there is something that is not kept. */
export const isChanged = ({ standing, draft }: Slip): boolean => standing === undefined || !sameJson(standing.own, draft);

/** The path in the slip of a pairing's path: `/relay/fNumber` stands at `/part/fNumber`. */
const placeOf = (kind: PartKind, path: string): string => path.replace(new RegExp(`^/${kind}(?=/|$)`), '/part');
const pathOf = (kind: PartKind, place: string): string => place.replace(/^\/part(?=\/|$)/, `/${kind}`);

export const at = ({ kind, draft }: Slip, path: string): unknown => valueAt(draft, steps(placeOf(kind, path)));

/** With one value changed; undefined takes it out. A complaint goes when its reason does. */
export function edited(slip: Slip, path: string, value: unknown): Slip {
  const engraved = valueAt(slip.base, steps(placeOf(slip.kind, path)).slice(1));
  const next = { ...slip, draft: withAt(slip.draft, placeOf(slip.kind, path), withEngraved(value, at(slip, path), engraved)) };
  const wrong = judged(next).problems ?? [];
  return { ...next, told: slip.told.flatMap((old) => wrong.find((p) => p.path === old.path) ?? []) };
}

/** What is engraved stays beside a number once it is measured, and goes with the measurement. */
function withEngraved(value: unknown, before: unknown, base: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value) || !('value' in value)) return value;
  const { marked, ...rest } = value as { value: unknown; marked?: unknown; origin?: unknown };
  if (rest.origin !== 'measured') return Object.keys(rest).length === 1 ? rest.value : rest;
  if (marked !== undefined || partsOf(before).origin === 'measured') return value;
  const said = partsOf(base);
  return said.value === undefined || (said.origin ?? 'marked') !== 'marked' ? rest : { ...rest, marked: said.value };
}

/** What it is when kept, or what is wrong with it. */
export function judged({ kind, draft }: Slip): { own: OwnPart; problems?: undefined } | { problems: Problem[]; own?: undefined } {
  const parsed = ownPartSchema.safeParse(draft);
  const problems = parsed.success ? contradictionsAlone(parsed.data) : problemsOf(parsed.error, draft);
  if (parsed.success && problems.length === 0) return { own: parsed.data };
  return { problems: firstOfEach(problems.map((p) => ({ ...p, path: pathOf(kind, p.path) }))) };
}

/**
 * With its complaints said.
 * @param all also of what has not been given yet: it may still be to come
 */
export function complained(slip: Slip, all: boolean): Slip {
  const wrong = judged(slip).problems ?? [];
  return { ...slip, told: all ? wrong : wrong.filter((p) => p.code !== 'missing' || slip.told.some((old) => old.path === p.path)) };
}

/** What is said against the input at a path. */
export const saidAgainst = ({ told }: Slip, path: string): readonly Problem[] =>
  told.filter((p) => p.path === path || inputPath(p.path) === path);

/**
 * After another look into the drawer: a slip that nothing was typed on follows what lies there, one that
 * was typed on stays as it is and is told what became of it. Undefined where it has gone and nothing is lost with it.
 */
export function followed(slip: Slip, standing: readonly Standing[]): Slip | undefined {
  const { standing: before } = slip;
  if (!before) return slip;
  const now = standing.find(({ id }) => id === before.id);
  if (!now) return isChanged(slip) ? { ...slip, meanwhile: 'taken out' } : undefined;
  if (now.version === before.version) return slip.meanwhile ? { ...slip, meanwhile: undefined } : slip;
  // Typed the same in both places: there is nothing to decide.
  return isChanged(slip) && !sameJson(now.own, slip.draft) ? { ...slip, meanwhile: now } : laidOut(now);
}
