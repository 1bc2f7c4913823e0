import { describe, expect, it } from 'vitest';
import { relativeIllumination, report, scaleOf, seenStops, sharedArea } from '../../../core/index.ts';
import { type Random, random } from '../../support/random.ts';
import { pairingOf, rigOf } from '../support/as-core.ts';
import { clippingError, sharedByClipping } from '../support/polygons.ts';
import { randomOffset, randomTrain, snugTrain } from '../support/random-train.ts';
import { borderDiscs, discsOf, limitsOf, narrowest, type Train } from '../support/train.ts';

/** What came of one comparison; `ratio` is the difference over the polygons' own error. */
interface Outcome {
  readonly light: number;
  readonly arcs: number;
  readonly ratio: number;
  readonly difference: number;
}

/** Core against the polygons, at height `r`. The discs are those of the test's own geometry. */
function compared(train: Train, r: number, sides: number): Outcome {
  const discs = discsOf(train, r);
  const whole = Math.PI * narrowest(discs).radius ** 2;
  const border = borderDiscs(discs);
  const clipped = sharedByClipping(discs, sides) / whole;
  const rig = rigOf(train);
  const light = relativeIllumination(seenStops(rig), r / scaleOf(rig));
  // An empty border leaves rounding alone; the least is that of sums of a few hundred products.
  const error = Math.max(1e-12, clippingError(discs, border, sides) / whole);
  const difference = Math.abs(light - clipped);
  expect(difference, `${JSON.stringify(train)} at ${r}: core ${light}, polygons ${clipped}`).toBeLessThan(error);
  return { light, arcs: border.size, ratio: difference / error, difference };
}

const throughReport = (train: Train, r: number): number =>
  report(pairingOf(train, 30, [r])).vignetting.curve[0]?.relativeIllumination ?? Number.NaN;

/** A height from a little before the light begins to fall to a little past where it ends. */
function someHeight(r: Random, train: Train): number {
  const { onset, cutoff } = limitsOf(train);
  return r.between(0.8 * Math.min(onset, cutoff), 1.04 * cutoff);
}

const partly = ({ light }: Outcome): boolean => light > 0 && light < 1;

describe('relative illumination against polygon clipping', () => {
  it('agrees with 128-gons in trains of two to eight stops', () => {
    const r = random(20_001);
    const outcomes: Outcome[] = [];
    for (let k = 0; k < 120; k++) {
      const offset = k % 4 === 0 ? randomOffset(r) : 0;
      const snug = k % 3 === 2;
      const train = snug ? snugTrain(r, offset) : randomTrain(r, offset, 2 + (k % 7));
      const height = snug ? r.between(0.05, 0.5) * limitsOf(train).cutoff : someHeight(r, train);
      const outcome = compared(train, height, 128);
      if (k % 5 === 0) expect(throughReport(train, height)).toBeCloseTo(outcome.light, 12);
      outcomes.push(outcome);
    }
    expect(outcomes.filter(partly).length).toBeGreaterThanOrEqual(95);
    expect(outcomes.filter((o) => partly(o) && o.arcs >= 3).length).toBeGreaterThanOrEqual(25);
    expect(outcomes.filter((o) => o.light === 0).length).toBeGreaterThanOrEqual(3);
    expect(outcomes.filter((o) => o.light === 1).length).toBeGreaterThanOrEqual(6);
    const differences = outcomes.filter(partly).map((o) => o.difference);
    expect(differences.toSorted((a, b) => a - b)[differences.length >> 1]).toBeLessThan(1.5e-6);
  }, 60_000);

  it('agrees with 512-gons in a dozen trains, also through the report', () => {
    const r = random(20_002);
    const outcomes: Outcome[] = [];
    for (let k = 0; k < 12; k++) {
      const train = randomTrain(r, k % 3 === 0 ? randomOffset(r) : 0, k % 10 === 0 ? 8 : 2 + (k % 4));
      const { onset, cutoff } = limitsOf(train);
      const height = r.between(onset + 0.05 * (cutoff - onset), cutoff);
      const outcome = compared(train, height, 512);
      expect(throughReport(train, height)).toBeCloseTo(outcome.light, 12);
      outcomes.push(outcome);
    }
    expect(outcomes.filter(partly).length).toBe(12);
    const differences = outcomes.map((o) => o.difference);
    expect(differences.toSorted((a, b) => a - b)[6]).toBeLessThan(2e-8);
  }, 60_000);

  const least = 15;
  const trains = (seed: number): Train[] => {
    const r = random(seed);
    return Array.from({ length: least }, (_, k) => randomTrain(r, 0, 2 + (k % 4)));
  };

  it('where a stop touches the axial beam from outside it: internal tangency', () => {
    for (const train of trains(20_003)) {
      const { onset } = limitsOf(train);
      expect(compared(train, onset, 128).light).toBeCloseTo(1, 12);
      expect(compared(train, 1.01 * onset, 128).light).toBeLessThan(1);
    }
  });

  it('where the last two discs touch: external tangency', () => {
    for (const train of trains(20_004)) {
      const { cutoff } = limitsOf(train);
      expect(compared(train, cutoff, 128).light).toBeLessThan(1e-12);
      expect(compared(train, 1.000001 * cutoff, 128).light).toBe(0);
    }
  });

  it('where discs coincide: a ring in the exit pupil, as wide as it', () => {
    for (const train of trains(20_005)) {
      const exitPupil = Math.abs(train.exitPupil);
      const ring = { radius: train.pupilRadius, from: 'shoulder', at: exitPupil } as const;
      const doubled = { ...train, exitPupil, space: train.space + exitPupil, rings: [...train.rings, ring, ring] };
      const { onset, cutoff } = limitsOf(doubled);
      const height = (onset + 2 * cutoff) / 3;
      const outcome = compared(doubled, height, 128);
      expect(partly(outcome)).toBe(true);
      const once = rigOf({ ...doubled, rings: train.rings });
      expect(outcome.light).toBeCloseTo(relativeIllumination(seenStops(once), height / scaleOf(once)), 13);
    }
  });

  it('where discs are of equal radius: no beam but the axial one is whole', () => {
    for (const train of trains(20_006)) {
      const equal = { ...train, rimRadius: train.pupilRadius, rings: train.rings.map((ring) => ({ ...ring, radius: 3 * ring.radius })) };
      const { cutoff } = limitsOf(equal);
      for (const share of [0.1, 0.5, 0.9]) expect(partly(compared(equal, share * cutoff, 128))).toBe(true);
    }
  });

  it('is exact where the numbers are: touching, empty and nested discs', () => {
    expect(sharedArea({ walk: [0, 2], radius: [1, 1] }, 1)[0]).toBe(0);
    expect(sharedArea({ walk: [0, 4, 1], radius: [1, 1, 9] }, 1)[0]).toBe(0);
    expect(sharedArea({ walk: [0, 1], radius: [1, 2] }, 1)[0]).toBeCloseTo(Math.PI, 14);
    expect(sharedArea({ walk: [0, 0], radius: [1, 1] }, 7)[0]).toBeCloseTo(Math.PI, 14);
    // Two unit discs one radius apart: 2π/3 - √3/2, any book of geometry.
    expect(sharedArea({ walk: [0, 1], radius: [1, 1] }, 1)[0]).toBeCloseTo((2 * Math.PI) / 3 - Math.sqrt(3) / 2, 14);
  });
});
