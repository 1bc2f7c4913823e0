import { computed } from '@preact/signals';
import { z } from 'zod';
import { steps, valueAt } from '../../../core/index.ts';
import { type BuildAsk, buildAskSchema, buildEffects, buildSheet } from '../../../core/table.ts';
import { inputPath } from '../../fields/names.ts';
import type { Sheet } from '../../fields/sheet.ts';
import { withAt } from '../../state/json.ts';
import { kept } from '../../state/kept.ts';
import { tableTexts } from '../../state/view.ts';
import { worksNow } from '../../state/works.ts';
import { tabled } from '../tabled.ts';

/** What a ring and a tube must tell before they count. */
const NEEDED = {
  adapters: ['/ends/0/thread', '/ends/0/sex', '/ends/1/thread', '/ends/1/sex'],
  tubes: ['/thread', '/lengthMm'],
} as const;
type List = keyof typeof NEEDED;

export const complete = (list: List, piece: unknown): boolean => NEEDED[list].every((path) => (valueAt(piece, steps(path)) ?? '') !== '');

const withoutHalves = (held: unknown): unknown => {
  if (typeof held !== 'object' || held === null) return held;
  const next: Record<string, unknown> = { ...held };
  for (const list of ['adapters', 'tubes'] as const) {
    const pieces = next[list];
    if (!Array.isArray(pieces)) continue;
    const whole = pieces.filter((piece) => complete(list, piece));
    if (whole.length > 0) next[list] = whole;
    else delete next[list];
  }
  return next;
};

/** The rings and tubes in the box, and the ring on the camera; those that are told in full stand in the address. */
export const box = kept<BuildAsk>(tableTexts.rings, z.preprocess(withoutHalves, buildAskSchema), {});

/** Where what stands at a path of the draft is told of: half-told rings before it do not count. */
function countedPath(path: string): string {
  const [, list, i, rest] = path.match(/^\/(adapters|tubes)\/(\d+)(\/.*)?$/) ?? [];
  if (list === undefined) return path;
  const held = listIn(list as List);
  if (!complete(list as List, held[Number(i)])) return '';
  const before = held.slice(0, Number(i)).filter((piece) => complete(list as List, piece)).length;
  return `/${list}/${before}${rest ?? ''}`;
}

/** What to screw together for the pairing that is answered, and what that does to the picture. */
export const built = computed(() => buildSheet(tabled.value, box.value.value));
export const effects = computed(() => buildEffects(tabled.value, built.value, worksNow()));

/** The box as inputs stand on it; its fields carry a mark, since a pairing has a camera too. */
export const BOX: Sheet = {
  mark: 'box',
  at: (path) => valueAt(box.draft.value, steps(path)),
  edit: (path, value) => box.take(withAt(box.draft.value, path, value)),
  found: (path) => {
    const counted = countedPath(path);
    return box.told.value.filter((p) => p.path === counted || inputPath(p.path) === counted);
  },
  done: box.done,
  taken: () => undefined,
};

const listIn = (key: List): readonly unknown[] => {
  const held = valueAt(box.draft.value, [key]);
  return Array.isArray(held) ? held : [];
};

export const adaptersIn = (): readonly unknown[] => listIn('adapters');
export const tubesIn = (): readonly unknown[] => listIn('tubes');

const replace = (key: 'adapters' | 'tubes', list: readonly unknown[]): void => {
  box.take(withAt(box.draft.value, `/${key}`, list.length > 0 ? list : undefined));
  box.done();
};

export const addAdapter = (): void => replace('adapters', [...adaptersIn(), { ends: [{}, {}] }]);
export const addTube = (): void => replace('tubes', [...tubesIn(), {}]);
export const takeOut = (key: 'adapters' | 'tubes', i: number): void =>
  replace(
    key,
    listIn(key).filter((_, j) => j !== i),
  );

export const tick = (key: 'ownedOnly' | 'preferOwned', on: boolean): void => {
  box.take(withAt(box.draft.value, `/${key}`, on || undefined));
  box.done();
};
