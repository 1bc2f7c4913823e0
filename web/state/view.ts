import { signal } from '@preact/signals';

/** The page's views. The one that is open stands in the address before the pairing's link: `?view=glass#1.…`. */
export const VIEWS = ['pairing', 'glass', 'subject', 'abreast', 'drawer'] as const;
export type View = (typeof VIEWS)[number];

export const VIEW_NAMES: Record<View, string> = {
  pairing: 'Pairing',
  glass: 'The glass',
  subject: 'From the subject',
  abreast: 'Abreast',
  drawer: 'The drawer',
};

export const view = signal<View>('pairing');

/**
 * What is wished for, as its view keeps it in the address (`?view=subject&wish=…`); '' where it is the pairing's own
 * subject. Text until that view reads it (`wish.ts`).
 */
export const wishText = signal('');

/** The first view has no name in the address, so that old links stay what they were. */
export function searchOf(name: View): string {
  if (name === VIEWS[0]) return '';
  return `?view=${name}${name === 'subject' && wishText.value !== '' ? `&wish=${wishText.value}` : ''}`;
}

export function showView(name: View): void {
  view.value = name;
  document.title = name === VIEWS[0] ? 'Pupilwalk' : `${VIEW_NAMES[name]}: Pupilwalk`;
}

/** Shows the view that the address names, with what is wished for there. */
export function followView(): void {
  const search = new URLSearchParams(location.search);
  const named = search.get('view');
  // What would not stand in an address as it is cannot be a wish: it is kept out of the address that is written anew.
  if (named === 'subject') wishText.value = search.get('wish')?.replace(/[^\w.-]/g, '') ?? '';
  showView(VIEWS.find((name) => name === named) ?? VIEWS[0]);
}
