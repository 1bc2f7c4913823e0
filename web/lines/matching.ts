/**
 * Which parts a half-typed line may mean: every piece of it must begin a word of the part's name or
 * engraving. `5D` and `5 D`, `10×` and `10x`, `0,25` and `.25` are the same to it.
 */
export const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .replaceAll('×', 'x')
    .replaceAll('μ', 'µ')
    .replace(/(\d),(?=\d)/g, '$1.')
    .replace(/(?<!\d)\.(?=\d)/g, '0.')
    .replace(/(\d)\s*(d|mm|µm|um|mp)\b/g, '$1$2')
    .replace(/(\d)\s*x\s*(?=\d)/g, '$1 ')
    .split(/[\s/,;()+]+/)
    .filter(Boolean);

const UNIT = /(?<=\d)(d|mm|µm|um|mp)$/;

export const matches = (pieces: readonly string[], words: readonly string[]): boolean =>
  pieces.every((piece) => words.some((word) => word.startsWith(piece) || word === piece.replace(UNIT, '')));
