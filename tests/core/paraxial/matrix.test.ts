import { describe, expect, it } from 'vitest';
import { gap, thinLens, train } from '../../../core/index.ts';
import { random } from '../../support/random.ts';

interface Ray {
  readonly height: number;
  readonly slope: number;
}

/** A ray on its way, step by step, without matrices. */
const across = ({ height, slope }: Ray, length: number): Ray => ({ height: height + slope * length, slope });
const bent = ({ height, slope }: Ray, f: number): Ray => ({ height, slope: slope - height / f });

describe('ray matrices', () => {
  it('do to a ray what its steps do, in the order in which light meets them', () => {
    const r = random(61_001);
    for (let k = 0; k < 50; k++) {
      const [a, b, c] = [r.between(1, 300), r.between(1, 300), r.between(1, 300)];
      const [f, g] = [r.between(20, 400), -r.between(20, 400)];
      const start = { height: r.between(-10, 10), slope: r.between(-0.2, 0.2) };
      const whole = train(gap(a), thinLens(f), gap(b), thinLens(g), gap(c));
      const end = across(bent(across(bent(across(start, a), f), b), g), c);
      expect(whole.a * start.height + whole.b * start.slope).toBeCloseTo(end.height, 9);
      expect(whole.c * start.height + whole.d * start.slope).toBeCloseTo(end.slope, 11);
      expect(whole.a * whole.d - whole.b * whole.c).toBeCloseTo(1, 11);
    }
  });

  it('of one element is that element, and groups may be put together in any grouping', () => {
    expect(train(gap(7))).toEqual({ a: 1, b: 7, c: 0, d: 1 });
    expect(train(thinLens(50))).toEqual({ a: 1, b: 0, c: -1 / 50, d: 1 });
    const [x, y, z] = [gap(30), thinLens(80), gap(45)];
    const all = train(x, y, z);
    for (const [key, value] of Object.entries(train(train(x, y), z))) expect(value).toBeCloseTo(all[key as keyof typeof all], 14);
    for (const [key, value] of Object.entries(train(x, train(y, z)))) expect(value).toBeCloseTo(all[key as keyof typeof all], 14);
  });

  it('are worked by hand: a lens, and the way to 0.3 of its height', () => {
    const [lens, way] = [thinLens(100), gap(50)];
    // Height 1 is 0.5 after 50 mm, and a second lens of 50 mm takes its slope from -0.01 to -0.02.
    const two = train(train(lens, way), train(thinLens(50), gap(20)));
    for (const [key, value] of Object.entries({ a: 0.1, b: 50, c: -0.02, d: 0 })) expect(two[key as 'a']).toBeCloseTo(value, 14);
  });

  it('image 2f in front of a lens to 2f behind it, upside down and as large', () => {
    const whole = train(gap(100), thinLens(50), gap(100));
    expect(whole.b).toBeCloseTo(0, 12);
    expect(whole.a).toBeCloseTo(-1, 12);
  });
});
