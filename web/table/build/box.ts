import { computed } from '@preact/signals';
import { steps, valueAt } from '../../../core/index.ts';
import { type BuildAsk, buildAskSchema, buildSheet } from '../../../core/table.ts';
import { inputPath } from '../../fields/names.ts';
import type { Sheet } from '../../fields/sheet.ts';
import { withAt } from '../../state/json.ts';
import { kept } from '../../state/kept.ts';
import { tableTexts } from '../../state/view.ts';
import { tabled } from '../tabled.ts';

/** The rings and tubes in the box, and the ring on the camera; they stand in the address. */
export const box = kept<BuildAsk>(tableTexts.rings, buildAskSchema, {});

/** What to screw together for the pairing that is answered. */
export const built = computed(() => buildSheet(tabled.value, box.value.value));

/** The box as inputs stand on it; its fields carry a mark, since a pairing has a camera too. */
export const BOX: Sheet = {
  mark: 'box',
  at: (path) => valueAt(box.draft.value, steps(path)),
  edit: (path, value) => box.take(withAt(box.draft.value, path, value)),
  found: (path) => box.told.value.filter((p) => p.path === path || inputPath(p.path) === path),
  done: box.done,
  taken: () => undefined,
};

const listIn = (key: 'adapters' | 'tubes'): readonly unknown[] => {
  const held = valueAt(box.draft.value, [key]);
  return Array.isArray(held) ? held : [];
};

export const adaptersIn = (): readonly unknown[] => listIn('adapters');
export const tubesIn = (): readonly unknown[] => listIn('tubes');

const replace = (key: 'adapters' | 'tubes', list: readonly unknown[]): void => {
  box.take(withAt(box.draft.value, `/${key}`, list.length > 0 ? list : undefined));
  box.done();
};

export const addAdapter = (): void =>
  replace('adapters', [
    ...adaptersIn(),
    {
      ends: [
        { thread: '58', sex: 'male' },
        { thread: '52', sex: 'female' },
      ],
    },
  ]);
export const addTube = (): void => replace('tubes', [...tubesIn(), { thread: 'M42 x 1', lengthMm: 28 }]);
export const takeOut = (key: 'adapters' | 'tubes', i: number): void =>
  replace(
    key,
    listIn(key).filter((_, j) => j !== i),
  );

export const tick = (key: 'ownedOnly' | 'preferOwned', on: boolean): void => {
  box.take(withAt(box.draft.value, `/${key}`, on || undefined));
  box.done();
};
