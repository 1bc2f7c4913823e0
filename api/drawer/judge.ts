import { contradictionsAlone, type OwnPart, ownPartSchema, type PartKind, type Problem, problemsOf, shown } from '../../core/index.ts';
import { WORKS } from '../works.ts';

/** An own part as given, judged: what comes in by a request or a row of a file. */
export type Judged = { part: OwnPart; problems: [] } | { part: undefined; problems: Problem[] };

const KINDS: readonly PartKind[] = ['objective', 'relay', 'sensor'];

/** Text with half a letter in it (a surrogate alone) has no place in UTF-8, and so in no table. */
function halves(value: unknown, path = ''): Problem[] {
  if (typeof value === 'string')
    return /\p{Surrogate}/u.test(value)
      ? [{ path, code: 'brokenText', message: 'holds half a letter', given: shown(value), expected: 'the text typed anew' }]
      : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => halves(inner, `${path}/${name}`));
}

/** Shape and bounds, and that the part agrees with itself. */
export function judge(given: unknown): Judged {
  const kind = typeof given === 'object' && given !== null && Object.hasOwn(given, 'kind') ? (given as { kind: unknown }).kind : undefined;
  if (typeof given === 'object' && given !== null && !Array.isArray(given) && !KINDS.includes(kind as PartKind)) {
    const expected = `one of ${KINDS.map((k) => `"${k}"`).join(', ')}`;
    const told = kind === undefined ? { code: 'missing', message: 'is missing' } : { code: 'notOneOf', message: `must be ${expected}` };
    return { part: undefined, problems: [{ path: '/kind', ...told, given: shown(kind), expected }] };
  }
  const read = ownPartSchema.safeParse(given);
  if (!read.success) return { part: undefined, problems: problemsOf(read.error, given) };
  const part = plain(read.data);
  const problems = [...halves(part), ...contradictionsAlone(part, WORKS)];
  return problems.length > 0 ? { part: undefined, problems } : { part, problems: [] };
}

/**
 * A part in the one spelling that the drawer keeps: as its JSON reads, and a number whose story is only the
 * number as that number.
 */
export function plain<T extends OwnPart>(own: T): T {
  const whole = JSON.parse(JSON.stringify(own)) as T;
  const bare = (value: unknown): unknown =>
    typeof value === 'object' && value !== null && Object.keys(value).join() === 'value' ? (value as { value: number }).value : value;
  return { ...whole, part: Object.fromEntries(Object.entries(whole.part).map(([name, value]) => [name, bare(value)])) };
}
