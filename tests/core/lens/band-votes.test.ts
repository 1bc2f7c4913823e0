import { describe, expect, it } from 'vitest';
import { evaluate } from '../../../core/index.ts';
import { type Band, bandOf, type Tried, trying } from '../../../core/lens/band.ts';
import type { SpacingPoint } from '../../../core/lens/spacing.ts';
import type { SharpFocus } from '../../../core/pairing/schema.ts';
import { BENT } from '../contrast/lenses.ts';
import { pairingWith } from './rigs.ts';

const point = (infinitySpaceMm: number, contrast: number, blur?: number): SpacingPoint => ({
  infinitySpaceMm,
  oneFrame: contrast,
  stack: contrast,
  ...(blur === undefined ? {} : { oneFrameBlurUm: blur, stackBlurUm: blur / 2 }),
  cornerLight: 1,
});

/** A candidate of one place, with its best contrasts as listed and turned round, and the stretches about them. */
const lens = (listed: number, turned: number, within: readonly [number, number] = [40, 60], at = 50): Tried => {
  const points = [point(at, listed, 4), point(at, turned, 8)] as const;
  const [a, b] = points;
  return {
    name: 'a lens',
    ways: [[a], [b]],
    best: [
      { point: a, contrast: listed, withinMm: within },
      { point: b, contrast: turned, withinMm: within },
    ],
  };
};
const band = (tried: readonly Tried[], doubt = 0, focus: SharpFocus = 'one frame'): Band => bandOf(tried, focus, doubt);

describe('a way round', () => {
  it('is better by more than a twentieth, or no better', () => {
    const edge = 0.8 * (1 + 0.05);
    expect(band([lens(edge, 0.8)]).agreed).toBeUndefined();
    expect(band([lens(0.8, edge)]).agreed).toBeUndefined();
    expect(band([lens(0.8 * 1.0502, 0.8)]).agreed).toBe(0);
    expect(band([lens(0.8, 0.8 * 1.0502)]).agreed).toBe(1);
  });

  it('may be the other one for all of them', () => {
    const told = band([lens(0.2, 0.7), lens(0.3, 0.701)], 12);
    expect(told.agreed).toBe(1);
    expect(told.sentence).toBe(
      'Male thread toward the camera: all 2 lenses of this class that were worked out agree on that, and between 40 and 60 mm every one of them is within a tenth of its best. ' +
        'At its best such a lens keeps 70 % of the contrast in the worst point of the picture. To be sure of yours, photograph the same corner both ways round, and keep the sharper. ' +
        'Where the exit pupil lies is known to ±12 mm only, and the best place moves with it: locate it, or try some places.',
    );
  });

  it.each<[string, Tried[], string]>([
    [
      'two for one, one for the other',
      [lens(0.8, 0.3), lens(0.8, 0.3), lens(0.3, 0.8)],
      '2 want the male thread toward the objective and 1 wants the male thread toward the camera',
    ],
    ['one for one, one without', [lens(0.8, 0.3), lens(0.5, 0.5)], '1 wants the male thread toward the objective and 1 does not care'],
    [
      'two for the other, two without',
      [lens(0.3, 0.8), lens(0.3, 0.8), lens(0.5, 0.5), lens(0.6, 0.6)],
      '2 want the male thread toward the camera and 2 do not care',
    ],
    ['nobody for any', [lens(0.5, 0.5)], '1 does not care'],
  ])('is voted on where they differ: %s', (_, tried, votes) => {
    const told = band(tried, 12);
    expect(told).not.toHaveProperty('agreed');
    expect(told).not.toHaveProperty('spacesMm');
    // Where nothing is advised the pupil's place is no matter.
    expect(told.sentence).toBe(
      `Lenses of this class do not agree which way round is sharper: of ${tried.length}, ${votes}. So photograph the same corner both ways round, and keep the sharper.`,
    );
  });
});

describe('where all agree on the way round', () => {
  it('stretches that touch have a place in common, others have none', () => {
    expect(band([lens(0.8, 0.2, [20, 60]), lens(0.8, 0.2, [60, 99])]).spacesMm).toEqual([60, 60]);
    const apart = band([lens(0.8, 0.2, [20, 59], 30), lens(0.8, 0.2, [60, 99], 70)]);
    expect(apart).not.toHaveProperty('spacesMm');
    expect(apart.sentence).toContain(
      'agree on that, but they do not agree how far from the objective: their best places lie from 30 to 70 mm',
    );
  });

  it('places are told in whole millimetres, the nearest', () => {
    expect(band([lens(0.8, 0.2, [40.6, 59.6])]).sentence).toContain('says so, and between 41 and 60 mm');
  });

  it('less contrast than a tenth is next to nothing', () => {
    expect(band([lens(0.1, 0.01)]).sentence).toContain('keeps 10 % of');
    expect(band([lens(0.1005, 0.01)]).sentence).toContain('keeps 10 % of');
    expect(band([lens(0.0999, 0.01)]).sentence).toContain('next to nothing');
    // The best of them counts.
    expect(band([lens(0.05, 0.01), lens(0.5, 0.01)]).sentence).toContain('keeps 5 % to 50 % of');
  });
});

describe('the least and the greatest over the lenses', () => {
  it('is of the blur in one frame, or of a stack', () => {
    expect(band([lens(0.8, 0.3)]).ways[1][0]?.blurUm).toEqual([8, 8]);
    expect(band([lens(0.8, 0.3)], 0, 'stack').ways[1][0]?.blurUm).toEqual([4, 4]);
  });
  it('has no blur where one of them gets no light', () => {
    const dark: Tried = { ...lens(0.8, 0.3), ways: [[point(50, 0)], [point(50, 0.3, 6)]] };
    const { ways } = band([lens(0.8, 0.3), dark]);
    expect(ways[0][0]).toStrictEqual({ infinitySpaceMm: 50, contrast: [0, 0.8] });
    expect(ways[1][0]).toStrictEqual({ infinitySpaceMm: 50, contrast: [0.3, 0.3], blurUm: [6, 8] });
  });
});

describe('lenses are tried', () => {
  const evaluation = evaluate(pairingWith({ glass: undefined, focalLengthMm: 198 }));
  const residuals = { some: 'thing' } as never;

  it('over evenly spaced places, with what is left of their faults where that is known', () => {
    const [first, second] = [
      ...trying(
        evaluation,
        [
          { name: 'as made', lens: BENT, residuals },
          { name: 'as listed', lens: BENT },
        ],
        { fromMm: 20, toMm: 100, count: 2 },
      ),
    ] as [Tried, Tried];
    for (const way of [0, 1] as const) expect(first.ways[way].map((p) => p.infinitySpaceMm)).toEqual([20, 100]);
    // Weak side first such a lens is by far the better at 100 mm.
    expect(first.ways[0][1]?.oneFrame).toBeGreaterThan(2 * (first.ways[1][1]?.oneFrame as number));
    for (const way of [0, 1] as const) expect(first.ways[way]).toContain(first.best[way].point);
    expect(first.residuals).toBe(residuals);
    expect(second).not.toHaveProperty('residuals');
  });

  it('at one place, and at three', () => {
    const spaces = (count: number) =>
      [...trying(evaluation, [{ name: 'one', lens: BENT }], { fromMm: 20, toMm: 100, count })][0]?.ways[1].map((p) => p.infinitySpaceMm);
    expect(spaces(1)).toEqual([20]);
    expect(spaces(3)).toEqual([20, 60, 100]);
  });
});
