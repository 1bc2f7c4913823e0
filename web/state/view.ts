import { signal } from '@preact/signals';

/** The page's views, the last one for the foot. The one that is open stands in the address before the pairing's link: `?view=glass#1.…`. */
export const VIEWS = ['pairing', 'glass', 'subject', 'abreast', 'table', 'drawer', 'checked'] as const;
export type View = (typeof VIEWS)[number];

export const VIEW_NAMES: Record<View, string> = {
  pairing: 'Pairing',
  glass: 'The glass',
  subject: 'From the subject',
  abreast: 'Abreast',
  table: 'On the table',
  drawer: 'The drawer',
  checked: 'Checked against',
};

export const view = signal<View>('pairing');

/**
 * What is wished for, as its view keeps it in the address (`?view=subject&wish=…`); '' where it is the pairing's own
 * subject. Text until that view reads it (`wish.ts`).
 */
export const wishText = signal('');

/** What the table's view keeps in the address beside its name, each as text until that view reads it (`kept.ts`). */
export const tableTexts = { set: signal(''), saw: signal(''), rings: signal('') };

const TABLE_TEXTS = Object.entries(tableTexts);

/** The first view has no name in the address, so that old links stay what they were. */
export function searchOf(name: View): string {
  if (name === VIEWS[0]) return '';
  const kept = name === 'subject' ? [['wish', wishText] as const] : name === 'table' ? TABLE_TEXTS : [];
  return `?view=${name}${kept.map(([key, { value }]) => (value === '' ? '' : `&${key}=${value}`)).join('')}`;
}

export function showView(name: View): void {
  view.value = name;
  document.title = name === VIEWS[0] ? 'Pupilwalk' : `${VIEW_NAMES[name]}: Pupilwalk`;
}

/** Shows the view that the address names, with what is wished for there. */
export function followView(): void {
  const search = new URLSearchParams(location.search);
  const named = search.get('view');
  // What would not stand in an address as it is was not written here: it is kept out of the address that is written anew.
  const textOf = (key: string): string => search.get(key)?.replace(/[^\w.-]/g, '') ?? '';
  if (named === 'subject') wishText.value = textOf('wish');
  if (named === 'table') for (const [key, text] of TABLE_TEXTS) text.value = textOf(key);
  showView(VIEWS.find((name) => name === named) ?? VIEWS[0]);
}
