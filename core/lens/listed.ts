import type { Problem } from '../errors.ts';
import { GLASS_NAMES, glassNamed } from '../glass/glasses.ts';
import { AIR, type Medium, plainIndex } from '../glass/medium.ts';
import { problem } from '../pairing/contradict/statement.ts';
import { type GlassListing, MOST_SURFACES } from '../parts/relay-glass.ts';
import { type Lens, reversed, turned, widestSemiApertures } from '../trace/lens.ts';
import { heightBetween, sag } from '../trace/surface.ts';
import { atLeast, atMost } from '../words.ts';

/** A lens, or what is wrong with what was told of it. */
export type LensOrProblems =
  | { readonly lens: Lens; readonly problems?: undefined }
  | { readonly lens?: undefined; readonly problems: Problem[] };

/** Surfaces and what lies between them in the order in which light meets them, each with its place in the listing. */
interface Row {
  readonly surfaces: readonly { readonly radiusMm: number; readonly semiMm: number | undefined; readonly at: string; readonly i: number }[];
  readonly spaces: readonly { readonly thicknessMm: number; readonly medium: Medium; readonly at: string }[];
}

/**
 * The lens of a relay's glass listing, `turned` round as a whole or not. Where no semi-aperture is listed
 * a surface lets light through as far as there is glass or air on both its sides.
 *
 * @param at where the listing stands: problems name its very field
 */
export function lensOf(listing: GlassListing, turned: boolean, at = '/relay/glass'): LensOrProblems {
  const problems = [listing, listing.second].flatMap((one, i) => (one ? misfits(one, i === 0 ? at : `${at}/second`) : []));
  const count = listing.radiiMm.length + (listing.second?.radiiMm.length ?? 0);
  if (count > MOST_SURFACES)
    problems.push(
      problem(
        'tooBig',
        `${at}/second/radiiMm`,
        listing.second?.radiiMm,
        `make ${count} surfaces with the first lens's`,
        `at most ${MOST_SURFACES} in all`,
      ),
    );
  if (problems.length > 0) return { problems };
  const row = inRow(listing, at);
  const steep = row.surfaces.flatMap(tooSteep);
  // Between spheres that are none nothing can be measured.
  const clashes = steep.length > 0 ? steep : row.spaces.flatMap((_, i) => tooThin(row, i));
  if (clashes.length > 0) return { problems: clashes };
  const lens = lensOfRow(row);
  return { lens: turned ? reversed(lens) : lens };
}

type Surfaces = Pick<GlassListing, 'radiiMm' | 'thicknessesMm' | 'glasses' | 'semiAperturesMm'>;

/** Lists that do not go together, and glasses that nobody knows. */
function misfits({ radiiMm, thicknessesMm, glasses, semiAperturesMm }: Surfaces, at: string): Problem[] {
  const count = radiiMm.length;
  const wrong = (name: string, list: readonly unknown[] | undefined, wanted: number, why: string): Problem[] =>
    list === undefined || list.length === wanted
      ? []
      : [problem('wrongCount', `${at}/${name}`, list, `has ${list.length} entries for ${count} surfaces`, `${wanted} entries, ${why}`)];
  return [
    ...wrong('thicknessesMm', thicknessesMm, count - 1, 'one from each surface to the next'),
    ...wrong('glasses', glasses, count - 1, 'one from each surface to the next'),
    ...wrong('semiAperturesMm', semiAperturesMm, count, 'one for each surface'),
    ...glasses.flatMap((glass, i) =>
      mediumOf(glass)
        ? []
        : [problem('unknownGlass', `${at}/glasses/${i}`, glass, 'names no glass that is known here', likely(String(glass)))],
    ),
  ];
}

const mediumOf = (glass: string | number): Medium | undefined => (typeof glass === 'number' ? plainIndex(glass) : glassNamed(glass));

/** What would do for a glass's name: those that have its letters and digits in them, or all. */
function likely(name: string): string {
  const core = (text: string): string => text.toUpperCase().replace(/^[NS]-|[^A-Z0-9]/g, '');
  const alike = GLASS_NAMES.filter((known) => core(known).includes(core(name)) || core(name).includes(core(known)));
  const some = alike.length > 0 && core(name) !== '' ? `${alike.slice(0, 4).join(' or ')}; ` : '';
  return `${some}a name that GET /api/glasses lists, "air", or a refractive index from 1 to 4`;
}

