import { MOST_OWN, type OwnPart, type PartKind } from '../../core/index.ts';
import { isBuiltIn } from '../catalogue.ts';
import { Refusal, refusal } from '../problems.ts';
import type { Change } from './drawer.ts';
import type { Contents, Stored } from './form.ts';

/** The changes of single parts: each takes the contents as they are and says what they become. */

/** An own part without what the drawer adds to it, its price and notes only where there are any. */
const asked = ({ kind, owned, price, notes, part }: OwnPart): OwnPart =>
  ({ kind, owned, ...(price === undefined ? {} : { price }), ...(notes === undefined ? {} : { notes }), part }) as OwnPart;

export const asStored = (id: string, version: number, own: OwnPart): Stored => ({ id, version, ...asked(own) }) as Stored;

/** What is said of a stored part without its place in the drawer. */
export const asOwn = (stored: Stored): OwnPart => asked(stored);

/** The version with which an id comes in: 1, or on from where it once went out. */
export const firstVersion = ({ gone }: Contents, id: string): number => (gone.get(id) ?? 0) + 1;

const MARKS = /\p{Mark}/gu;
const LONGEST_ID = 60;

/** A free id made from a name: its letters and digits, plain and small, numbered where it is taken. */
export function freeId(name: string, kind: PartKind, taken: (id: string) => boolean): string {
  const plain = name
    .normalize('NFKD')
    .replace(MARKS, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  const stem = plain.slice(0, LONGEST_ID).replace(/-$/, '') || kind;
  for (let n = 1; ; n++) {
    const id = n === 1 ? stem : `${stem.slice(0, LONGEST_ID - String(n).length - 1).replace(/-$/, '')}-${n}`;
    if (!taken(id)) return id;
  }
}

const fullOf = (): Refusal =>
  refusal(
    409,
    'drawerFull',
    'would be one part too many',
    `${MOST_OWN + 1} parts`,
    `at most ${MOST_OWN} in one drawer: take one out first`,
  );

const builtIn = (id: string): Refusal =>
  refusal(409, 'catalogueId', 'means a part of the catalogue, which stays as it is', id, 'an id of its own, or none: one is made then');

/** @throws Refusal 409 the id is taken, or the drawer is full */
export function added(contents: Contents, own: OwnPart, wanted?: string): Change<Stored> {
  const { parts } = contents;
  if (wanted !== undefined && parts.has(wanted))
    throw refusal(409, 'idTaken', 'has an id that a part in the drawer has', wanted, 'another id, or none: one is made then');
  if (wanted !== undefined && isBuiltIn(wanted)) throw builtIn(wanted);
  if (parts.size >= MOST_OWN) throw fullOf();
  // An id that once stood for another part is not given to a new one.
  const id = wanted ?? freeId(own.part.name, own.kind, (id) => parts.has(id) || contents.gone.has(id) || isBuiltIn(id));
  const stored = asStored(id, firstVersion(contents, id), own);
  return { contents: { ...contents, parts: new Map(parts).set(id, stored) }, answer: stored };
}

export const tagOf = (version: number): string => `"${version}"`;

/** The part that a request means, seen in the version that it says. @throws Refusal 404, 409, 412, 428 */
function meant({ parts }: Contents, id: string, ifMatch: string | undefined): Stored {
  const present = parts.get(id);
  if (!present && isBuiltIn(id)) throw builtIn(id);
  if (!present) throw refusal(404, 'unknownPart', 'names no part of the drawer', id, 'the id of an own part that GET /api/parts lists');
  const seen = ifMatch?.split(',').map((tag) => tag.trim()) ?? [];
  const headers = { etag: tagOf(present.version) };
  // "*" would say that whatever is there may be written over.
  if (!seen.some((tag) => /^(W\/)?"[^"]*"$/.test(tag)))
    throw refusal(
      428,
      'versionNeeded',
      'does not say which version it changes',
      ifMatch ?? 'no If-Match',
      'If-Match with the version that was read, such as "3"',
      headers,
    );
  if (!seen.includes(tagOf(present.version)))
    throw refusal(
      412,
      'versionPassed',
      'changes a version that somebody has changed since: read the part anew, then change it',
      seen.join(', '),
      tagOf(present.version),
      headers,
    );
  return present;
}

/** @throws Refusal 404, 409, 412, 428; 422 where the kind is another */
export function replaced(contents: Contents, id: string, ifMatch: string | undefined, own: OwnPart): Change<Stored> {
  const present = meant(contents, id, ifMatch);
  if (own.kind !== present.kind)
    throw new Refusal(422, [
      {
        path: '/kind',
        code: 'kindChanged',
        message: 'is another than the part has',
        given: `"${own.kind}"`,
        expected: `"${present.kind}", or a new part in place of this one`,
      },
    ]);
  const stored = asStored(id, present.version + 1, own);
  return { contents: { ...contents, parts: new Map(contents.parts).set(id, stored) }, answer: stored };
}

/** @throws Refusal 404, 409, 412, 428 */
export function removed(contents: Contents, id: string, ifMatch: string | undefined): Change<undefined> {
  const { version } = meant(contents, id, ifMatch);
  const parts = new Map(contents.parts);
  const gone = new Map(contents.gone);
  parts.delete(id);
  // Anew, so that the latest stands last.
  gone.delete(id);
  return { contents: { ...contents, parts, gone: gone.set(id, version) }, answer: undefined };
}
