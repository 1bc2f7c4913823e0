import { MOST_OWN, type OwnPart, ownId, type Problem, sameJson, shown } from '../../core/index.ts';
import { isBuiltIn } from '../catalogue.ts';
import { Refusal } from '../problems.ts';
import { asOwn, asStored, firstVersion, freeId } from './changes.ts';
import type { Change } from './drawer.ts';
import { type Contents, notOurs } from './form.ts';
import { judge } from './judge.ts';

/** Parts of a file put into the drawer: the good ones all at once, the others told by where they stand. */

/** One part of a file, not judged yet. */
export interface Row {
  line: number;
  id: unknown;
  own: unknown;
  /** Faults that were found in reading it. */
  faults?: readonly Problem[];
}

export interface TakenIn {
  added: number;
  replaced: number;
  unchanged: number;
  refused: { line: number; id?: string; problems: Problem[] }[];
}

interface Known {
  line: number;
  id: string | undefined;
  own: OwnPart;
}

export const wrongId = (id: unknown): Problem => ({
  path: '/id',
  code: 'wrongId',
  message: 'is no id',
  given: shown(id),
  expected: 'small letters, digits and hyphens, at most 60, a letter or digit first; or none: one is made then',
});

/** What can be said of a row without the drawer. */
function judged({ line, id, own, faults = [] }: Row): Known | TakenIn['refused'][number] {
  const read = id === undefined ? undefined : ownId.safeParse(id);
  const named = typeof id === 'string' && id !== '' ? { id: id.slice(0, 60) } : {};
  const strange = read && !read.success ? [wrongId(id)] : [];
  const part = judge(own);
  const problems = [...faults, ...strange, ...part.problems];
  return part.part && problems.length === 0 ? { line, id: read?.data, own: part.part } : { line, ...named, problems };
}

const blame = (code: string, message: string, given: string, expected: string): Problem => ({
  path: '/id',
  code,
  message,
  given,
  expected,
});

/** The rows put in one after the other; what comes of it, and the contents only where they have changed. */
export function takenIn(contents: Contents, rows: readonly (Known | TakenIn['refused'][number])[], mayReplace: boolean): Change<TakenIn> {
  const parts = new Map(contents.parts);
  const twins = new Map<string, string[]>();
  for (const stored of parts.values()) {
    const told = JSON.stringify(asOwn(stored));
    twins.set(told, [...(twins.get(told) ?? []), stored.id]);
  }
  const here = new Set<string>();
  const answer: TakenIn = { added: 0, replaced: 0, unchanged: 0, refused: [] };

  for (const row of rows) {
    if ('problems' in row) {
      answer.refused.push(row);
      continue;
    }
    const { line, own } = row;
    // One that has no id is known by being just the same.
    const twin = row.id === undefined ? twins.get(JSON.stringify(own))?.find((id) => !here.has(id)) : undefined;
    const id = row.id ?? twin ?? freeId(own.part.name, own.kind, (id) => parts.has(id) || contents.gone.has(id) || isBuiltIn(id));
    const present = parts.get(id);
    const refuse = (problem: Problem): void => {
      answer.refused.push({ line, id, problems: [problem] });
    };
    if (present && sameJson(asOwn(present), own)) answer.unchanged++;
    else if (here.has(id)) refuse(blame('idTwice', 'stands in the file twice, with different contents', id, 'an id of its own for each'));
    else if (present && present.kind !== own.kind)
      refuse({
        ...blame('kindChanged', `is another than that of "${id}" in the drawer`, `"${own.kind}"`, `"${present.kind}", or another id`),
        path: '/kind',
      });
    else if (present && !mayReplace)
      refuse(blame('idTaken', 'is in the drawer with other contents', id, 'another id, or replacing what is there'));
    else if (present) {
      parts.set(id, asStored(id, present.version + 1, own));
      answer.replaced++;
    } else if (isBuiltIn(id))
      refuse(blame('catalogueId', 'means a part of the catalogue, which stays as it is', id, 'another id, or none'));
    else if (parts.size >= MOST_OWN)
      refuse(blame('drawerFull', 'would be one part too many', id, `at most ${MOST_OWN} in one drawer: take one out first`));
    else {
      parts.set(id, asStored(id, firstVersion(contents, id), own));
      answer.added++;
    }
    if (answer.refused.at(-1)?.line !== line) here.add(id);
  }
  return answer.added + answer.replaced > 0 ? { contents: { ...contents, parts }, answer } : { answer };
}

/** Rows judged one by one, before their turn comes: with thousands of parts that takes a while. */
export function* judging(rows: readonly Row[]): Generator<ReturnType<typeof judged>> {
  for (const row of rows) yield judged(row);
}

const wrongFile = (code: string, message: string, given: unknown, expected: string, path = ''): Refusal =>
  new Refusal(422, [{ path, code, message, given: shown(given), expected }]);

/** The parts of a JSON file of the drawer's own form. @throws Refusal 422 the file is another, or of a later version */
export function rowsOfFile(value: unknown): Row[] {
  const strange = notOurs(value);
  if (strange)
    throw wrongFile(strange.code, strange.why, value, 'a file that GET /api/parts/drawer.json wrote, of this version or an earlier one');
  const { pupilwalkDrawer: _v, revision: _r, parts, gone: _g, ...more } = value as Record<string, unknown>;
  if (Object.keys(more).length > 0)
    throw wrongFile(
      'unknownName',
      `has a name that means nothing here: ${Object.keys(more).slice(0, 5).map(shown).join(', ')}`,
      value,
      'pupilwalkDrawer, revision, parts',
    );
  if (!Array.isArray(parts)) throw wrongFile('wrongType', 'must be a list', parts, 'a list of parts', '/parts');
  if (parts.length > MOST_OWN) throw tooMany(parts.length);
  return parts.map((entry: unknown, i): Row => {
    if (typeof entry !== 'object' || entry === null || Array.isArray(entry)) return { line: i + 1, id: undefined, own: entry };
    const { id, version: _, ...own } = entry as Record<string, unknown>;
    return { line: i + 1, id, own };
  });
}

export const tooMany = (rows: number): Refusal =>
  wrongFile('tooBig', 'has more parts than a drawer holds', rows, `at most ${MOST_OWN} parts`);
