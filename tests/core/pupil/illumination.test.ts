import { describe, expect, it } from 'vitest';
import {
  axisArea,
  beamArea,
  cutoffSlope,
  illuminationsAt,
  onsetOf,
  onsetSlope,
  relativeIllumination,
  slopeAtShare,
} from '../../../core/pupil/illumination.ts';
import { type SeenStops, seenStops } from '../../../core/pupil/stops.ts';
import { behind, pupil, rigWith } from './plain-rig.ts';

/** Discs as they are seen, the first of the smallest limiting. */
const seenAs = (walk: number[], radius: number[], fieldSlope = Number.POSITIVE_INFINITY): SeenStops => ({
  walk,
  radius,
  fieldSlope,
  limiting: radius.indexOf(Math.min(...radius)),
  stopOf: radius.map((_, i) => i),
  fieldStop: undefined,
});

/** Pairs of discs with no round number in them. */
const PAIRS = Array.from({ length: 40 }, (_, i) => seenAs([0.1 * i + 0.37, -31.7 - i / 7], [3.3 + i / 9, 3.4 + i / 6]));

describe('the light of a beam', () => {
  it('is whole up to the very edge of the frame and none beyond, on either side', () => {
    const seen = seenStops(rigWith([pupil(10), behind('frame', 20, 0)]));
    for (const slope of [0.05, -0.05]) expect(beamArea(seen, slope)).toBe(25 * Math.PI);
    for (const slope of [0.0501, -0.0501]) expect(beamArea(seen, slope)).toBe(0);
  });

  it('is to the last digit that on the axis as far as nothing cuts it', () => {
    for (const seen of PAIRS) for (const share of [0.3, 0.77, 1]) expect(beamArea(seen, share * onsetSlope(seen))).toBe(axisArea(seen));
  });

  it('is never told as more than there is', () => {
    for (const seen of PAIRS)
      for (let digit = 6; digit < 16; digit++)
        expect(relativeIllumination(seen, onsetSlope(seen) * (1 + 10 ** -digit))).toBeLessThanOrEqual(1);
  });
});

describe('the slope at which a disc begins to cut', () => {
  it('is its room over how far it walks, whichever way it does', () => {
    const seen = seenAs([10, 11, 4, 10], [5, 6, 8, 7]);
    expect([0, 1, 2, 3].map((i) => onsetOf(seen, i))).toEqual([Number.POSITIVE_INFINITY, 1, 0.5, Number.POSITIVE_INFINITY]);
    expect(onsetSlope(seen)).toBe(0.5);
  });

  it('is nowhere for one that stands in the pupil and is as wide as it', () => {
    expect(onsetSlope(seenAs([0, 0], [5, 5]))).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('the slope at which it is dark', () => {
  it('is where the first two discs part, not counting those that stay together', () => {
    // 5 + 6 over 1; 5 + 8 over 6; 6 + 8 over 7.
    expect(cutoffSlope(seenAs([10, 11, 4], [5, 6, 8]))).toBe(2);
    expect(cutoffSlope(seenAs([10, 10], [5, 6]))).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('the slope at which a share is left', () => {
  // Two unit discs a radius apart share 2π/3 - √3/2 of π: any book of geometry.
  const share = 2 / 3 - Math.sqrt(3) / 2 / Math.PI;

  it('is where the discs lie as far apart as geometry says', () => {
    expect(slopeAtShare(seenAs([0, 1], [1, 1]), share)).toBeCloseTo(1, 11);
    expect(slopeAtShare(seenAs([0, 20], [1, 1]), share)).toBeCloseTo(1 / 20, 12);
  });

  it('is the edge of the frame where that comes first, before the light falls or after', () => {
    expect(slopeAtShare(seenAs([0, 1], [1, 1], 0.6), share)).toBe(0.6);
    expect(slopeAtShare(seenAs([0, 1], [1, 3], 1.5), share)).toBe(1.5);
    expect(slopeAtShare(seenAs([0], [1], 1.5), share)).toBe(1.5);
  });

  it('is nowhere for discs that stay together', () => {
    expect(slopeAtShare(seenAs([0, 0], [1, 2]), share)).toBe(Number.POSITIVE_INFINITY);
  });

  it('is found down to the last of the light', () => {
    for (const seen of PAIRS)
      for (const left of [1e-6, 1e-3, 0.999, 1 - 1e-6])
        expect(relativeIllumination(seen, slopeAtShare(seen, left)) / left).toBeCloseTo(1, 9);
  });
});

describe('the light along the picture', () => {
  const framed = seenStops(rigWith([pupil(10), behind('rim', 12, 40), behind('frame', 20, 0)]));
  const along = (seen: SeenStops, ...slopes: number[]): number[] => [...illuminationsAt(seen, Float64Array.from(slopes))];
  it('is what it is at each place asked for by itself, on either side of the middle, in any order', () => {
    for (const seen of [...PAIRS, framed]) {
      const [onset, dark] = [onsetSlope(seen), cutoffSlope(seen)];
      const slopes = [1.3 * dark, 0, onset + 0.3 * (dark - onset), 0.5 * onset, dark, onset + 0.8 * (dark - onset), onset];
      for (const side of [slopes, slopes.map((slope) => -slope)])
        along(seen, ...side).forEach((light, i) => {
          expect(light).toBeCloseTo(relativeIllumination(seen, side[i] as number), 12);
        });
    }
  });
  it('is 1 to the last digit as far as nothing cuts it, and never more', () => {
    for (const seen of PAIRS) {
      expect(along(seen, onsetSlope(seen), -onsetSlope(seen))).toEqual([1, 1]);
      for (let digit = 6; digit < 16; digit++) expect(along(seen, onsetSlope(seen) * (1 + 10 ** -digit))[0]).toBeLessThanOrEqual(1);
    }
  });
  it('is all there up to the edge of a frame in the picture, and nothing beyond', () => {
    const seen = seenStops(rigWith([pupil(10), behind('frame', 20, 0)]));
    expect(along(seen, 0.05, -0.05, 0.0501, -0.0501)).toEqual([1, 1, 0, 0]);
  });
});
