import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oneFrame, type Parabola, parabola, valueAt } from '../../../core/trace/focus.ts';
import { between, seeded } from '../support/arbitrary-train.ts';
import { part } from './bundles.ts';

const anyParabola: fc.Arbitrary<Parabola> = fc.record({ at: between(-3, 3), least: between(0, 2), rate: between(0.01, 4) });
const few = fc.array(anyParabola, { minLength: 1, maxLength: 9 });

describe('a parabola over the planes', () => {
  it('is what its coefficients about any plane say', () => {
    fc.assert(
      fc.property(anyParabola, between(-5, 5), between(-5, 5), ({ at, least, rate }, near, z) => {
        const again = parabola(least + rate * (near - at) ** 2, rate * (near - at), rate, near);
        expect(again.at).toBeCloseTo(at, 9);
        expect(valueAt(again, z)).toBeCloseTo(least + rate * (z - at) ** 2, 9);
      }),
      seeded(11),
    );
  });
  it('that is flat has its vertex where it is asked for', () => {
    expect(parabola(2, 1e-30, 1e-31, 7)).toEqual({ at: 7, least: 2, rate: 0 });
    expect(parabola(2, 0, 0, 7)).toEqual({ at: 7, least: 2, rate: 0 });
    // A millionth of a second of arc is 4.8e-12: its square is the last that counts as parallel.
    expect(parabola(2, 1e-24, 1e-23, 7)).toEqual({ at: 7, least: 2, rate: 0 });
    expect(parabola(2, 2e-23, 2e-23, 7)).toEqual({ at: 6, least: 2, rate: 2e-23 });
  });
});

describe('one flat focus for several', () => {
  it('leaves a largest that no other plane undercuts', () => {
    let decidedByTwo = 0;
    fc.assert(
      fc.property(few, fc.array(between(-3.5, 3.5), { minLength: 40, maxLength: 40 }), (squares, planes) => {
        const worst = (z: number): number => Math.max(...squares.map((s) => valueAt(s, z)));
        const plane = oneFrame(squares) as number;
        const least = worst(plane);
        for (const z of [...planes, plane - 1e-3, plane + 1e-3, plane - 1e-5, plane + 1e-5])
          expect(worst(z)).toBeGreaterThanOrEqual(least - 1e-12);
        if (squares.every((s) => s.at !== plane)) decidedByTwo++;
      }),
      part(0.33, 12),
    );
    expect(decidedByTwo).toBeGreaterThan(0);
  });
  it('is the own best of a single one, halfway between two alike, and none of none', () => {
    expect(oneFrame([{ at: 4, least: 1, rate: 2 }])).toBe(4);
    expect(oneFrame([1, 2].map((at) => ({ at, least: 1, rate: 2 })))).toBeCloseTo(1.5, 14);
    expect(oneFrame([])).toBeUndefined();
  });
  it('is halfway between two alike however slow their beams', () => {
    const slow = [0, 2].map((at) => ({ at, least: 0, rate: 1e-4 }));
    expect(oneFrame(slow)).toBeCloseTo(1, 14);
  });
  it('leaves the place to those that have one: a flat one is as good anywhere', () => {
    const flat = { at: 3, least: 4, rate: 0 };
    const bowls = [
      { at: 1, least: 4, rate: 1 },
      { at: 0, least: 0, rate: 2 },
    ];
    // 4 + (z - 1)² is least at 1, where 2z² is below it and the flat one no higher.
    for (const squares of [
      [flat, ...bowls],
      [...bowls, flat],
    ])
      expect(oneFrame(squares)).toBe(1);
    expect(oneFrame([{ ...flat, least: 90 }, ...bowls])).toBe(1);
    expect(oneFrame([flat, { ...flat, at: 5 }])).toBe(3);
  });
  it('leaves the place to the others, too, where one is so flat that its fall is lost in its height', () => {
    // Over the 8 mm between the last two its mean square falls by 1e-21 mm² of 2.5e-5.
    const squares = [
      { at: 167.75588292629834, least: 2.459756260623074e-8, rate: 4.960999329073429e-15 },
      { at: 189.32782396303165, least: 2.6629608656859295e-8, rate: 0.0009996667523826676 },
      { at: 197.22796404299328, least: 2.4915467287467805e-5, rate: 1.1867646731205893e-23 },
    ];
    const plane = oneFrame(squares) as number;
    expect(Math.max(...squares.map((one) => valueAt(one, plane)))).toBeCloseTo(2.4915467287467805e-5, 15);
  });
  it('is decided by the crossing of a steep and a flat one, worked by hand', () => {
    // 1 + z² and 4 (z - 3)²: 3 z² - 24 z + 35 = 0 between 0 and 3.
    const plane = (24 - Math.sqrt(24 * 24 - 12 * 35)) / 6;
    expect(
      oneFrame([
        { at: 0, least: 1, rate: 1 },
        { at: 3, least: 0, rate: 4 },
      ]),
    ).toBeCloseTo(plane, 13);
  });
});
