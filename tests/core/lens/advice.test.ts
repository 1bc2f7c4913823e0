import { describe, expect, test } from 'vitest';
import { type Advice, adviceOf, type Places } from '../../../core/glassworks.ts';
import type { Pairing } from '../../../core/index.ts';
import { judgingIn, pairingWith, searched } from './rigs.ts';

const OVER: Places = { fromMm: 20, toMm: 150, count: 27 };

const advised = (pairing: Pairing, places = OVER): Advice => {
  const judging = judgingIn(pairing);
  return adviceOf(judging, searched(judging, places), pairing.infinitySpaceMm as number);
};
const short = (x: number | undefined): number => Number(x?.toPrecision(3));

describe('which way round and how far', () => {
  const near = advised(pairingWith({}, { infinitySpaceMm: 20 }));

  // Weak side first 5.55 at 85 mm and 19.9 at 20 mm, strong side first 33.7 to 30.8, by an independent
  // program whose flat focus is searched in steps: the exact one is 0.1 % less.
  test('is what an independent trace found for the cemented lens bent for the close-up job', () => {
    const [weak, strong] = near.ways;
    const at = (mm: number): number | undefined => weak.points.find((p) => p.infinitySpaceMm === mm)?.oneFrameBlurUm;
    expect(Math.abs((at(85) ?? 0) - 5.55)).toBeLessThan(0.01);
    expect(short(at(20))).toBe(19.9);
    const blurs = strong.points.map((p) => p.oneFrameBlurUm ?? 0);
    expect([short(blurs[0]), short(blurs.at(-1))]).toEqual([33.7, 30.8]);
    expect(blurs.every((b, i) => i === 0 || b < (blurs[i - 1] as number))).toBe(true);
    expect(near.better).toBe(0);
    expect(weak.best.point.infinitySpaceMm).toBe(85);
  });

  test('is said in a sentence, by thread and by glass', () => {
    expect(near.sentence).toBe(
      "Leave it weak side first, male thread toward the objective, and set it 85 mm from the objective's shoulder: the worst point of the picture blurs to 5.54 µm and keeps 81 % of the contrast of lines 2.1 µm apart at the subject. " +
        'At 20 mm it blurs to 19.9 µm and keeps 18 % of it. Strong side first the blur is 33.7 to 30.8 µm anywhere from 20 to 150 mm. Between 59 and 113 mm it is within a tenth of the best.',
    );
  });

  test('tells one who has it the wrong way round to turn it, and one who has it right to leave it', () => {
    const coarse = { fromMm: 20, toMm: 150, count: 5 };
    expect(advised(pairingWith({ reversed: true }), coarse).sentence).toMatch(
      /^Turn it round, weak side first, male thread toward the objective, and set it 85 mm/,
    );
    expect(advised(pairingWith({}, { infinitySpaceMm: 80 }), coarse).sentence).toMatch(/^It stands well: weak side first/);
  });

  test('of a lens with two like sides is the same either way', () => {
    const like = pairingWith({ glass: { radiiMm: [206, -206], thicknessesMm: [5], glasses: ['N-BK7'] } });
    const told = advised(like, { fromMm: 20, toMm: 150, count: 3 });
    expect(told.sentence).toContain('The other way round is as good.');
    expect(told.sentence).not.toMatch(/weak|strong/);
    for (const [i, p] of told.ways[0].points.entries()) expect(told.ways[1].points[i]?.oneFrame).toBeCloseTo(p.oneFrame, 9);
  });

  test('says what the place costs in light where the rim cuts there', () => {
    const narrow = advised(pairingWith({ clearApertureMm: 24 }, { infinitySpaceMm: 20 }), { fromMm: 20, toMm: 150, count: 5 });
    const { cornerLight } = narrow.ways[narrow.better].best.point;
    expect(cornerLight).toBeLessThan(0.97);
    expect(narrow.sentence).toContain(`The corner gets ${Math.round(100 * cornerLight)} % of the light there, 100 % now.`);
  });

  test('is judged in a stack where the picture is one', () => {
    const stack = advised(pairingWith({}, { infinitySpaceMm: 150, sharp: { spectrum: 'one wavelength', focus: 'stack' } }), {
      fromMm: 20,
      toMm: 150,
      count: 5,
    });
    const { best } = stack.ways[0];
    expect(best.contrast).toBe(best.point.stack);
    expect(best.contrast).toBeGreaterThan(best.point.oneFrame);
    expect(stack.sentence).toContain(`blurs to ${(best.point.stackBlurUm ?? 0).toPrecision(3)} µm`);
  });

  // Every length half as long again, the light's included, which plain indices do not mind.
  test('moves with the size of everything: 1.5 times as large, 1.5 times as far and as blurred, as contrasty', () => {
    const of = (k: number): Advice => {
      const plain = pairingWith(
        {
          clearApertureMm: 54 * k,
          glass: { radiiMm: [1000 * k, -54 * k, -91 * k], thicknessesMm: [11 * k, 4 * k], glasses: [1.5168, 1.6727] },
        },
        {
          sensor: { widthMm: 36 * k, heightMm: 24 * k, pixelPitchUm: 4 * k },
          infinitySpaceMm: 20 * k,
          wavelengthNm: 500 * k,
          objective: { ...pairingWith().objective, referenceFocalLengthMm: 200 * k },
        },
      );
      return advised(plain, { fromMm: 20 * k, toMm: 150 * k, count: 6 });
    };
    const [one, large] = [of(1), of(1.5)];
    for (const way of [0, 1] as const) {
      expect(large.ways[way].best.point.infinitySpaceMm).toBeCloseTo(1.5 * one.ways[way].best.point.infinitySpaceMm, 9);
      one.ways[way].points.forEach((p, i) => {
        const q = large.ways[way].points[i];
        expect(q?.oneFrame).toBeCloseTo(p.oneFrame, 6);
        expect(q?.stack).toBeCloseTo(p.stack, 6);
        expect((q?.oneFrameBlurUm ?? 0) / (p.oneFrameBlurUm ?? 1)).toBeCloseTo(1.5, 8);
      });
    }
  });

  test('is judged over the subject where that is what is to be sharp', () => {
    const small = pairingWith({}, { infinitySpaceMm: 20, subject: { widthMm: 0.6, heightMm: 0.9 } });
    const judging = judgingIn(small, 'subject');
    expect(judging.cornerMm).toBeCloseTo((Math.hypot(0.6, 0.9) / 2) * judging.magnification, 9);
    const told = adviceOf(judging, searched(judging, { fromMm: 20, toMm: 150, count: 3 }), 20);
    expect(told.now.oneFrame).toBeGreaterThan(2 * near.now.oneFrame);
    expect(told.sentence).toContain('the worst point of the subject');
    // Of a subject whose size is not told it is the picture.
    expect(judgingIn(pairingWith(), 'subject')).toMatchObject({ over: 'picture', cornerMm: Math.hypot(36, 24) / 2 });
  });

  test('counts where it stands among the places, and says when none of them will do', () => {
    const turned = pairingWith(
      { reversed: true, glass: { radiiMm: ['plane', -103], thicknessesMm: [5], glasses: ['N-BK7'] } },
      { infinitySpaceMm: 40 },
    );
    const judging = judgingIn(turned);
    const far = adviceOf(judging, searched(judging, { fromMm: 160, toMm: 200, count: 3 }), 40);
    expect(Math.max(...far.ways.map((way) => way.best.contrast))).toBeGreaterThanOrEqual(far.now.oneFrame);
    const dark = judgingIn(pairingWith({ clearApertureMm: 12 }, { infinitySpaceMm: 300 }));
    expect(adviceOf(dark, searched(dark, { fromMm: 300, toMm: 400, count: 2 }), 300).sentence).toMatch(
      /^At none of these places all of the picture gets light/,
    );
    const one = adviceOf(judgingIn(pairingWith()), searched(judgingIn(pairingWith()), { fromMm: 85, toMm: 85, count: 1 }), 85);
    expect(one.sentence).not.toMatch(/Between 85 and 85|from 85 to 85/);
    expect(one.sentence).toContain('the blur is 32.5 µm at 85 mm');
  });
});
