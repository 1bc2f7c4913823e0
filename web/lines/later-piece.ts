import { signal } from '@preact/signals';

type Piece = typeof import('./piece.ts');

/** What reads a line, the list to pick from, every number: fetched once the first answer stands. */
export const piece = signal<Piece | 'missing' | undefined>(undefined);

export function fetchPiece(): void {
  if (typeof piece.peek() === 'object') return;
  import('./piece.ts').then(
    ({ Numbers, offerFor, optionsIn, Popup, understood }) => {
      piece.value = { Numbers, offerFor, optionsIn, Popup, understood };
    },
    () => {
      piece.value = 'missing';
    },
  );
}
