/** An interval of a quantity, both ends in it. Lists of them are in order and do not touch. */
export type Span = [low: number, high: number];

/** What two lists have in common. */
export function common(a: readonly Span[], b: readonly Span[]): Span[] {
  const found: Span[] = [];
  for (const [al, ah] of a)
    for (const [bl, bh] of b) {
      const [low, high] = [Math.max(al, bl), Math.min(ah, bh)];
      if (low <= high) found.push([low, high]);
    }
  return found;
}

/** How far apart two lists are where they have nothing in common: the two ends that come nearest, the lower first. */
export function nearest(a: readonly Span[], b: readonly Span[]): Span | undefined {
  let best: Span | undefined;
  for (const [al, ah] of a)
    for (const [bl, bh] of b) {
      const between: Span = ah < bl ? [ah, bl] : [bh, al];
      if (!best || between[1] - between[0] < best[1] - best[0]) best = between;
    }
  return best;
}
