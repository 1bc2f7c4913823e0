import { BOUNDS, listed } from '../../core/index.ts';
import { MOST_SPACES, spacesSchema } from '../state/wish.ts';

/** `30, 60 or 90` as it is typed and told. */
export const spacesText = (spaces: readonly number[]): string => spaces.join(', ');

export type SpacesRead =
  | { readonly spaces: number[]; readonly fault?: undefined }
  | { readonly fault: string; readonly spaces?: undefined };

/** Lengths in mm from a line of text, each once; or what is wrong with it and what would do. */
export function spacesFrom(text: string): SpacesRead {
  const pieces = text
    .replace(/\b(or|and|mm)\b/g, ' ')
    .split(/[\s;,]+/)
    .filter((piece) => piece !== '');
  const strange = pieces.filter((piece) => !/^\d+(\.\d+)?$/.test(piece));
  if (strange.length > 0)
    return { fault: `${listed(strange.map((piece) => `‘${piece.slice(0, 20)}’`))} is no length: put in lengths in mm, as 30, 60, 90.` };
  const spaces = [...new Set(pieces.map(Number))];
  if (spaces.length === 0) return { fault: 'Put in one length in mm at least, as 60.' };
  if (spaces.length > MOST_SPACES) return { fault: `${spaces.length} lengths are too many: put in ${MOST_SPACES} at most.` };
  if (!spacesSchema.safeParse(spaces).success)
    return { fault: `Put in lengths from ${BOUNDS.infinitySpaceMm[0]} to ${BOUNDS.infinitySpaceMm[1]} mm.` };
  return { spaces };
}
