import { computed } from '@preact/signals';
import { type Advice, adviceOf, type SpacingPoint } from '../../core/glassworks.ts';
import { amount } from '../../core/index.ts';
import { search } from './search.ts';
import { studied } from './studied.ts';

/**
 * What to do with the relay's own glass as it stands now. The places that were searched are the same
 * wherever it stands, so that moving it asks for no new search; undefined as long as there is none.
 */
export const adviceNow = computed((): Advice | undefined => {
  const found = search.value?.state === 'done' ? search.value.found.advice : undefined;
  const now = studied.value;
  if (!found || !now) return found;
  const space = amount(now.for.pairing.infinitySpaceMm);
  if (space === found.now.infinitySpaceMm) return found;
  const [a, b] = found.ways;
  const points = a.points.map((point, i) => [point, b.points[i] as SpacingPoint] as const);
  return adviceOf(now.judging, points, space);
});
