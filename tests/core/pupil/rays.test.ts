import { describe, expect, it } from 'vitest';
import { report } from '../../../core/index.ts';
import { type Random, random } from '../../support/random.ts';
import { naOf, pairingOf } from '../support/as-core.ts';
import { randomOffset, randomTrain } from '../support/random-train.ts';
import { discsOf, heightAt, limitsOf, narrowest, placesOf, sensorOf, subjectOf, type Train } from '../support/train.ts';

/** Rays along one side of the square about the pupil. */
const ACROSS = 400;

/**
 * Rays that pass every stop on their way to height `r`, as an area of the pupil: one ray at a random
 * place of each cell of a grid over the pupil. A ray runs in two planes at once: in that of the field it
 * goes to `r`, across it to the axis, on straight lines that the relay bends.
 */
function passedArea(train: Train, r: number, draw: Random): number {
  const cell = (2 * train.pupilRadius) / ACROSS;
  // In each plane the height at a stop is linear in that in the pupil: two rays give the line.
  const stops = placesOf(train).map((place) => {
    const along = heightAt(train, place, r, 0);
    return { along, perMm: heightAt(train, place, r, 1) - along, across: heightAt(train, place, 0, 1), square: place.radius ** 2 };
  });
  let passed = 0;
  for (let i = 0; i < ACROSS; i++) {
    for (let j = 0; j < ACROSS; j++) {
      const x = (i + draw.between(0, 1)) * cell - train.pupilRadius;
      const y = (j + draw.between(0, 1)) * cell - train.pupilRadius;
      if (stops.every((s) => (s.along + s.perMm * x) ** 2 + (s.across * y) ** 2 <= s.square)) passed++;
    }
  }
  return passed * cell * cell;
}

/**
 * One standard deviation of that area. Only cells that the border runs through err, each by at most
 * half a cell (a yes or no that is even odds), and independently. A convex border of radius `r` crosses
 * the lines of the grid at most `8 r / cell + 4` times, and so no more cells.
 */
function sampling(train: Train, radius: number): number {
  const cell = (2 * train.pupilRadius) / ACROSS;
  return (cell ** 2 / 2) * Math.sqrt((8 * radius) / cell + 4);
}

const DEVIATIONS = 4;

function compare(train: Train, share: number, draw: Random): number {
  const { onset, cutoff } = limitsOf(train);
  const r = onset + share * (cutoff - onset);
  const whole = passedArea(train, 0, draw);
  const light = passedArea(train, r, draw) / whole;
  const answer = report(pairingOf(train, 2 * r, [r]));
  const told = answer.vignetting.curve[0]?.relativeIllumination ?? Number.NaN;
  const error = (DEVIATIONS * sampling(train, narrowest(discsOf(train, 0)).radius) * (1 + light)) / whole;
  expect(Math.abs(told - light), `${JSON.stringify(train)} at ${r}: core ${told}, rays ${light}`).toBeLessThan(error);
  // The error is small enough to notice 1 % of the light.
  expect(error).toBeLessThan(2.5e-3);
  return told;
}

/** Trains of one kind, in each of which some light is lost. */
function everyTrain(seed: number, count: number, offset: (r: Random) => number, kind: (train: Train, r: Random) => Train): void {
  const draw = random(seed);
  for (let k = 0; k < count; k++) {
    const train = kind(randomTrain(draw, offset(draw)), draw);
    const told = compare(train, 0.1 + (0.8 * (k + 0.5)) / count, draw);
    expect(told).toBeLessThan(1);
    expect(told).toBeGreaterThan(0);
  }
}

const inFocus = (): number => 0;
const as = (train: Train): Train => train;

describe('relative illumination against rays by similar triangles', () => {
  it('agrees with the sensor at the focus', () => everyTrain(31_001, 12, inFocus, as), 30_000);
  it('agrees with the sensor off the focus, either way', () => everyTrain(31_002, 12, randomOffset, as), 30_000);

  it('agrees with the principal plane far off the rim', () => {
    const far = (train: Train, r: Random): Train => ({ ...train, plane: r.chance(0.5) ? r.between(80, 300) : -r.between(20, 200) });
    everyTrain(31_003, 6, inFocus, far);
    everyTrain(31_004, 6, randomOffset, far);
  }, 30_000);

  it('agrees with stops behind the relay', () => {
    const behind = (train: Train, r: Random): Train => ({
      ...train,
      rings: [0.2, 0.6].map((share) => ({
        radius: train.pupilRadius * r.between(0.95, 1.6) * share + r.between(2, 10) * (1 - share),
        from: 'sensor',
        at: share * train.focalLength,
      })),
    });
    everyTrain(31_005, 6, inFocus, behind);
    everyTrain(31_006, 6, randomOffset, behind);
  }, 30_000);

  it('agrees with the exit pupil inside the objective and in front of it', () => {
    const withPupilAt = (exitPupil: number) => (train: Train) => ({ ...train, exitPupil });
    for (const [i, place] of [-70, -25, 15, 60].entries()) everyTrain(31_010 + i, 3, i % 2 ? randomOffset : inFocus, withPupilAt(place));
  }, 30_000);
});

describe('the first order against the same rays', () => {
  it('the subject, its size and the aperture of the light from it', () => {
    const draw = random(31_020);
    for (let k = 0; k < 60; k++) {
      const train = randomTrain(draw, k % 2 ? randomOffset(draw) : 0);
      const { figures } = report(pairingOf(train, 20));
      const value = (id: keyof typeof figures): number => {
        const figure = figures[id];
        return figure.state === 'known' ? figure.value : Number.NaN;
      };
      const height = Math.abs(subjectOf(train, 10).height);
      expect(value('objectFieldDiagonalMm') / (2 * height)).toBeCloseTo(1, 10);
      expect(value('systemMagnification') / (10 / height)).toBeCloseTo(1, 10);

      // The ray from the middle of the subject that just passes, and its sines on either side.
      const marginal = narrowest(discsOf(train, 0)).radius;
      const atPlane = heightAt(train, { radius: 0, l: sensorOf(train) }, 0, marginal);
      expect(value('systemNa') / ((naOf(train) * marginal) / train.pupilRadius)).toBeCloseTo(1, 10);
      expect(value('workingFNumber') / (sensorOf(train) / (2 * Math.abs(atPlane)))).toBeCloseTo(1, 10);
    }
  });
});
