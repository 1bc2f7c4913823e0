import { computed } from '@preact/signals';
import { BOUNDS, letter, MOST_ABREAST, type Pairing, pairingSchema, problemsOf } from '../../core/index.ts';
import { commit } from './address.ts';
import { withAt } from './json.ts';
import { further, read, written } from './link.ts';
import { said } from './words.ts';

/** A pairing laid abreast, or in words why what stands in its place in the link is none. */
export type Laid = { readonly pairing: Pairing; readonly fault?: undefined } | { readonly fault: string; readonly pairing?: undefined };

/** No pairing with everything in it is as long as this, in characters of the link. */
const LONGEST = 40_000;

/** One text gives one pairing, the same each time: what is known of it is not worked out anew. */
const known = new Map<string, Laid>();

/** What one piece of the link holds. Anybody may have written it. Never throws. */
export function laidIn(text: string): Laid {
  if (text.length > LONGEST) return { fault: 'it is far too long for a pairing' };
  let held: unknown;
  try {
    held = read(text);
  } catch {
    return { fault: 'it is cut short or damaged' };
  }
  try {
    const parsed = pairingSchema.safeParse(held);
    if (parsed.success) return { pairing: parsed.data };
    const first = problemsOf(parsed.error, held)[0];
    return { fault: first ? said(first).replace(/\.$/, '') : 'what it holds is no pairing' };
  } catch {
    return { fault: 'what it holds is no pairing' };
  }
}

const textsIn = (behind: string): string[] => behind.split('.').slice(1);

/** What lies side by side, in the order in which it was laid: at most `MOST_ABREAST`. */
export const abreast = computed((): readonly Laid[] =>
  textsIn(further.value)
    .slice(0, MOST_ABREAST)
    .map((text) => {
      const found = known.get(text) ?? laidIn(text);
      known.set(text, found);
      return found;
    }),
);

/** Pieces of the link that are more than can lie abreast. */
export const tooMany = computed(() => Math.max(0, textsIn(further.value).length - MOST_ABREAST));

/** Where a pairing lies now, counted from 0, and whether it lay there before; undefined where there is no room. */
export type Place = { readonly place: number; readonly before: boolean } | undefined;

/** Lays a pairing beside the others: one step of history. */
export function layAbreast(pairing: Pairing): Place {
  const text = written(pairing);
  const texts = textsIn(further.peek());
  const there = texts.indexOf(text);
  if (there >= 0) return { place: there, before: true };
  if (texts.length >= MOST_ABREAST) return undefined;
  lay([...texts, text]);
  return { place: texts.length, before: false };
}

/** The same in words. */
export const saidOf = (place: Place): string =>
  place === undefined
    ? `${MOST_ABREAST} lie abreast: take one away first.`
    : place.before
      ? `It lies abreast already, as ${letter(place.place)}.`
      : `Laid abreast as ${letter(place.place)}.`;

/** Takes away what lies at a place: one step of history. */
export const takeAway = (place: number): void => lay(textsIn(further.peek()).toSpliced(place, 1));

/** Gives all of them one depth of the subject, or none; the history gets its step with the next commit. */
export function deepen(depthMm: number | undefined): void {
  further.value = joined(
    textsIn(further.peek()).map((text, place) => {
      const pairing = abreast.peek()[place]?.pairing;
      return pairing ? written(withAt(pairing, '/subject/depthMm', depthMm)) : text;
    }),
  );
}

/** Whether a depth may be given. */
export const isDepth = (depth: unknown): depth is number =>
  typeof depth === 'number' && depth >= BOUNDS.subjectDepthMm[0] && depth <= BOUNDS.subjectDepthMm[1];

const joined = (texts: readonly string[]): string => texts.map((text) => `.${text}`).join('');

function lay(texts: readonly string[]): void {
  // An edit under way is a step of its own.
  commit();
  further.value = joined(texts);
  commit();
}
