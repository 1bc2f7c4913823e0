import { type LimitAnswer, type LimitName, type Want, wantSchema } from '../../core/choosing.ts';
import { type Problem, problemsOf, steps, valueAt } from '../../core/index.ts';
import { numberTyped } from '../state/json.ts';
import { BLANK_OF, BLANKS, type Blank, blanksIn, FURTHER, OF_THE_SUBJECT } from './clauses.ts';

/** What stands in the blanks, by their paths, as it was typed. */
export type Texts = Readonly<Record<string, string>>;

const plain = (x: number): string => String(Number(x.toPrecision(12)));

/** A wish as it stands in the blanks; an end that asks for nothing stays blank. */
export function textsFrom(want: Want): Texts {
  const texts: Record<string, string> = {};
  for (const { path, percent, open } of BLANKS) {
    const value = valueAt(want, steps(path));
    if (typeof value !== 'number' || value === open) continue;
    texts[path] = plain(percent ? 100 * value : value);
  }
  return texts;
}

export type Read = { readonly want: Want; readonly problems?: undefined } | { readonly problems: Problem[]; readonly want?: undefined };

/** The wish that stands in the blanks, or what is wrong with it by blank. */
export function wantFrom(texts: Texts): Read {
  const candidate: Branch = {};
  const filled = (path: string): boolean => (texts[path] ?? '').trim() !== '';
  for (const { path, percent, open } of BLANKS) {
    const typed = numberTyped(texts[path] ?? '');
    // Blank beside one that is filled: that end is open.
    const value = typed ?? (open !== undefined && besides(path).some(filled) ? open : undefined);
    if (value !== undefined)
      put(candidate, steps(path), percent && typeof value === 'number' ? Number((value / 100).toPrecision(12)) : value);
  }
  const read = wantSchema.safeParse(candidate);
  return read.success ? { want: read.data } : { problems: firstOfEach(problemsOf(read.error, candidate)) };
}

interface Branch {
  [step: string]: unknown;
}

/** Numbered steps make a list. */
function put(root: Branch, [step, ...rest]: readonly string[], value: unknown): void {
  if (step === undefined) return;
  if (rest.length === 0) root[step] = value;
  else {
    root[step] ??= rest[0] === '0' || rest[0] === '1' ? [] : {};
    put(root[step] as Branch, rest, value);
  }
}

const parent = (path: string): string => path.slice(0, path.lastIndexOf('/'));
const besides = (path: string): string[] => BLANKS.map((other) => other.path).filter((other) => parent(other) === parent(path));

/** The blank that a problem's path leads to: of a pair the first, where the pair is wrong. */
const blankAt = (path: string): Blank | undefined =>
  BLANKS.find((blank) => blank.path === path) ?? BLANKS.find((blank) => blank.path.startsWith(`${path}/`));

function firstOfEach(problems: readonly Problem[]): Problem[] {
  const found = problems.map((problem) => ({ ...problem, path: blankAt(problem.path)?.path ?? problem.path }));
  return found.filter(({ path }, i) => found.findIndex((other) => other.path === path) === i);
}

/** What is wrong with a blank and what would do, in its own unit. */
export function complaintOf({ path, code, message, given, expected }: Problem): string {
  const blank = BLANKS.find((one) => one.path === path);
  const scale = blank?.percent ? 100 : 1;
  const bound = expected.match(/-?[\d.]+(e-?\d+)?/i)?.[0];
  const unit = blank?.unit ? `${blank.unit === '°' ? '' : ' '}${blank.unit}` : '';
  if (code === 'missing') return `Fill this in too: what stands beside it tells nothing without it.`;
  if (code === 'wrongType') return `${given} is no number: put one in, or leave it blank.`;
  if ((code === 'tooSmall' || code === 'tooBig') && bound !== undefined) {
    const end = `${code === 'tooSmall' ? 'at least' : 'at most'} ${plain(Number(bound) * scale)}${unit}`;
    return `${plain(Number(given) * scale).replace('-', '−')} is too ${code === 'tooSmall' ? 'small' : 'large'}: put in ${end}.`;
  }
  if (code === 'contradiction') return 'The smaller of the two comes first.';
  return `${message.charAt(0).toUpperCase()}${message.slice(1)}.`;
}

/** The further parts of the sentence of which something is filled in. */
export const clausesIn = (texts: Texts): string[] =>
  FURTHER.filter((clause) => blanksIn(clause).some(({ path }) => (texts[path] ?? '') !== '')).map(({ name }) => name);

/** Whether a limit asks for something: an open end does not. */
export function asksOf({ name, limit }: Pick<LimitAnswer, 'limit'> & { name: LimitName | 'price' }): boolean {
  if (OF_THE_SUBJECT.has(name)) return true;
  return BLANKS.find(({ path }) => path === BLANK_OF[name])?.open !== limit;
}
