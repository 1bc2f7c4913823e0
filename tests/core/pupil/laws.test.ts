import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arcs,
  beamArea,
  cutoffSlope,
  onsetSlope,
  type Rig,
  relativeIllumination,
  report,
  type SeenStops,
  scaleOf,
  seenStops,
  sharedArea,
  slopeAtShare,
} from '../../../core/index.ts';
import { anyTrain, between, inFocus, seeded } from '../support/arbitrary-train.ts';
import { pairingOf, rigOf } from '../support/as-core.ts';
import { limitsOf, planeOf, type Train } from '../support/train.ts';

const seenOf = (train: Train): SeenStops => seenStops(rigOf(train));
/** Slopes from the axis to where it is dark. */
const along = (seen: SeenStops, count = 40): number[] => Array.from({ length: count + 1 }, (_, i) => (cutoffSlope(seen) * i) / count);
const onAxis = (seen: SeenStops): number => beamArea(seen, 0);

describe('light over the field', () => {
  it('never comes back farther out', () => {
    fc.assert(
      fc.property(anyTrain, (train) => {
        const seen = seenOf(train);
        const light = along(seen, 60).map((t) => relativeIllumination(seen, t));
        for (let i = 1; i < light.length; i++) expect(light[i]).toBeLessThanOrEqual((light[i - 1] as number) + 1e-13);
      }),
      seeded(1),
    );
  });

  it('has a root that is concave in the slope, from the axis to the dark', () => {
    fc.assert(
      fc.property(anyTrain, (train) => {
        const seen = seenOf(train);
        const root = along(seen).map((t) => Math.sqrt(relativeIllumination(seen, t)));
        for (let i = 1; i + 1 < root.length; i++) {
          const chord = ((root[i - 1] as number) + (root[i + 1] as number)) / 2;
          expect(root[i]).toBeGreaterThanOrEqual(chord - 1e-12);
        }
      }),
      seeded(2),
    );
  });

  it('is whole up to the onset and less just beyond it, more than none just within the cut-off and none at it', () => {
    fc.assert(
      fc.property(anyTrain, (train) => {
        const seen = seenOf(train);
        const onset = onsetSlope(seen);
        const half = slopeAtShare(seen, 0.5);
        const cutoff = cutoffSlope(seen);
        expect(onset).toBeLessThanOrEqual(half);
        expect(half).toBeLessThanOrEqual(cutoff);
        expect(relativeIllumination(seen, onset)).toBe(1);
        expect(relativeIllumination(seen, onset + 1e-3 * (cutoff - onset))).toBeLessThan(1);
        expect(relativeIllumination(seen, cutoff * (1 - 1e-3))).toBeGreaterThan(0);
        expect(relativeIllumination(seen, cutoff)).toBeLessThan(1e-13);
        expect(relativeIllumination(seen, cutoff * (1 + 1e-12))).toBe(0);
        expect(sharedArea(seen, 1.5 * cutoff)).toEqual([0, 0]);
        expect(arcs(seen, 1.5 * cutoff)).toEqual([]);
      }),
      seeded(3),
    );
  });

  it('begins and ends where the discs of the test say', () => {
    fc.assert(
      fc.property(anyTrain, (train) => {
        const seen = seenOf(train);
        const F = scaleOf(rigOf(train));
        const { onset, cutoff } = limitsOf(train);
        expect((F * onsetSlope(seen)) / onset).toBeCloseTo(1, 8);
        expect((F * cutoffSlope(seen)) / cutoff).toBeCloseTo(1, 8);
      }),
      seeded(4),
    );
  });

  it('has at the slope of a share that share', () => {
    fc.assert(
      fc.property(anyTrain, between(0.02, 0.98), (train, share) => {
        const seen = seenOf(train);
        expect(relativeIllumination(seen, slopeAtShare(seen, share))).toBeCloseTo(share, 9);
      }),
      seeded(5),
    );
  });

  it('is the same on either side of the axis', () => {
    fc.assert(
      fc.property(anyTrain, between(0, 1.1), (train, share) => {
        const seen = seenOf(train);
        const t = share * cutoffSlope(seen);
        expect(relativeIllumination(seen, -t)).toBeCloseTo(relativeIllumination(seen, t), 12);
      }),
      seeded(6),
    );
  });

  it('falls at the rate that is told', () => {
    fc.assert(
      fc.property(anyTrain, between(0.02, 0.98), (train, share) => {
        const seen = seenOf(train);
        const onset = onsetSlope(seen);
        const cutoff = cutoffSlope(seen);
        const t = onset + share * (cutoff - onset);
        const h = 1e-5 * (cutoff - onset);
        const [, rate] = sharedArea(seen, t);
        const difference = (sharedArea(seen, t + h)[0] - sharedArea(seen, t - h)[0]) / (2 * h);
        // Where a disc joins the border within h the rate bends as a root: √h of the scale at most.
        expect(Math.abs(rate - difference)).toBeLessThan(3e-4 * (onAxis(seen) / (cutoff - onset)));
        expect(rate).toBeLessThan(0);
      }),
      seeded(7),
    );
  });

  it('sums its rate to its fall', () => {
    fc.assert(
      fc.property(anyTrain, (train) => {
        const seen = seenOf(train);
        const [from, to] = [onsetSlope(seen), cutoffSlope(seen)];
        const steps = 2000;
        let sum = 0;
        for (let i = 0; i < steps; i++) sum += sharedArea(seen, from + ((to - from) * (i + 0.5)) / steps)[1];
        // A stop far behind the relay may take all of the beam within a few steps.
        expect(Math.abs((sum * (to - from)) / steps / onAxis(seen) + 1)).toBeLessThan(4 / steps);
      }),
      seeded(8, 60),
    );
  });
});

