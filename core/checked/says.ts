import type { Answered, Answers, Entry } from './checking.ts';

/** A number together with the check that it stands in. */
export interface Placed {
  readonly entry: Entry;
  readonly value: Answered;
}

/** What all checks come to. */
export interface Summary {
  /** Printed numbers, the sources that print them, and pairs of the laws. */
  readonly numbers: number;
  readonly sources: number;
  readonly equalities: number;
  readonly failing: readonly Placed[];
  /** The printed number that lies nearest to the end of what its digits allow. */
  readonly nearest: Placed | undefined;
  /** Half of the printed numbers lie nearer to the middle of what their digits allow than this share of it. */
  readonly median: number;
}

export const placedIn = (answers: readonly Answers[]): Placed[] =>
  answers.flatMap(({ entries }) => entries.flatMap((entry) => entry.values.map((value) => ({ entry, value }))));

export function summaryOf(answers: readonly Answers[]): Summary {
  const printed = placedIn(answers.filter(({ published }) => published));
  const laws = placedIn(answers.filter(({ published }) => !published));
  const far = ({ value }: Placed): number => Math.abs(value.place);
  const sound = printed.filter(({ value }) => value.holds).toSorted((a, b) => far(a) - far(b));
  const middle = sound[Math.floor(sound.length / 2)];
  return {
    numbers: printed.length,
    sources: new Set(printed.map(({ entry }) => entry.source)).size,
    equalities: laws.length,
    failing: [...printed, ...laws].filter(({ value }) => !value.holds),
    nearest: sound.at(-1),
    median: middle ? far(middle) : 0,
  };
}

/** What all checks come to, in words: what fails comes first. */
export function checkedSays({ numbers, sources, equalities, failing, nearest }: Summary): readonly string[] {
  const what = `${numbers} published numbers from ${sources} sources and ${equalities} equalities that must hold exactly`;
  if (failing.length === 0)
    return [
      `${what} are worked out anew here as you read. All agree within the digits that were printed.`,
      ...(nearest ? [`The nearest to its limit is printed as ${met(nearest, 'and comes out as')}`] : []),
    ];
  const [one, more] = [failing.length === 1, failing.length - MOST_NAMED];
  return [
    `${one ? 'One number does' : `${failing.length} numbers do`} not agree on this machine. Trust nothing here that rests on ${one ? 'it' : 'them'} until it is known why.`,
    ...failing.slice(0, MOST_NAMED).map((placed) => `Expected is ${met(placed, 'but what comes out is')}`),
    ...(more > 0 ? [`And ${more} more, below.`] : []),
    `Worked out were ${what}.`,
  ];
}

const MOST_NAMED = 3;

const met = ({ entry: { claim }, value: { what, expected, shown, fault } }: Placed, link: string): string =>
  `${expected} ${link} ${shown}${fault ? `, for ${fault}` : ''}${what ? ` (${what})` : ''}: ${claim}.`;
