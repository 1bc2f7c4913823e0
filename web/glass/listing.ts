import type { Lens } from '../../core/glassworks.ts';

/** One lens's surfaces as they stand in the draft: what is typed may be anything. */
export interface Listing {
  radiiMm: unknown[];
  thicknessesMm: unknown[];
  glasses: unknown[];
  semiAperturesMm?: unknown[];
}

/** What a listing begins as where nothing is known yet: one thin lens, flat toward the objective. */
export const FIRST: Listing = { radiiMm: ['plane', -100], thicknessesMm: [4], glasses: ['N-BK7'] };

export const MOST_SURFACES = 16;
export const FEWEST_SURFACES = 2;

/** Whether what stands there is a list of surfaces, and not a class. */
export const isListing = (glass: unknown): glass is Listing =>
  typeof glass === 'object' && glass !== null && Array.isArray((glass as { radiiMm?: unknown }).radiiMm);

const listed = (x: unknown): unknown[] => (Array.isArray(x) ? x : []);

/** One more surface behind the last: what fills the space up to it stands to be changed. */
export const withSurface = <T extends Listing>(listing: T): T => ({
  ...listing,
  radiiMm: [...listing.radiiMm, 'plane'],
  thicknessesMm: [...listed(listing.thicknessesMm), 3],
  glasses: [...listed(listing.glasses), 'N-BK7'],
  ...semis(listing, (half) => [...half, half.at(-1)]),
});

/** Without one surface and the space behind it; with the last the space before it goes. */
export function withoutSurface<T extends Listing>(listing: T, i: number): T {
  const space = Math.min(i, listing.radiiMm.length - 2);
  return {
    ...listing,
    radiiMm: without(listing.radiiMm, i),
    thicknessesMm: without(listed(listing.thicknessesMm), space),
    glasses: without(listed(listing.glasses), space),
    ...semis(listing, (half) => without(half, i)),
  };
}

const without = (list: readonly unknown[], i: number): unknown[] => list.filter((_, j) => j !== i);
const semis = (listing: Listing, change: (half: unknown[]) => unknown[]): Partial<Listing> =>
  Array.isArray(listing.semiAperturesMm) ? { semiAperturesMm: change(listing.semiAperturesMm) } : {};

const FLAT = /^(plane|plan|flat|inf(inity)?|∞)$/i;

/** A radius as it is typed: a number, or what says that the surface is plane. */
export const radiusTyped = (text: string, number: unknown): unknown => (FLAT.test(text.trim()) ? 'plane' : number);

/** A glass as it is typed: its name, or its index as a number. */
export const glassTyped = (text: string, number: unknown): unknown => (typeof number === 'number' ? number : text.trim() || undefined);

/**
 * The clear half-heights with one changed. They are all given or all left out: emptied ones go, and where one is
 * typed first the others begin as it.
 */
export function semiTyped(listing: Listing, i: number, value: unknown): unknown[] | undefined {
  const before = Array.isArray(listing.semiAperturesMm) ? listing.semiAperturesMm : listing.radiiMm.map(() => value);
  const next = before.map((half, j) => (j === i ? (value ?? '') : half));
  return next.every((half) => half === '' || half === undefined) ? undefined : next;
}

/** The classes of which a typical lens can be taken. */
export const CLASSES = {
  singlet: 'one piece of glass',
  'cemented-achromat': 'cemented achromat',
  'air-spaced-achromat': 'achromat with an air gap',
} as const;

/** A lens's surfaces written out, to a hundredth of a millimetre. */
export const listingOf = ({ radiiMm, thicknessesMm, media }: Lens): Listing => ({
  radiiMm: radiiMm.map((r) => (Number.isFinite(r) ? hundredths(r) : 'plane')),
  thicknessesMm: thicknessesMm.map(hundredths),
  glasses: media.map((m) => m.name),
});

const hundredths = (mm: number): number => Math.round(100 * mm) / 100;

/** What a surface is called on the page: its place in its list, primed in the second lens. */
export const surfaceName = (i: number, second = false): string => `${i + 1}${second ? '′' : ''}`;
