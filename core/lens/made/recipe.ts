import { glassNamed } from '../../glass/glasses.ts';
import { abbeNumber } from '../../glass/lines.ts';
import { AIR, type Medium } from '../../glass/medium.ts';
import { BUILDS, type MadeKind } from './kinds.ts';

/** What a lens is made of: names of glasses, and which of them faces the camera lens in the close-up lens's job. */
export interface Recipe {
  readonly kind: MadeKind;
  readonly crown: string;
  /** A single lens has none. */
  readonly flint?: string;
  readonly leading: 'crown' | 'flint';
}

/** Every recipe of a class: each of its pairs of glasses, crown first and flint first. */
export const recipesOf = (kind: MadeKind): readonly Recipe[] =>
  BUILDS[kind].glasses.flatMap(([crown, flint]): Recipe[] =>
    flint === undefined
      ? [{ kind, crown, leading: 'crown' }]
      : [
          { kind, crown, flint, leading: 'crown' },
          { kind, crown, flint, leading: 'flint' },
        ],
  );

export function nameOf({ kind, crown, flint, leading }: Recipe): string {
  const { words } = BUILDS[kind];
  return flint === undefined ? `${words}, ${crown}` : `${words}, ${crown} and ${flint}, ${leading} toward the camera lens`;
}

/** In the order of the listing; or why no lens can be made of them. */
export function glassesOf({ crown, flint, leading }: Recipe): readonly Medium[] | string {
  const glasses: Medium[] = [];
  for (const name of flint === undefined ? [crown] : [crown, flint]) {
    const glass = glassNamed(name);
    if (!glass || glass === AIR) return `no glass is known by the name of ${name}`;
    glasses.push(glass);
  }
  const [first, second] = glasses as [Medium, Medium?];
  if (second && !(abbeNumber(first, 'd') > abbeNumber(second, 'd'))) {
    return `${crown} disperses no less than ${flint}: together they make no achromat`;
  }
  return leading === 'crown' ? glasses : glasses.toReversed();
}
