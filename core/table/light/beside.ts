/** A nose by its half-widths: its end, and its whole width from `taper` above that on. All mm. */
export interface Nose {
  readonly end: number;
  readonly whole: number;
  readonly taper: number;
}

/** A wall that stands round the subject, by its inner half-widths at its foot and at its top. */
export interface Wall {
  readonly foot: number;
  readonly top: number;
  readonly height: number;
}

/** Half-width of the nose `up` above its end; where no taper's length is told its whole width begins at once. */
const noseAt = ({ end, whole, taper }: Nose, up: number): number =>
  taper === 0 ? Math.max(end, whole) : up >= taper ? whole : end + ((whole - end) * up) / taper;

/**
 * What is left, all round, between the wall and a nose whose end is `nose` above the wall's foot, were it let
 * down between them; below 0 they meet. A wall that ends below the nose counts with its top and the nose's end. Widths run straight
 * between the ends of wall and taper, so that the tightest place is one of those.
 */
export function besideNose(nose: Nose, at: number, { foot, top, height }: Wall): number {
  const wallAt = (h: number): number => foot + ((top - foot) * h) / height;
  if (height <= at) return top - noseAt(nose, 0);
  const heights = [at, height, ...(at + nose.taper < height ? [at + nose.taper] : [])];
  return Math.min(...heights.map((h) => wallAt(h) - noseAt(nose, h - at)));
}