describe('the stops of a train', () => {
  it('cost no light by going: the beam without one is at least as large', () => {
    fc.assert(
      fc.property(anyTrain, between(0, 1.2), (train, share) => {
        const rig = rigOf(train);
        const seen = seenStops(rig);
        const t = share * cutoffSlope(seen);
        rig.stops.forEach((_, i) => {
          const without = seenStops({ ...rig, stops: rig.stops.filter((_, j) => j !== i) });
          expect(beamArea(without, t)).toBeGreaterThanOrEqual(beamArea(seen, t) * (1 - 1e-12));
        });
      }),
      seeded(11),
    );
  });

  it('may stand in the list in any order', () => {
    fc.assert(
      fc.property(anyTrain, between(0, 1.1), fc.infiniteStream(fc.nat()), (train, share, keys) => {
        const rig = rigOf(train);
        const mixed: Rig = {
          ...rig,
          stops: rig.stops
            .map((stop) => ({ stop, key: keys.next().value }))
            .toSorted((a, b) => a.key - b.key)
            .map(({ stop }) => stop),
        };
        const t = share * cutoffSlope(seenStops(rig));
        expect(relativeIllumination(seenStops(mixed), t)).toBeCloseTo(relativeIllumination(seenStops(rig), t), 13);
        expect(onsetSlope(seenStops(mixed))).toBe(onsetSlope(seenStops(rig)));
        expect(cutoffSlope(seenStops(mixed))).toBe(cutoffSlope(seenStops(rig)));
      }),
      seeded(12),
    );
  });

  it('behind the relay do what their paraxial images in front of it do', () => {
    fc.assert(
      fc.property(anyTrain, between(0, 1.1), (train, share) => {
        const rig = rigOf(train);
        const f = train.focalLength;
        // A stop d behind a thin lens, d < f, has its image d f / (f - d) behind it, f / (f - d) as wide.
        const images: Rig = {
          ...rig,
          stops: rig.stops.map((stop) => {
            if (stop.place !== 'sensor') return stop;
            const d = f + train.offset - stop.atMm;
            const wider = f / (f - d);
            return {
              ...stop,
              place: 'shoulder',
              diameterMm: stop.diameterMm * Math.abs(wider),
              atMm: train.exitPupil + planeOf(train) + d * wider,
            };
          }),
        };
        const t = share * cutoffSlope(seenStops(rig));
        expect(relativeIllumination(seenStops(images), t)).toBeCloseTo(relativeIllumination(seenStops(rig), t), 9);
      }),
      seeded(13),
    );
  });

  it('at the focus pass a field and cut no beam', () => {
    fc.assert(
      fc.property(inFocus, between(2, 20), (train, radius) => {
        const framed = { ...train, rings: [...train.rings, { radius, from: 'sensor' as const, at: 0 }] };
        const { cutoff } = limitsOf(train);
        const [open, closed] = [rigOf(train), rigOf(framed)];
        const light = (rig: Rig, r: number): number => relativeIllumination(seenStops(rig), r / scaleOf(rig));
        for (const share of [0.5, 0.999]) expect(light(closed, share * radius)).toBe(light(open, share * radius));
        expect(light(closed, 1.001 * radius)).toBe(0);
        expect(cutoffSlope(seenStops(closed)) * scaleOf(closed)).toBeCloseTo(Math.min(radius, cutoff), 9);
      }),
      seeded(14),
    );
  });
});

describe('the radii of a report', () => {
  it('are those at which its own curve begins to fall, is at half and is dark', () => {
    fc.assert(
      fc.property(anyTrain, (train) => {
        const radius = (id: 'onsetRadiusMm' | 'halfRadiusMm' | 'cutoffRadiusMm'): number => {
          const answer = report(pairingOf(train)).vignetting[id];
          return answer.state === 'known' ? answer.value : Number.NaN;
        };
        const [onset, half, cutoff] = [radius('onsetRadiusMm'), radius('halfRadiusMm'), radius('cutoffRadiusMm')];
        const radiiMm = [onset * (1 - 1e-9), onset + 1e-3 * (cutoff - onset), half, cutoff * (1 - 1e-3), cutoff * (1 + 1e-9)];
        const curve = report(pairingOf(train, 30, radiiMm)).vignetting.curve;
        const [whole, less, atHalf, some, none] = curve.map((p) => p.relativeIllumination);
        expect(whole).toBe(1);
        expect(less).toBeLessThan(1);
        expect(atHalf).toBeCloseTo(0.5, 9);
        expect(some).toBeGreaterThan(0);
        expect(none).toBe(0);
        expect(curve.map((p) => p.radiusMm)).toEqual(radiiMm);
        expect(curve[2]?.lossEv).toBeCloseTo(1, 8);
        expect(curve[4]).not.toHaveProperty('lossEv');
      }),
      seeded(21, Math.min(60, Number(process.env.RUNS ?? 60))),
    );
  });
});