/** The listing's lenses one behind the other. */
function inRow(listing: GlassListing, at: string): Row {
  const first = rowOf(listing, at);
  const { second } = listing;
  if (!second) return first;
  const own = rowOf(second, `${at}/second`);
  const behind = second.reversed
    ? { surfaces: own.surfaces.toReversed().map((s) => ({ ...s, radiusMm: turned(s.radiusMm) })), spaces: own.spaces.toReversed() }
    : own;
  return {
    surfaces: [...first.surfaces, ...behind.surfaces],
    spaces: [...first.spaces, { thicknessMm: second.gapMm, medium: AIR, at: `${at}/second/gapMm` }, ...behind.spaces],
  };
}

const rowOf = ({ radiiMm, thicknessesMm, glasses, semiAperturesMm }: Surfaces, at: string): Row => ({
  surfaces: radiiMm.map((radius, i) => ({
    radiusMm: radius === 'plane' ? Number.POSITIVE_INFINITY : radius,
    semiMm: semiAperturesMm?.[i],
    at,
    i,
  })),
  spaces: thicknessesMm.map((thicknessMm, i) => ({
    thicknessMm,
    medium: mediumOf(glasses[i] as string | number) as Medium,
    at: `${at}/thicknessesMm/${i}`,
  })),
});

/** No lens is smaller: curvatures stay where arithmetic is sound. */
const LEAST_RADIUS = 0.1;

function tooSteep({ radiusMm, semiMm = 0, at, i }: Row['surfaces'][number]): Problem[] {
  const path = `${at}/radiiMm/${i}`;
  const size = Math.abs(radiusMm);
  if (size < LEAST_RADIUS)
    return [
      problem(
        'tooSmall',
        path,
        radiusMm,
        `is nearer to 0 than ${LEAST_RADIUS} mm`,
        `"plane", or a radius of at least ${LEAST_RADIUS} mm either way`,
      ),
    ];
  if (size >= semiMm) return [];
  const would = `at least ${semiMm} mm either way, or semiAperturesMm/${i} of at most ${atMost(size)}`;
  return [problem('contradiction', path, radiusMm, `ends before its rim: the semi-aperture is ${semiMm} mm`, would)];
}

/** Below this height, mm, there is no lens to speak of. */
const NO_HEIGHT = 0.05;

/** Surfaces that pass through each other on the axis, or where both let light through. */
function tooThin({ surfaces, spaces }: Row, i: number): Problem[] {
  const [before, behind] = [surfaces[i], surfaces[i + 1]] as [Row['surfaces'][number], Row['surfaces'][number]];
  const { thicknessMm, at } = spaces[i] as Row['spaces'][number];
  const height = heightBetween(before.radiusMm, behind.radiusMm, thicknessMm);
  const rim = Math.min(before.semiMm ?? NO_HEIGHT, behind.semiMm ?? NO_HEIGHT, Math.abs(before.radiusMm), Math.abs(behind.radiusMm));
  if (height >= rim) return [];
  const needed = sag(before.radiusMm, rim) - sag(behind.radiusMm, rim);
  const thicker = `at least ${atLeast(needed)}`;
  if (height < NO_HEIGHT) return [problem('contradiction', at, thicknessMm, 'lets its two surfaces pass through each other', thicker)];
  // Without listed semi-apertures the rim is no higher than that.
  const message = `leaves nothing between its surfaces beyond ${atMost(height)} mm from the axis, and both let light through to ${rim} mm`;
  return [problem('contradiction', at, thicknessMm, message, `${thicker}, or semi-apertures of at most ${atMost(height)}`)];
}

function lensOfRow({ surfaces, spaces }: Row): Lens {
  const radiiMm = surfaces.map((s) => s.radiusMm);
  const thicknessesMm = spaces.map((s) => s.thicknessMm);
  const widest = widestSemiApertures(radiiMm, thicknessesMm);
  return {
    radiiMm,
    thicknessesMm,
    media: spaces.map((s) => s.medium),
    semiAperturesMm: surfaces.map((s, i) => s.semiMm ?? (widest[i] as number)),
  };
}
