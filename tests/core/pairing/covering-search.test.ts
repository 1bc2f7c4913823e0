import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../core/index.ts';
import { evaluatePart } from '../../../core/pairing/evaluate.ts';
import { planFor } from '../../../core/pairing/registry.ts';
import { relativeIllumination } from '../../../core/pupil/illumination.ts';
import { type PlacedStop, type Rig, scaleOf, seenStops } from '../../../core/pupil/stops.ts';
import { type Change, pairingOf } from './covering-rig.ts';

/** Where the shortest relay is looked for: against the light of rigs put up by hand, and against what needs no search. */

const PLAN = planFor(['shortestCoveringFocalLengthMm']);

const told = (change: Change) => evaluatePart(pairingOf(change), PLAN).answers.shortestCoveringFocalLengthMm;
const mm = (change: Change): number | undefined => {
  const answer = told(change);
  return answer && numberIn(answer);
};

/** The corner's light with a relay of `f`, by the stops as they stand. */
function lightAt(f: number, { rim = 54, space = 60, stops = [], offset = 0, size = 1 }: Change): number {
  const placed: PlacedStop[] = stops.map((stop) => ({
    label: '',
    path: '',
    diameterMm: stop.diameterMm as number,
    place: stop.fromSensorMm === undefined ? 'shoulder' : 'sensor',
    atMm: (stop.fromSensorMm ?? stop.fromShoulderMm) as number,
  }));
  const rig: Rig = {
    stops: [
      { label: '', path: '', diameterMm: 10, place: 'pupil', atMm: 0 },
      { label: '', path: '', diameterMm: rim, place: 'relay', atMm: 0 },
      ...placed,
    ],
    infinitySpaceMm: space,
    exitPupilFromShoulderMm: 0,
    principalPlaneFromRimMm: 0,
    relayFocalLengthMm: f,
    sensorOffsetMm: offset,
  };
  const F = scaleOf(rig);
  return F > 0 ? relativeIllumination(seenStops(rig), (20 * size) / F) : 0;
}

/** A hair out of focus, so that it is looked for. */
const HAIR = 1e-7;

describe('the search for the shortest relay', () => {
  it('comes to what needs none with the sensor in the focus, from 5 mm to 5 m', () => {
    for (const [rim, space] of [
      [400, 60],
      [54, 60],
      [20, 100],
      [12, 200],
      [10.4, 700],
      [10, 800],
    ] as const) {
      const direct = mm({ rim, space }) as number;
      expect(lightAt(direct, { rim, space })).toBeCloseTo(0.5, 6);
      expect(mm({ rim, space, offset: HAIR })).toBeCloseTo(Math.max(5, direct), 3);
    }
  });

  it('is not bounded with the sensor in the focus; out of it ends at 5 m', () => {
    // As wide as the beam, the rim lets half through where it stands 0.404 of its width aside: 20 mm over 4.04 mm, times the space.
    const scale = 20 / 4.0397;
    expect(mm({ rim: 10, space: 1005 })).toBeCloseTo(scale * 1005, 0);
    expect(mm({ rim: 10, space: 1015 })).toBeCloseTo(scale * 1015, 0);
    expect(mm({ rim: 10, space: 1005, offset: HAIR })).toBeCloseTo(scale * 1005, 0);
    expect(told({ rim: 10, space: 1015, offset: HAIR })?.state).toBe('none');
    // A sensor of 0.4 mm behind an opening of 400 mm: 0.2 mm over a slope of some 200 mm in 60.
    const tiny = mm({ rim: 400, size: 0.01 }) as number;
    expect(tiny).toBeCloseTo(0.2 / (200 / 60), 2);
    expect(mm({ rim: 400, size: 0.01, offset: HAIR })).toBe(5);
  });

  it('asks of a ring before the relay nothing but its light', () => {
    const near = { rim: 400, space: 300, size: 0.01, stops: [{ diameterMm: 400, fromShoulderMm: 90 }] };
    expect(mm({ ...near, offset: HAIR })).toBe(5);
    expect(mm({ ...near, stops: [...near.stops, { diameterMm: 400, fromSensorMm: 7 }] })).toBe(7);
  });

  it('does not take the picture behind the image of the pupil for one', () => {
    // 3 mm behind the focus the scale is f + 3 - 180 / f: below 0 up to some 12 mm, where an opening of 400 mm would light it.
    const change = { rim: 400, offset: 3 };
    const f = mm(change) as number;
    expect(f).toBeGreaterThan(12);
    expect(lightAt(f, change)).toBeCloseTo(0.5, 6);
    expect(lightAt(f - 0.01, change)).toBeLessThan(0.5);
  });

  it('finds lit lengths that are a fifth from end to end, wherever they lie', () => {
    // The rim darkens shorter ones, the ring before the sensor longer ones.
    let found = 0;
    for (const [rim, space] of [
      [11, 20],
      [10, 31],
      [12, 60],
      [9, 70],
      [10, 97],
      [11, 130],
      [8, 151],
      [10, 203],
    ] as const) {
      const least = mm({ rim, space }) as number;
      const ring = (diameterMm: number): Change => ({ rim, space, stops: [{ diameterMm, fromSensorMm: 0.4 * least }] });
      let [dark, lit] = [1, 100];
      for (let i = 0; i < 40; i++) {
        const middle = (dark + lit) / 2;
        if (lightAt(1.2 * least, ring(middle)) < 0.5) dark = middle;
        else lit = middle;
      }
      const change = ring(lit);
      expect(lightAt(1.25 * least, change)).toBeLessThan(0.5);
      const first = mm(change) as number;
      expect(lightAt(first, change)).toBeCloseTo(0.5, 6);
      expect(first).toBeLessThan(1.1 * least);
      expect(lightAt(first * 0.999, change)).toBeLessThan(0.5);
      // The same from where the field asks for a little less.
      expect(mm({ ...change, field: 8000 / (0.97 * first) })).toBeCloseTo(first, 6);
      found++;
    }
    expect(found).toBe(8);
  });

  it('looks at none that are shorter than the field asks for', () => {
    // A field of 1 mm asks for 8 m; the ring passes half of the corner's beam at some 6 m, and less farther on.
    const ring = (diameterMm: number): Change => ({ rim: 400, space: 0, field: 1, stops: [{ diameterMm, fromSensorMm: 30 }] });
    let [dark, lit] = [38, 42];
    for (let i = 0; i < 40; i++) {
      const middle = (dark + lit) / 2;
      if (lightAt(6000, ring(middle)) < 0.5) dark = middle;
      else lit = middle;
    }
    expect(lightAt(5100, ring(lit))).toBeGreaterThan(0.5);
    expect(lightAt(8000, ring(lit))).toBeLessThan(0.5);
    expect(told(ring(lit))?.state).toBe('none');
  });
});
