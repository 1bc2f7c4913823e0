import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cut, cuts, report, seenStops } from '../../../core/index.ts';
import { random } from '../../support/random.ts';
import { between, inFocus, offFocus, seeded } from '../support/arbitrary-train.ts';
import { pairingOf, rigOf } from '../support/as-core.ts';
import { randomOffset, randomTrain } from '../support/random-train.ts';
import { isClear, lightByQuadrature, limitsOf, type Train } from '../support/train.ts';

/** A height on the sensor at which some light is lost. */
const lossy = (train: Train, share: number): number => {
  const { onset, cutoff } = limitsOf(train);
  return onset + share * (Math.min(cutoff, 60) - onset);
};

/** The train with the stop of that name made to another width. */
function withRadius(train: Train, stop: string, radius: number): Train {
  if (stop === 'rim') return { ...train, rimRadius: radius };
  if (stop === 'aperture') return { ...train, entrancePupil: { radius, depth: train.entrancePupil?.depth ?? 0 } };
  return { ...train, rings: train.rings.map((ring, i) => (stop === `ring ${i}` ? { ...ring, radius } : ring)) };
}

/** The train without that stop: as good as one so wide that it never cuts. */
const without = (train: Train, stop: string): Train => (stop === 'pupil' ? { ...train, pupilRadius: 1e4 } : withRadius(train, stop, 1e4));

const cutsOf = (train: Train, r: number): Cut[] => cuts(rigOf(train), seenStops(rigOf(train)), r);

/** In mm of the pupil: what rounding may hide. */
const SLACK = 1e-7;
const NEAR = 1e-3;

for (const [name, trains, seed] of [
  ['with the sensor at the focus', inFocus, 100],
  ['with the sensor off the focus', offFocus, 200],
] as const) {
  describe(`the single changes that clear the corner, ${name}`, () => {
    it('a diameter clears it, and 0.1 % less does not', () => {
      let found = 0;
      fc.assert(
        fc.property(trains, between(0.02, 0.98), (train, share) => {
          const r = lossy(train, share);
          if (!(r > limitsOf(train).onset)) return;
          for (const { stop, clearsAt } of cutsOf(train, r)) {
            if (clearsAt.diameterMm === undefined) continue;
            found++;
            const radius = clearsAt.diameterMm / 2;
            expect(isClear(withRadius(train, stop, radius), r, SLACK)).toBe(true);
            expect(isClear(withRadius(train, stop, radius * (1 - NEAR)), r, SLACK)).toBe(false);
          }
        }),
        seeded(seed + 1),
      );
      if (process.env.RUNS === undefined) expect(found).toBeGreaterThan(80);
    });

    it('no diameter is named only where none would do', () => {
      let found = 0;
      fc.assert(
        fc.property(trains, between(0.02, 0.98), (train, share) => {
          const r = lossy(train, share);
          for (const { stop, clearsAt } of cutsOf(train, r)) {
            if (clearsAt.diameterMm !== undefined || stop === 'pupil') continue;
            found++;
            expect(isClear(without(train, stop), r, -SLACK)).toBe(false);
          }
        }),
        seeded(seed + 2),
      );
      if (process.env.RUNS === undefined) expect(found).toBeGreaterThan(80);
    });

    it('an infinity space clears it, and 0.1 % of it toward where it stands does not', () => {
      let found = 0;
      fc.assert(
        fc.property(trains, between(0.02, 0.7), (train, share) => {
          const r = lossy(train, share);
          const space = cutsOf(train, r)[0]?.clearsAt.infinitySpaceMm;
          if (space === undefined) return;
          found++;
          expect(isClear({ ...train, space }, r, SLACK)).toBe(true);
          const back = space + Math.sign(train.space - space) * NEAR * Math.max(1, space);
          expect(isClear({ ...train, space: back }, r, SLACK)).toBe(false);
          for (const ring of train.rings) if (ring.from === 'shoulder') expect(ring.at).toBeLessThanOrEqual(space);
        }),
        seeded(seed + 3),
      );
      if (process.env.RUNS === undefined) expect(found).toBeGreaterThan(20);
    });

    it('no infinity space is named only where none would do', () => {
      let found = 0;
      fc.assert(
        fc.property(trains, between(0.02, 0.98), (train, share) => {
          const r = lossy(train, share);
          const cut = cutsOf(train, r)[0];
          if (!cut || cut.clearsAt.infinitySpaceMm !== undefined) return;
          found++;
          const least = Math.max(0, ...train.rings.flatMap((ring) => (ring.from === 'shoulder' ? [ring.at] : [])));
          for (let space = least; space < 600; space += 0.7) expect(isClear({ ...train, space }, r, -1e-3)).toBe(false);
        }),
        seeded(seed + 4, Math.min(100, Number(process.env.RUNS ?? 100))),
      );
      if (process.env.RUNS === undefined) expect(found).toBeGreaterThan(20);
    });

    it('each stop has its own onset, and the share of the loss that comes back without it', () => {
      let found = 0;
      fc.assert(
        fc.property(trains, between(0.05, 0.95), (train, share) => {
          const r = lossy(train, share);
          const light = lightByQuadrature(train, r);
          if (light > 0.98) return;
          for (const { stop, onsetRadiusMm, shareOfCornerLoss } of cutsOf(train, r)) {
            found++;
            const back = lightByQuadrature(without(train, stop), r);
            expect(shareOfCornerLoss).toBeCloseTo(Math.min(1, Math.max(0, (back - light) / (1 - light))), 3);
            // Alone with the stop that limits the axis it begins to cut there; the one that limits, where the first other does.
            const others = [...cutsOf(train, r).map((c) => c.stop), 'pupil'].filter((s) => s !== stop);
            const alone = limits(train, stop) ? train : others.reduce((t, s) => (limits(train, s) ? t : without(t, s)), train);
            expect(onsetRadiusMm).toBeLessThan(r);
            expect(limitsOf(alone).onset).toBeCloseTo(onsetRadiusMm, 6);
          }
        }),
        seeded(seed + 5, Math.min(100, Number(process.env.RUNS ?? 100))),
      );
      if (process.env.RUNS === undefined) expect(found).toBeGreaterThan(80);
    });
  });
}

