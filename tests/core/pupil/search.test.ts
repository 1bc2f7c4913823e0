import { describe, expect, it } from 'vitest';
import { numberIn, report } from '../../../core/index.ts';
import { type Random, random } from '../../support/random.ts';
import { pairingOf } from '../support/as-core.ts';
import { randomOffset, randomTrain } from '../support/random-train.ts';
import { isClear, lightByQuadrature, limitsOf, planeOf, type Train } from '../support/train.ts';

/** The border between `yes`, where it holds, and `no`, where it does not. */
function bisect(holds: (x: number) => boolean, yes: number, no: number): number {
  let [a, b] = [yes, no];
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (holds(middle)) a = middle;
    else b = middle;
  }
  return a;
}

/** Heights on the sensor per slope; there is a picture as long as it is positive. */
const scaleOf = (t: Train): number => t.focalLength + t.offset - (planeOf(t) * t.offset) / t.focalLength;

const LONGEST_SPACE = 1500;

/** The greatest space that holds all rings at which the corner is clear, by walking and halving; undefined: none. */
function longestSpace(train: Train, r: number): number | undefined {
  const clear = (space: number): boolean => scaleOf({ ...train, space }) > 0 && isClear({ ...train, space }, r);
  let last: number | undefined;
  const step = 0.5;
  const holdsRings = Math.max(0, ...train.rings.map((ring) => (ring.from === 'shoulder' ? ring.at : 0)));
  for (let space = holdsRings; space <= LONGEST_SPACE; space += step) if (clear(space)) last = space;
  if (last === undefined) return undefined;
  return last + step > LONGEST_SPACE ? Number.POSITIVE_INFINITY : bisect(clear, last, last + step);
}

const SHORTEST_FOCAL_LENGTH = 5;
const LONGEST_FOCAL_LENGTH = 5000;

/** The shortest focal length that gives height `r` the share of the light; stops behind stay behind. */
function shortestFocalLength(train: Train, r: number, share: number): number | undefined {
  const lit = (focalLength: number): boolean => {
    const at = { ...train, focalLength };
    return scaleOf(at) > 0 && (limitsOf(at).onset >= r || (limitsOf(at).cutoff > r && lightByQuadrature(at, r) >= share));
  };
  const behind = train.rings.map((ring) => (ring.from === 'sensor' ? ring.at - train.offset : 0));
  const first = Math.max(SHORTEST_FOCAL_LENGTH, ...behind) * (1 + 1e-9);
  let before = first;
  for (let f = first; f < LONGEST_FOCAL_LENGTH; f *= 1.01) {
    if (lit(f)) return f === first ? f : bisect(lit, f, before);
    before = f;
  }
  return undefined;
}

/** Trains and diagonals with every kind of stop, some within reach of being clear. */
function cases(
  seed: number,
  count: number,
  offset: (r: Random) => number,
  kind = (t: Train): Train => t,
): { train: Train; diagonal: number }[] {
  const draw = random(seed);
  return Array.from({ length: count }, (_, k) => {
    const train = kind(randomTrain(draw, offset(draw), 2 + (k % 5)));
    const { onset } = limitsOf(train);
    return { train, diagonal: Math.min(60, Math.max(2, 2 * onset * draw.between(0.5, 2.5))) };
  });
}

const inFront = (train: Train): Train => ({ ...train, rings: train.rings.filter((ring) => ring.from === 'shoulder') });
const atFocus = (): number => 0;

describe('the longest unvignetted space', () => {
  it("is the makers' relation where the pupil and the rim are all there is", () => {
    const draw = random(51_001);
    for (let k = 0; k < 50; k++) {
      const exitPupil = draw.between(-30, 30);
      const pupilRadius = draw.between(2, 8);
      const rimRadius = pupilRadius * draw.between(1.2, 4);
      const focalLength = draw.between(100, 400);
      const diagonal = draw.between(10, 50);
      const train: Train = { ...randomTrain(draw, 0, 2), exitPupil, pupilRadius, rimRadius, focalLength };
      const longest = ((2 * rimRadius - 2 * pupilRadius) * focalLength) / diagonal + exitPupil;
      const answer = report(pairingOf(train, diagonal)).figures.longestUnvignettedSpaceMm;
      if (longest < 0) expect(answer.state).toBe('none');
      else expect((numberIn(answer) ?? 0) / longest).toBeCloseTo(1, 9);
    }
  });

  it.each([
    ['with the sensor at the focus', 51_002, atFocus],
    ['with the sensor off the focus', 51_003, randomOffset],
  ] as const)('is what a search finds %s', (_, seed, offset) => {
    const kinds = { known: 0, none: 0 };
    for (const { train, diagonal } of cases(seed, 120, offset)) {
      const found = longestSpace(train, diagonal / 2);
      const told = numberIn(report(pairingOf(train, diagonal)).figures.longestUnvignettedSpaceMm);
      const about = JSON.stringify({ train, diagonal, found, told });
      if (found === undefined) expect(told, about).toBeUndefined();
      else if (found === Number.POSITIVE_INFINITY) expect(told, about).toBeGreaterThan(LONGEST_SPACE - 1);
      else expect(told, about).toBeCloseTo(found, 5);
      kinds[found === undefined ? 'none' : 'known']++;
    }
    expect(kinds.known).toBeGreaterThan(40);
    expect(kinds.none).toBeGreaterThan(10);
  });
});

describe('the shortest covering focal length', () => {
  it.each([
    ['with all stops before the relay, in focus', 52_001, atFocus, inFront],
    ['with all stops before the relay, off the focus', 52_002, randomOffset, inFront],
    ['with stops behind the relay, in focus', 52_003, atFocus, undefined],
    ['with stops behind the relay, off the focus', 52_004, randomOffset, undefined],
  ] as const)('is what a search finds %s', (_, seed, offset, kind) => {
    let known = 0;
    for (const { train, diagonal } of cases(seed, 40, offset, kind)) {
      const found = shortestFocalLength(train, diagonal / 2, 0.5);
      const told = numberIn(report(pairingOf(train, diagonal)).figures.shortestCoveringFocalLengthMm);
      const about = JSON.stringify({ train, diagonal, found, told });
      if (found === undefined) expect(told, about).toBeUndefined();
      else expect(Math.abs((told ?? 0) / found - 1), about).toBeLessThan(1e-4);
      if (found !== undefined) known++;
    }
    expect(known).toBeGreaterThan(20);
  });
});
