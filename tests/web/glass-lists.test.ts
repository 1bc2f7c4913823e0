import { beforeAll, describe, expect, it } from 'vitest';
import { evaluate } from '../../core/index.ts';
import { engravedRelay, impliedBy } from '../../web/fields/engrave.ts';
import { calledAt } from '../../web/fields/names.ts';
import {
  glassTyped,
  isListing,
  type Listing,
  listingOf,
  radiusTyped,
  semiTyped,
  withoutSurface,
  withSurface,
} from '../../web/glass/listing.ts';
import { understood } from '../../web/lines/understood.ts';
import { judge } from '../../web/state/draft.ts';
import { complaint } from '../../web/state/words.ts';
import { fetchWorks } from '../../web/state/works.ts';
import { achromat } from './an-achromat.ts';
import { BEHIND, R3, WORKS, withGlass } from './glass-support.ts';

/** A relay's glass as it is typed, and what is said of it. */

beforeAll(() => fetchWorks());

describe('the list of surfaces', () => {
  it('grows and shrinks without losing its shape', () => {
    const grown = withSurface({ ...R3, semiAperturesMm: [20, 20, 19] } as Listing);
    expect(grown).toEqual({
      radiiMm: [1000, -54, -91, 'plane'],
      thicknessesMm: [11, 4, 3],
      glasses: ['N-BK7', 'N-SF5', 'N-BK7'],
      semiAperturesMm: [20, 20, 19, 19],
    });
    expect(withoutSurface(grown, 3)).toEqual({ ...R3, semiAperturesMm: [20, 20, 19] });
    expect(withoutSurface(R3 as Listing, 0)).toEqual({ radiiMm: [-54, -91], thicknessesMm: [4], glasses: ['N-SF5'] });
    expect(withoutSurface(R3 as Listing, 2)).toEqual({ radiiMm: [1000, -54], thicknessesMm: [11], glasses: ['N-BK7'] });
    expect(isListing({ class: 'singlet' })).toBe(false);
  });

  it('reads radii, glasses and half-heights as people type them', () => {
    for (const text of ['plane', ' Flat ', '∞', 'inf', 'infinity']) expect(radiusTyped(text, text)).toBe('plane');
    expect([radiusTyped('-54', -54), radiusTyped('frog', 'frog')]).toEqual([-54, 'frog']);
    expect([glassTyped('1.5168', 1.5168), glassTyped(' N-BK7 ', 'N-BK7'), glassTyped('', undefined)]).toEqual([1.5168, 'N-BK7', undefined]);
    expect(semiTyped(R3 as Listing, 1, 20)).toEqual([20, 20, 20]);
    const some = { ...R3, semiAperturesMm: [20, 20, 20] } as Listing;
    expect(semiTyped(some, 0, 18)).toEqual([18, 20, 20]);
    const emptied = [0, 1].reduce((half, i) => semiTyped({ ...some, semiAperturesMm: half }, i, undefined) ?? [], [
      20, 20, 20,
    ] as unknown[]);
    expect(emptied).toEqual(['', '', 20]);
    expect(semiTyped({ ...some, semiAperturesMm: emptied }, 2, undefined)).toBeUndefined();
  });

  it('writes a lens out as it can be read again', () => {
    const listed = listingOf(achromat);
    expect(listed).toEqual(R3);
    expect(judge({ ...BEHIND, relay: { kind: 'supplementary', clearApertureMm: 54, glass: listed } }).evaluation).toBeDefined();
  });
});

describe('words', () => {
  it('name every entry of the glass, and what would do there', () => {
    expect(calledAt('/relay/glass/radiiMm/1')).toBe('relay, radius of surface 2');
    expect(calledAt('/relay/glass/second/glasses/0')).toBe('relay, second lens, glass behind surface 1');
    const wrong = (change: object): string[] =>
      (judge(withGlass({ glass: { ...R3, ...change } })).problems ?? []).map((p) => `${p.path} ${complaint(p)}`);
    expect(judgeRaw({ radiiMm: [1000, '', -91] })).toEqual([
      '/relay/glass/radiiMm/1 Is missing: give a radius of at least 0.1 mm either way, or “plane”.',
    ]);
    expect(judgeRaw({ thicknessesMm: [-1, 4] })).toEqual([
      '/relay/glass/thicknessesMm/0 ‘−1’ is too small: put in a thickness from 0 to 500 mm.',
    ]);
    expect(wrong({ glasses: ['N-BK7', 'sf5y'] })[0]).toMatch(
      /^\/relay\/glass\/glasses\/1 ‘sf5y’ is no glass that is known here\. What would do: .*N-SF5.*a name from the list/,
    );
    expect(wrong({ semiAperturesMm: [20, 60, 20] })[0]).toContain('a clear half-height of surface 2 of at most 54');
  });

  it('keep a relay with glass the same as long as its engraving says the same', () => {
    const evaluation = evaluate(withGlass(), WORKS);
    const implied = impliedBy(evaluation);
    expect(implied.focalLengthMm).toBe(198.1);
    const line = engravedRelay({ ...implied, ...withGlass().relay });
    expect(line).toBe('close-up 198.1 mm 58 x 0.75 Ø 54');
    const ground = { part: withGlass().relay, line };
    expect(understood('relay', line.replace('Ø 54', 'Ø 50'), ground).part).toEqual({ ...withGlass().relay, clearApertureMm: 50 });
    expect(understood('relay', 'close-up 150 mm', ground).part).toEqual({ kind: 'supplementary', focalLengthMm: 150 });
  });
});

/** What is said of a draft that no schema lets through. */
const judgeRaw = (change: object): string[] =>
  (judge({ ...BEHIND, relay: { kind: 'supplementary', clearApertureMm: 54, glass: { ...R3, ...change } } }).problems ?? []).map(
    (p) => `${p.path} ${complaint(p)}`,
  );
