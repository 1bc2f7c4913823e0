import { signal } from '@preact/signals';

type Piece = Pick<typeof import('../glass/on-path.tsx'), 'lensOnPath' | 'Glass'>;

/** What draws real glass, fetched when a relay with glass is first drawn; until then the relay is drawn as one without. */
const piece = signal<Piece | undefined>(undefined);
let asking = false;

export function lensPiece(wanted: boolean): Piece | undefined {
  if (wanted && !asking) {
    asking = true;
    import('../glass/on-path.tsx').then(
      ({ lensOnPath, Glass }) => {
        piece.value = { lensOnPath, Glass };
      },
      () => {
        asking = false;
      },
    );
  }
  return wanted ? piece.value : undefined;
}
