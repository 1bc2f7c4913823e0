import type { z } from 'zod';

/** One thing wrong with an input: where (JSON Pointer), what, what was given, what would do. */
export interface Problem {
  path: string;
  code: string;
  message: string;
  given: string;
  expected: string;
}

/** Misuse of core: an input that no schema should have let through. */
export class PairingError extends Error {
  readonly problems: Problem[];
  constructor(problems: Problem[]) {
    super(problems.map((p) => `${p.path || '/'}: ${p.message}`).join('; '));
    this.problems = problems;
    this.name = 'PairingError';
  }
}

export type Step = PropertyKey;

/** RFC 6901: `['stops', 0, 'diameterMm']` -> `/stops/0/diameterMm`. */
export const pointer = (steps: readonly Step[]): string =>
  steps.map((s) => `/${String(s).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

/** RFC 6901 backward: `/stops/0/diameterMm` -> `['stops', '0', 'diameterMm']`. */
export const steps = (path: string): string[] =>
  path === ''
    ? []
    : path
        .slice(1)
        .split('/')
        .map((s) => s.replaceAll('~1', '/').replaceAll('~0', '~'));

/** The value at a path, or undefined: own properties only, so that `__proto__` finds nothing. */
export function valueAt(root: unknown, path: readonly Step[]): unknown {
  let here = root;
  for (const step of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return undefined;
    here = (here as Record<Step, unknown>)[step];
  }
  return here;
}

/** What was given, in at most 80 characters. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  let text: string;
  try {
    text = typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? String(value));
  } catch {
    text = String(value);
  }
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}

type Issue = z.core.$ZodIssue;

/**
 * A union says only 'invalid input': the branch whose root has the right type knows better. Of a
 * number-or-object union that got an object, the object's own complaints are kept; of two kinds of
 * object those of the one that knows more of its names.
 */
function unfold(issue: Issue): Issue[] {
  if (issue.code !== 'invalid_union') return [issue];
  // The word that says which of several it is was none of theirs.
  if ('options' in issue) return [{ ...issue, code: 'invalid_value', values: issue.options } as unknown as Issue];
  const branches = issue.errors.map((branch) => branch.flatMap((inner) => unfold(inner as Issue)));
  const rooted = branches.filter((branch) => branch.some((inner) => inner.path.length > 0 || !isOther(inner)));
  const best = rooted.toSorted((a, b) => strangeNames(a) - strangeNames(b) || a.length - b.length)[0];
  if (best) return best.map((inner) => ({ ...inner, path: [...issue.path, ...inner.path] }) as Issue);
  const wanted = branches
    .flat()
    .map((inner) => ('values' in inner ? inner.values.map(shown).join(' or ') : 'expected' in inner ? String(inner.expected) : ''));
  return [{ ...issue, code: 'invalid_type', expected: [...new Set(wanted)].join(' or ') } as unknown as Issue];
}

/** Whether the whole was something else than wanted: of another type, or another word. */
const isOther = ({ code }: Issue): boolean => code === 'invalid_type' || code === 'invalid_value';

/** How many of the object's own names a branch does not know. */
const strangeNames = (branch: readonly Issue[]): number =>
  branch.reduce((sum, inner) => sum + (inner.code === 'unrecognized_keys' && inner.path.length === 0 ? inner.keys.length : 0), 0);

const ARTICLED: Record<string, string> = {
  number: 'a number',
  int: 'a whole number',
  string: 'text',
  object: 'an object',
  array: 'a list',
  tuple: 'a list',
  boolean: 'true or false',
};
const articled = (types: string): string =>
  types
    .split(' or ')
    .map((t) => ARTICLED[t] ?? t)
    .join(' or ');

function told(issue: Issue, given: unknown): { code: string; message: string; expected: string } {
  switch (issue.code) {
    case 'invalid_type': {
      const expected = ownWords(issue) ?? articled(String(issue.expected));
      if (given === undefined) return { code: 'missing', message: 'is missing', expected };
      return { code: 'wrongType', message: `must be ${expected}`, expected };
    }
    case 'too_small': {
      const expected = `${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}`;
      return { code: 'tooSmall', message: `must be ${expected}${sized(issue.origin)}`, expected };
    }
    case 'too_big': {
      const expected = `${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}`;
      return { code: 'tooBig', message: `must be ${expected}${sized(issue.origin)}`, expected };
    }
    case 'unrecognized_keys':
      return {
        code: 'unknownName',
        message: `has a name that means nothing here: ${issue.keys.map((k) => shown(k)).join(', ')}`,
        expected: 'only the names of the contract',
      };
    case 'invalid_value': {
      const expected = `one of ${issue.values.map((v) => shown(v)).join(', ')}`;
      if (given === undefined) return { code: 'missing', message: 'is missing', expected };
      return { code: 'notOneOf', message: `must be ${expected}`, expected };
    }
    case 'invalid_format':
      return { code: 'wrongForm', message: issue.message, expected: ownWords(issue) ?? '' };
    case 'custom': {
      const more = issue.params as { code?: string; expected?: string } | undefined;
      return { code: more?.code ?? 'contradiction', message: issue.message, expected: more?.expected ?? '' };
    }
    default:
      return { code: issue.code, message: issue.message, expected: '' };
  }
}

const MUST_BE = 'must be ';

/** What would do, where the schema says so itself: its message then begins with 'must be'. */
const ownWords = ({ message }: Issue): string | undefined => (message.startsWith(MUST_BE) ? message.slice(MUST_BE.length) : undefined);

const sized = (origin: string): string => (origin === 'string' ? ' characters long' : origin === 'array' ? ' entries long' : '');

/** A failed parse as problems, in the order of the schema; at most 20. */
export function problemsOf(error: z.ZodError, input: unknown): Problem[] {
  return error.issues
    .flatMap(unfold)
    .slice(0, 20)
    .map((issue) => {
      const given = valueAt(input, issue.path);
      return { path: pointer(issue.path), ...told(issue, given), given: shown(given) };
    });
}
