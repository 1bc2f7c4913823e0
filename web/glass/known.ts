import { numberIn, valueAt } from '../../core/index.ts';
import { settle } from '../state/address.ts';
import { answered, draft } from '../state/draft.ts';
import { withAt } from '../state/json.ts';
import { FIRST, isListing } from './listing.ts';

/** What is known of the relay's glass. */
export type Known = 'nothing' | 'class' | 'surfaces';

interface Told {
  glass?: unknown;
  focalLengthMm?: unknown;
  powerDioptre?: unknown;
}

const relayNow = (): Told & Record<string, unknown> => valueAt(draft.value, ['relay']) as Told & Record<string, unknown>;

export function knownNow(): Known {
  const { glass } = relayNow();
  return glass === undefined ? 'nothing' : isListing(glass) ? 'surfaces' : 'class';
}

/** What stood there before another was chosen: chosen again for the same relay it comes back. */
let remembered: { relay: string; told: Partial<Record<Known, Told>> } = { relay: '', told: {} };

/** Chooses what is known. Surfaces say the focal length; without them it is told, as they said it if need be. */
export function choose(known: Known): void {
  const { glass, focalLengthMm, powerDioptre, ...rest } = relayNow();
  const relay = JSON.stringify(rest);
  if (remembered.relay !== relay) remembered = { relay, told: {} };
  remembered.told[knownNow()] = { glass, focalLengthMm, powerDioptre };
  const told =
    remembered.told[known] ??
    (known === 'surfaces' ? { glass: FIRST } : { ...lengthTold({ focalLengthMm, powerDioptre }), ...usual(known) });
  settle(withAt(draft.value, '/relay', { ...rest, ...given(told) }));
}

const usual = (known: Known): Told => (known === 'class' ? { glass: { class: 'cemented-achromat' } } : {});

function lengthTold(told: Told): Told {
  if (told.focalLengthMm !== undefined || told.powerDioptre !== undefined) return told;
  const f = numberIn(answered.value.answers.relayFocalLengthMm);
  return f === undefined ? {} : { focalLengthMm: Number(f.toPrecision(4)) };
}

const given = (told: Told): Told => Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined));
