import { describe, expect, test } from 'vitest';
import { bandOf, type Candidate, type SpacingPoint, type Tried, trying } from '../../../core/glassworks.ts';
import { evaluate } from '../../../core/index.ts';
import { bestPlace } from '../../../core/lens/best.ts';
import { reversed } from '../../../core/trace/lens.ts';
import { BENT } from '../contrast/lenses.ts';
import { pairingWith } from './rigs.ts';

/** A candidate whose contrast over 20, 60 and 100 mm is given, each way round. */
const tried = (name: string, listed: readonly number[], turned: readonly number[]): Tried => {
  const points = (contrasts: readonly number[]): SpacingPoint[] =>
    contrasts.map((oneFrame, i) => ({
      infinitySpaceMm: 20 + 40 * i,
      oneFrame,
      stack: oneFrame,
      oneFrameBlurUm: 10 / oneFrame,
      cornerLight: 1,
    }));
  const ways = [points(listed), points(turned)] as const;
  return { name, ways, best: [bestPlace(ways[0], 'one frame'), bestPlace(ways[1], 'one frame')] };
};

describe('a lens of unknown make', () => {
  test('is advised on where every lens of the class agrees', () => {
    const band = bandOf([tried('a', [0.2, 0.8, 0.75], [0.1, 0.1, 0.1]), tried('b', [0.3, 0.7, 0.4], [0.2, 0.3, 0.3])], 'one frame', 0);
    expect(band.agreed).toBe(0);
    expect(band.spacesMm).toEqual([expect.closeTo(60 - 40 * (0.08 / 0.6), 9), expect.closeTo(60 + 40 * (0.07 / 0.3), 9)]);
    expect(band.ways[0][1]?.contrast).toEqual([0.7, 0.8]);
    expect(band.ways[1][2]?.blurUm).toEqual([10 / 0.3, 100]);
    expect(band.sentence).toBe(
      'Male thread toward the objective: all 2 lenses of this class that were worked out agree on that, and between 55 and 69 mm every one of them is within a tenth of its best. ' +
        'At its best such a lens keeps 70 % to 80 % of the contrast in the worst point of the picture. To be sure of yours, photograph the same corner both ways round, and keep the sharper.',
    );
  });

  test('is not advised on where they do not: the test is offered', () => {
    const band = bandOf(
      [
        tried('a', [0.2, 0.8, 0.5], [0.1, 0.1, 0.1]),
        tried('b', [0.1, 0.1, 0.1], [0.2, 0.3, 0.3]),
        tried('c', [0.5, 0.5, 0.5], [0.5, 0.5, 0.51]),
      ],
      'one frame',
      0,
    );
    expect(band.agreed).toBeUndefined();
    expect(band.spacesMm).toBeUndefined();
    expect(band.sentence).toBe(
      'Lenses of this class do not agree which way round is sharper: of 3, 1 wants the male thread toward the objective, 1 wants the male thread toward the camera and 1 does not care. So photograph the same corner both ways round, and keep the sharper.',
    );
  });

  test('may agree on the way round and not on the place', () => {
    const band = bandOf([tried('a', [0.8, 0.2, 0.2], [0.1, 0.1, 0.1]), tried('b', [0.1, 0.1, 0.7], [0.1, 0.1, 0.1])], 'one frame', 0);
    expect(band.agreed).toBe(0);
    expect(band.spacesMm).toBeUndefined();
    expect(band.sentence).toContain('their best places lie from 20 to 100 mm');
  });

  test('is tried lens by lens in the pairing as it stands', () => {
    const candidates: Candidate[] = [
      { name: 'bent', lens: BENT },
      { name: 'the same turned round', lens: reversed(BENT) },
    ];
    const evaluation = evaluate(pairingWith({ glass: undefined, focalLengthMm: 198 }));
    const [bent, turned] = [...trying(evaluation, candidates, { fromMm: 20, toMm: 85, count: 2 })] as [Tried, Tried];
    expect(bent.ways[0][1]?.oneFrame).toBeGreaterThan(0.7);
    expect(turned.ways[1][1]?.oneFrame).toBeCloseTo(bent.ways[0][1]?.oneFrame ?? 0, 9);
    expect(bandOf([bent, turned], 'one frame', 0).agreed).toBeUndefined();
  });
});

test('of which even the best leaves nothing is told so', () => {
  const { sentence } = bandOf([tried('a', [0.05, 0.03, 0.02], [0.01, 0.01, 0.01])], 'one frame', 0);
  expect(sentence).toContain('leaves next to nothing of this detail');
  expect(sentence).toContain('the one lens of this class that can be made says so');
});

describe('the best place', () => {
  test('is that of least blur where next to nothing is left of the contrast', () => {
    const points = [0.02, 0.11, 0.05].map((oneFrame, i) => ({
      infinitySpaceMm: 10 * i,
      oneFrame,
      stack: 0,
      oneFrameBlurUm: [90, 80, 20][i] as number,
      cornerLight: 1,
    }));
    expect(bestPlace(points, 'one frame').point.infinitySpaceMm).toBe(20);
  });

  test('is told with the stretch about it that is within a tenth, not with islands beyond', () => {
    const points = [0.95, 0.5, 0.91, 1, 0.92, 0.85, 0.99].map((oneFrame, i) => ({
      infinitySpaceMm: 10 * i,
      oneFrame,
      stack: 0,
      cornerLight: 1,
    }));
    expect(bestPlace(points, 'one frame')).toEqual({
      point: points[3],
      contrast: 1,
      withinMm: [20 - 10 * (0.01 / 0.41), 40 + 10 * (0.02 / 0.07)].map((x) => expect.closeTo(x, 9)),
    });
  });
});
