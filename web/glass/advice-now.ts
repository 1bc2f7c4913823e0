import { computed } from '@preact/signals';
import { type Advice, adviceOf, judgingOf, type SpacingPoint } from '../../core/glassworks.ts';
import { amount } from '../../core/index.ts';
import { answered } from '../state/draft.ts';
import { listedFor } from './listed-for.ts';
import { search } from './search.ts';
import { sharpOver } from './studied.ts';

/**
 * What to do with the relay's own glass as it stands now. The places that were searched are the same
 * wherever it stands, so that moving it asks for no new search; undefined as long as there is none.
 */
export const adviceNow = computed((): Advice | undefined => {
  const found = search.value?.state === 'done' ? search.value.found.advice : undefined;
  const evaluation = answered.value;
  const { infinitySpaceMm, relay } = evaluation.pairing;
  const space = amount(infinitySpaceMm);
  if (!found || !relay.glass || space === found.now.infinitySpaceMm) return found;
  const lens = listedFor(relay);
  if (!lens) return undefined;
  const [a, b] = found.ways;
  const points = a.points.map((point, i) => [point, b.points[i] as SpacingPoint] as const);
  return adviceOf(judgingOf(evaluation, lens, sharpOver.value), points, space);
});