/** Whether that stop is the one that limits the axial beam: without it the beam on the axis is wider. */
function limits(train: Train, stop: string): boolean {
  const area = (t: Train): number => seenStops(rigOf(t)).radius.reduce((a, b) => Math.min(a, b));
  return area(without(train, stop)) > area(train) * (1 + 1e-12);
}

describe('a ring that limits the axis', () => {
  const train: Train = {
    ...randomTrain(random(3), 0, 2),
    ...{ objectiveFocalLength: 20, pupilRadius: 5.6, exitPupil: 0, space: 90, rimRadius: 25, plane: 0, focalLength: 200, offset: 0 },
    rings: [{ radius: 5, from: 'shoulder', at: 80 }],
  };
  it('is told before the pupil that it parts from, with the opening that clears the corner', () => {
    const found = cutsOf(train, 14.1);
    expect(found.map((c) => c.stop)).toEqual(['ring 0', 'pupil']);
    // The ring must pass the whole pupil's beam at the corner: 5.6 + 80 x 14.1 / 200, twice.
    expect(found[0]?.clearsAt.diameterMm).toBeCloseTo(2 * (5.6 + (80 * 14.1) / 200), 9);
    // It parts from the pupil once it has walked by what the pupil is wider.
    expect(found[0]?.onsetRadiusMm).toBeCloseTo(((5.6 - 5) / 80) * 200, 9);
  });
});

describe('the report', () => {
  it('tells the same changes', () => {
    const draw = random(41_001);
    let told = 0;
    for (let k = 0; k < 60; k++) {
      const train = randomTrain(draw, k % 2 ? randomOffset(draw) : 0);
      const { onset } = limitsOf(train);
      const r = Math.max(1, onset * draw.between(1.1, 2));
      const answers = report(pairingOf(train, 2 * r)).vignetting.cuts;
      const own = cutsOf(train, r).filter((cut) => cut.onsetRadiusMm < r * (1 - 1e-9));
      expect(answers.map((a) => a.clearsAt?.infinitySpaceMm ?? -1)).toEqual(
        own.map((c) => expect.closeTo(c.clearsAt.infinitySpaceMm ?? -1, 6)),
      );
      expect(answers.map((a) => a.clearsAt?.diameterMm ?? -1)).toEqual(own.map((c) => expect.closeTo(c.clearsAt.diameterMm ?? -1, 6)));
      told += answers.length;
    }
    expect(told).toBeGreaterThan(60);
  });
});
