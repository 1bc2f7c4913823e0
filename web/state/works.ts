import type { Hurrying } from '../../core/glassworks.ts';
import type { Glassworks } from '../../core/index.ts';
import { held } from './held.ts';

/**
 * What works with glass is many times the size of the rest: it is fetched when a relay with glass turns
 * up or the view of the glass is opened.
 */
let fetched: Hurrying | undefined;
let asking: Promise<void> | undefined;

/** Whether a pairing, of any shape as yet, can only be worked out by tracing. */
export function hasGlass(candidate: unknown): boolean {
  const relay = (candidate as { relay?: { glass?: unknown } } | null | undefined)?.relay;
  return typeof relay === 'object' && relay !== null && relay.glass !== undefined;
}

/** What works with glass; undefined until it has been fetched. While a hand moves something it hurries. */
export const worksNow = (): Glassworks | undefined => (held.peek() === undefined ? fetched?.exact : fetched?.hurried);

/** Fetches it, once; after a failure anew. */
export function fetchWorks(): Promise<void> {
  asking ??= import('../../core/glassworks.ts').then(
    (piece) => {
      fetched = piece.hurrying(piece.glassworks());
    },
    (error: unknown) => {
      asking = undefined;
      throw error;
    },
  );
  return asking;
}
