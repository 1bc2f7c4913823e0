import { computed } from '@preact/signals';
import { type Asked, MOST_CONSIDERED, type Offered } from '../../core/choosing.ts';
import type { Pairing } from '../../core/index.ts';
import { catalogue, type Listed } from '../state/catalogue.ts';
import { answered } from '../state/draft.ts';
import type { From, Wish } from '../state/wish.ts';
import { wish } from '../state/wishing.ts';

/** Why there is nothing to search among. */
export type Lack = 'asking' | 'unreachable' | 'no objective' | 'no relay' | 'too many';

export interface Question {
  asked: Asked;
  /** The same with every part there is, where some are owned and some are not. */
  more: Asked | undefined;
}

/** How many of the list are told, besides those on the frontier. */
const MOST = 24;

const offered = <Part>({ id, part, own }: Listed<Part>): Offered<Part> => ({
  id,
  part,
  ...(own?.owned ? { owned: true } : {}),
  ...(own?.price === undefined ? {} : { price: own.price }),
});

/** The parts of one kind that are chosen from. */
function taken<Part>(listed: readonly Listed<Part>[] | undefined, from: From, present: Part): Offered<Part>[] {
  if (from === 'pairing') return [{ part: present, owned: true }];
  const all = listed?.map(offered) ?? [];
  return from === 'all' ? all : all.filter(({ owned }) => owned);
}

interface Shelf {
  objectives: readonly Listed<Pairing['objective']>[];
  relays: readonly Listed<Pairing['relay']>[];
}

/** The search that a wish asks for before these parts; undefined for what would lack. */
export function questionOf(wish: Wish, shelf: Shelf | undefined, { objective, relay, sensor }: Pairing): Question | Lack {
  const rest = {
    want: wish.want,
    sensor: wish.sensor ?? sensor,
    infinitySpacesMm: wish.infinitySpacesMm,
    sort: wish.sort,
    frontier: wish.frontier,
    most: MOST,
    eachPairOnce: true,
  };
  const objectives = taken(shelf?.objectives, wish.objectives, objective);
  const relays = taken(shelf?.relays, wish.relays, relay);
  if (objectives.length === 0) return 'no objective';
  if (relays.length === 0) return 'no relay';
  if (objectives.length * relays.length * wish.infinitySpacesMm.length > MOST_CONSIDERED) return 'too many';
  const whole = { objectives: taken(shelf?.objectives, 'all', objective), relays: taken(shelf?.relays, 'all', relay) };
  const some = (parts: readonly Offered<unknown>[]): boolean => parts.some(({ owned }) => owned);
  // One more part goes with what is owned: of the other kind there must be one.
  const more = some(whole.objectives) || some(whole.relays) ? { ...rest, ...whole } : undefined;
  return { asked: { ...rest, objectives, relays }, more };
}

/** The search that is asked for now, or why there is none. */
export const question = computed((): Question | Lack => {
  const shelf = catalogue.value;
  const { objectives, relays } = wish.value;
  const needsShelf = objectives !== 'pairing' || relays !== 'pairing';
  if (typeof shelf === 'string' && needsShelf) return shelf;
  return questionOf(wish.value, typeof shelf === 'string' ? undefined : shelf, answered.value.pairing);
});
