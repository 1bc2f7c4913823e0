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

/** Whether a line says all that makes a part. */
export const isWhole = ({ needs, asks }: Pick<Reading<unknown>, 'needs' | 'asks'>): boolean => needs.length === 0 && asks.length === 0;

export const NUMBER = String.raw`(?<![\d.,])(\d+(?:[.,]\d+)?|[.,]\d+)`;
export const number = (text: string | undefined): number => Number((text ?? '').replace(',', '.'));

export type Rule<Part> = readonly [pattern: RegExp, read: (match: RegExpMatchArray) => Partial<Part>];

/** Takes the rules in turn out of the text. What is left over keeps its place: blanks stand for what was read. */
export function readBy<Part>(text: string, rules: readonly Rule<Part>[]): { part: Partial<Part>; rest: string } {
  let rest = text;
  let part: Partial<Part> = {};
  for (const [pattern, read] of rules) {
    const match = rest.match(pattern);
    if (match?.index === undefined) continue;
    part = { ...part, ...read(match) };
    rest = blanked(rest, match.index, match[0].length);
  }
  return { part, rest };
}

export const blanked = (text: string, from: number, length: number): string =>
  text.slice(0, from) + ' '.repeat(length) + text.slice(from + length);

export const piecesOf = (rest: string): string[] => rest.split(/[\s,;]+/).filter(Boolean);

/** Pieces of a line, one blank between them. */
export const joined = (...pieces: string[]): string => pieces.join(' ').trim().replace(/\s+/g, ' ');
