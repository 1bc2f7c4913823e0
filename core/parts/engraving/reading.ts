/**
 * Parts typed as they are engraved. Reads what is there, names what it could not read and what is
 * still needed, asks where the text can mean more than one thing, and guesses nothing.
 */
export interface Reading<Part> {
  part: Partial<Part>;
  /** Pieces of the text that mean nothing here. */
  unread: string[];
  /** What the part still needs, in words. */
  needs: string[];
  /** What only the person can tell. */
  asks: Ask[];
}

/** One thing that is open, and the texts that would settle it. */
export interface Ask {
  /** What is open, as a noun. */
  question: string;
  /** Two to four: in words, and as the whole line would then be typed. */
  answers: readonly { words: string; text: string }[];
}

/** Whether a line says all that makes a part. A number that could not be read may belong to one that was: then it does not. */
export const isWhole = ({ unread, needs, asks }: Omit<Reading<unknown>, 'part'>): boolean =>
  needs.length === 0 && asks.length === 0 && !unread.some((piece) => /\p{N}/u.test(piece));

export const NUMBER = String.raw`(?<![\d.,])(\d+(?:[.,]\d+)?|[.,]\d+)`;
export const number = (text: string | undefined): number => Number((text ?? '').replace(',', '.'));

/** What a match says beside what was read before it; undefined where it says nothing and is to stay in the text. */
export type Rule<Part> = readonly [pattern: RegExp, read: (match: RegExpMatchArray, told: Partial<Part>) => Partial<Part> | undefined];

/**
 * Takes the rules in turn out of the text. What is left over keeps its place: blanks stand for what was read.
 * What was read stands: a later match that says otherwise is left over.
 */
export function readBy<Part>(text: string, rules: readonly Rule<Part>[]): { part: Partial<Part>; rest: string } {
  let rest = text;
  let part: Partial<Part> = {};
  for (const [pattern, read] of rules) {
    const match = rest.match(pattern);
    const said = match && read(match, part);
    if (match?.index === undefined || !said || contradicts(part, said)) continue;
    part = { ...part, ...said };
    rest = blanked(rest, match.index, match[0].length);
  }
  return { part, rest };
}

const contradicts = <Part>(told: Partial<Part>, said: Partial<Part>): boolean =>
  Object.keys(said).some((name) => {
    const before = told[name as keyof Part];
    return before !== undefined && before !== said[name as keyof Part];
  });

export const blanked = (text: string, from: number, length: number): string =>
  text.slice(0, from) + ' '.repeat(length) + text.slice(from + length);

export const piecesOf = (rest: string): string[] => rest.split(/[\s,;]+/).filter(Boolean);

/** Pieces of a line, one blank between them. */
export const joined = (...pieces: string[]): string => pieces.join(' ').trim().replace(/\s+/g, ' ');
