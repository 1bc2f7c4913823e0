import { figure, Gap, openFigure, step } from '../figure.ts';
import { circleInRectangle } from './circle.ts';
import { systemMagnification } from './first-order.ts';
import { correctedCircleMm, sharpCircleMm } from './image-circles.ts';
import { height, width } from './leaves.ts';
import { litCircleMm } from './light.ts';
import { opticalDetailMegapixels, pixelCount } from './resolution.ts';

const shareFigure = <const Id extends string>(
  id: Id,
  circle: typeof correctedCircleMm | typeof litCircleMm | typeof sharpCircleMm,
  symbol: string,
  words: string,
) => {
  const area = step({
    id: `${id}Area`,
    symbol: `A_${symbol}`,
    unit: 'mm²',
    words: 'area of the sensor inside that circle, closed form',
    needs: [circle, width, height],
    of: (d: number, W: number, H: number) => circleInRectangle(Math.min(d, W + H) / 2, W, H),
  });
  return figure({
    id,
    unit: '1',
    symbol: `q_${symbol}`,
    words,
    source: 'area that a circle shares with a rectangle, closed form',
    needs: [area, width, height],
    of: (A, W, H) => Math.min(1, A / (W * H)),
    as: (A, W, H) => `min(1, ${A} / (${W} × ${H}))`,
    bounds: [0, 1],
  });
};

export const correctedShare = shareFigure(
  'correctedShare',
  correctedCircleMm,
  'cor',
  "share of the sensor inside the objective's corrected field",
);
export const litShare = shareFigure('litShare', litCircleMm, 'lit', 'share of the sensor that gets at least the threshold of the light');
export const sharpShare = shareFigure('sharpShare', sharpCircleMm, 'sharp', 'share of the sensor inside the sharp circle');

const leastKnown = (a: number | Gap, b: number | Gap, c: number | Gap): number =>
  Math.min(
    typeof a === 'number' ? a : Number.POSITIVE_INFINITY,
    typeof b === 'number' ? b : Number.POSITIVE_INFINITY,
    typeof c === 'number' ? c : Number.POSITIVE_INFINITY,
  );

export const coveredShare = openFigure({
  id: 'coveredShare',
  unit: '1',
  symbol: 'q',
  words: 'the smallest of the known shares; an unknown circle does not count as passing',
  source: 'the limit that bites',
  needs: [correctedShare, litShare, sharpShare],
  of: (a, b, c) => {
    const least = leastKnown(a, b, c);
    return least < Number.POSITIVE_INFINITY ? least : (Gap.among([a, b, c]) ?? least);
  },
  as: (...shares) => `min(${shares.filter(Boolean).join(', ')})`,
  bounds: [0, 1],
});

export const goodFieldMm = openFigure({
  id: 'goodFieldMm',
  unit: 'mm',
  symbol: 'd_g',
  words:
    'diameter at the subject of the smallest known circle: corrected, lit and sharp inside it; an unknown circle does not count as passing',
  source: 'the limit that bites, over the magnification',
  needs: [correctedCircleMm, litCircleMm, sharpCircleMm, systemMagnification],
  of: (corrected, lit, sharp, m) => {
    const known = typeof corrected === 'number' || typeof lit === 'number' || typeof sharp === 'number';
    if (!known || typeof m !== 'number') return Gap.among([corrected, lit, sharp, m]) as Gap;
    return leastKnown(corrected, lit, sharp) / m;
  },
  as: (corrected, lit, sharp, m) => `min(${[corrected, lit, sharp].filter(Boolean).join(', ')}) / ${m}`,
});

export const recordedDetailMegapixels = figure({
  id: 'recordedDetailMegapixels',
  unit: 'MP',
  symbol: 'n_rec',
  words: 'samples with detail in them that end up in the file: the smaller of optical detail and pixels, times the covered share',
  source: 'sampling theorem',
  needs: [opticalDetailMegapixels, pixelCount, coveredShare],
  of: (optical, pixels, share) => Math.min(optical, pixels) * share,
  as: (optical, pixels, share) => `min(${optical}, ${pixels}) × ${share}`,
});
