import { signal } from '@preact/signals';

/** The page's views. The one that is open stands in the address before the pairing's link: `?view=glass#1.…`. */
export const VIEWS = ['pairing', 'glass', 'abreast', 'drawer'] as const;
export type View = (typeof VIEWS)[number];

export const VIEW_NAMES: Record<View, string> = { pairing: 'Pairing', glass: 'The glass', abreast: 'Abreast', drawer: 'The drawer' };

export const view = signal<View>('pairing');

/** The first view has no name in the address, so that old links stay what they were. */
export const searchOf = (name: View): string => (name === VIEWS[0] ? '' : `?view=${name}`);

export function showView(name: View): void {
  view.value = name;
  document.title = name === VIEWS[0] ? 'Pupilwalk' : `${VIEW_NAMES[name]}: Pupilwalk`;
}

/** Shows the view that the address names. */
export function followView(): void {
  const named = new URLSearchParams(location.search).get('view');
  showView(VIEWS.find((name) => name === named) ?? VIEWS[0]);
}
