import fc from 'fast-check';
import { expect, it } from 'vitest';
import { filling } from '../../../../core/table/build/fill.ts';
import { type Tube, tubeOf } from '../../../../core/table/threads/adapter.ts';

/** What is as good as exact, mm. */
const GOOD_ENOUGH = 1;
const RUNS = Number(process.env.RUNS ?? 150);

const anyTube = fc
  .record({ tenths: fc.integer({ min: 20, max: 300 }), reach: fc.constantFrom(0, 0, 0, 0, 8, 20), owned: fc.boolean() })
  .map(({ tenths, reach, owned }): Tube => ({ ...tubeOf({ thread: 'M42 x 1', lengthMm: tenths / 10, reachMm: reach }), owned }));

/** Every choice of tubes, at most one focusing one among them: what is owned once, what is bought up to `most` times. */
function everyChoice(tubes: readonly Tube[], longest: number): { tubes: Tube[]; tenths: number }[] {
  const plain = tubes.filter(({ reachMm }) => reachMm === 0);
  let found: { tubes: Tube[]; tenths: number }[] = [{ tubes: [], tenths: 0 }];
  for (const tube of plain) {
    const own = Math.round(10 * tube.lengthMm);
    found = found.flatMap((one) => {
      const most = tube.owned ? 1 : Math.floor((longest - one.tenths) / own);
      return Array.from({ length: Math.max(0, most) + 1 }, (_, n) => ({
        tubes: [...one.tubes, ...Array.from({ length: n }, () => tube)],
        tenths: one.tenths + n * own,
      })).filter(({ tenths }) => tenths <= longest);
    });
  }
  return [undefined, ...tubes.filter(({ reachMm }) => reachMm > 0)].flatMap((turning) =>
    found.map((one) => (turning ? { tubes: [...one.tubes, turning], tenths: one.tenths + Math.round(10 * turning.lengthMm) } : one)),
  );
}

it('is the fewest tubes that reach what is wanted, or as near as any do, as a search of all of them finds', () => {
  let reached = 0;
  fc.assert(
    fc.property(
      fc.array(anyTube, { maxLength: 4 }),
      fc.integer({ min: 0, max: 600 }),
      fc.integer({ min: 0, max: 60 }),
      fc.boolean(),
      (tubes, tenths, half, preferOwned) => {
        const [value, low, high] = [tenths, tenths - half, tenths + half].map((x) => x / 10) as [number, number, number];
        const found = filling(tubes, { value, low, high }, preferOwned);
        if (!found) throw new Error('a row of no tubes is one too');
        const longest =
          tenths + Math.max(0, ...tubes.filter(({ reachMm }) => reachMm === 0).map(({ lengthMm }) => Math.round(10 * lengthMm)));
        const judged = everyChoice(tubes, longest).map((one) => {
          const least = one.tenths / 10;
          const most = least + one.tubes.reduce((sum, { reachMm }) => sum + reachMm, 0);
          const missed = Math.max(0, least - low - GOOD_ENOUGH, high - most - GOOD_ENOUGH);
          const buys = one.tubes.filter(({ owned }) => !owned).length;
          const pieces = preferOwned ? [buys, one.tubes.length] : [one.tubes.length, buys];
          return [Math.round(10 * missed), ...pieces] as [number, number, number];
        });
        const best = judged.reduce((a, b) => {
          const i = a.findIndex((x, j) => x !== b[j]);
          return i >= 0 && (b[i] as number) < (a[i] as number) ? b : a;
        });
        const buys = found.tubes.filter(({ owned }) => !owned).length;
        const missed = Math.max(0, found.least - low - GOOD_ENOUGH, high - found.most - GOOD_ENOUGH);
        expect([Math.round(10 * missed), ...(preferOwned ? [buys, found.tubes.length] : [found.tubes.length, buys])]).toEqual(best);
        expect(found.least).toBeCloseTo(
          found.tubes.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
          9,
        );
        expect(found.lengthMm).toBeGreaterThanOrEqual(found.least);
        expect(found.lengthMm).toBeLessThanOrEqual(found.most + 1e-9);
        const owned = found.tubes.filter((tube) => tube.owned);
        expect(new Set(owned).size).toBe(owned.length);
        if (missed === 0) reached++;
      },
    ),
    { numRuns: RUNS, seed: 73_001 },
  );
  expect(reached).toBeGreaterThan(RUNS / 10);
});

it('fills nothing where the rings alone are too long', () => {
  expect(filling([tubeOf({ thread: 'M42 x 1', lengthMm: 7 })], { value: -3, low: -3, high: -3 })).toBeUndefined();
  expect(filling([], { value: 0.4, low: 0.4, high: 0.4 })).toMatchObject({ tubes: [], lengthMm: 0 });
});
