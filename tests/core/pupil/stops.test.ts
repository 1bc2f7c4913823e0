import { describe, expect, it } from 'vitest';
import { type SeenStops, seenAlike, seenStops } from '../../../core/pupil/stops.ts';
import { behind, pupil, rigWith, rim, ring } from './plain-rig.ts';

describe('a stop as it is seen in the pupil', () => {
  // F = 100 - 50 + 100 x 50 / 100 = 50 + 50 = 100, c = -50 / (100 x 100): beams meet 200 mm from the pupil.
  const crossed = (diameterMm: number) =>
    seenStops(
      rigWith([pupil(10), rim(diameterMm)], {
        infinitySpaceMm: 300,
        principalPlaneFromRimMm: -200,
        relayFocalLengthMm: 100,
        sensorOffsetMm: -50,
      }),
    );

  it('is upside down beyond the place where beams meet, and as wide as what it lets through', () => {
    // At 300 mm the beam is half as wide as in the pupil and has changed sides: A = 1 - 300 / 200.
    const { walk, radius, fieldSlope } = crossed(6);
    expect(walk[1]).toBeCloseTo(600, 9);
    expect(radius[1]).toBeCloseTo(6, 12);
    expect(fieldSlope).toBe(Number.POSITIVE_INFINITY);
  });

  it('there limits the axial beam only where it is narrower than the beam', () => {
    expect(crossed(6).limiting).toBe(0);
    expect(crossed(4).limiting).toBe(1);
  });

  it('where beams seem to come from passes a field, though it stands before the pupil', () => {
    // F = 100 + 100 - 100 = 100, c = 100 / (100 x 100): the beams seem to come from 100 mm before the pupil.
    const seen = seenStops(
      rigWith([pupil(10), ring('ring', 8, 50)], {
        infinitySpaceMm: 250,
        exitPupilFromShoulderMm: 150,
        relayFocalLengthMm: 100,
        sensorOffsetMm: 100,
      }),
    );
    expect(seen.fieldSlope).toBeCloseTo(4 / 100, 12);
    expect(seen.fieldStop).toBe(1);
    expect(seen.stopOf).toEqual([0]);
  });

  it('of several frames is the narrowest, wherever it is listed, and of equal ones the first', () => {
    const frames = (...diameters: number[]) => seenStops(rigWith([pupil(10), ...diameters.map((d, i) => behind(`frame ${i}`, d, 0))]));
    expect(frames(20, 24)).toMatchObject({ fieldSlope: 0.05, fieldStop: 1 });
    expect(frames(24, 20)).toMatchObject({ fieldSlope: 0.05, fieldStop: 2 });
    expect(frames(20, 20)).toMatchObject({ fieldSlope: 0.05, fieldStop: 1 });
  });

  it('that is as wide as the pupil leaves the pupil to limit the beam', () => {
    expect(seenStops(rigWith([pupil(10), ring('ring', 10, 30)])).limiting).toBe(0);
  });
});

describe('two rigs whose stops look alike from the pupil', () => {
  const seen: SeenStops = { walk: [0, -60, 12], radius: [5, 27, 31], fieldSlope: 0.05, limiting: 0, stopOf: [0, 1, 3], fieldStop: 2 };
  it('are alike in every number', () => {
    expect(seenAlike(seen, { ...seen, walk: [...seen.walk], radius: [...seen.radius], stopOf: [...seen.stopOf] })).toBe(true);
  });
  const others: [string, Partial<SeenStops>][] = [
    ['a frame', { fieldSlope: 0.051 }],
    ['which stop is the frame', { fieldStop: 3 }],
    ['which one limits', { limiting: 1 }],
    ['one stop more', { radius: [5, 27, 31, 40], walk: [0, -60, 12, 13], stopOf: [0, 1, 3, 4] }],
    ['the last opening', { radius: [5, 27, 31 + 1e-12] }],
    ['where the middle one goes', { walk: [0, -60.000001, 12] }],
    ['which stop a disc is', { stopOf: [0, 1, 4] }],
  ];
  it.each(others)('are not where they differ in %s', (_, other) => {
    expect(seenAlike(seen, { ...seen, ...other })).toBe(false);
    expect(seenAlike({ ...seen, ...other }, seen)).toBe(false);
  });
});
