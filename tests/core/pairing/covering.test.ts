import { describe, expect, it } from 'vitest';
import { evaluate, numberIn } from '../../../core/index.ts';
import { type Change, pairingOf } from './covering-rig.ts';

/** Shortest relays that light the corners, for openings whose light is known without looking for it. */

const shortest = (change: Change) => {
  const evaluation = evaluate(pairingOf({ focalLengthMm: 200, ...change }));
  return { told: evaluation.answers.shortestCoveringFocalLengthMm, evaluation };
};
const mm = (change: Change): number => numberIn(shortest(change).told) as number;

describe('the shortest relay that lights the corners', () => {
  it('with all openings before the relay is the corner over the slope that is still lit, or the field asks for more', () => {
    const { evaluation } = shortest({ rim: 20 });
    // The lit circle grows with the focal length: 20 mm of half-diagonal over that of 200 mm.
    const lit = numberIn(evaluation.answers.litCircleMm) as number;
    expect(mm({ rim: 20 })).toBeCloseTo((200 * 40) / lit, 6);
    // The field reaches 40 mm at 200 · 40 / 22.
    expect(mm({ rim: 20, field: 22 })).toBeCloseTo((200 * 40) / 22, 6);
    expect(mm({ rim: 20, field: 200 })).toBeCloseTo((200 * 40) / lit, 6);
  });

  it('is at its own threshold when it is put in the place of this one', () => {
    for (const change of [
      { rim: 16, stops: [{ diameterMm: 60, fromSensorMm: 20 }] },
      { rim: 16, offset: 3 },
      { rim: 16, offset: -3, lit: 0.3 },
    ]) {
      const f = mm(change);
      const { stops = [], offset, lit = 0.5 } = { ...change } as Parameters<typeof shortest>[0];
      const there = evaluate({
        objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0 },
        relay: { kind: 'tube-lens', focalLengthMm: f, clearApertureMm: 16, frontPrincipalPlaneFromRimMm: 0 },
        sensor: { widthMm: 32, heightMm: 24, pixelPitchUm: 4 },
        infinitySpaceMm: 60,
        stops,
        ...(offset === undefined ? {} : { sensorOffsetMm: offset }),
      });
      expect(numberIn(there.answers.cornerIllumination)).toBeCloseTo(lit, 6);
    }
  });

  it('is no shorter than the place of a ring behind it, the field, or 5 mm', () => {
    const wide = { diameterMm: 400, fromSensorMm: 0 };
    const near = { rim: 400, space: 0 };
    expect(mm({ ...near, stops: [{ ...wide, fromSensorMm: 150 }] })).toBeCloseTo(150, 6);
    expect(mm({ ...near, stops: [{ ...wide, fromSensorMm: 150 }], offset: 10 })).toBeCloseTo(140, 6);
    expect(mm({ ...near, stops: [wide] })).toBe(5);
    expect(mm({ ...near, field: 20, stops: [wide] })).toBeCloseTo(400, 6);
  });

  it('is none where a ring before the sensor shades the corners whatever the relay', () => {
    // A hole of 2 mm, 30 mm before a sensor of 40 mm: relays of up to 5 m have beams far from it at the corner.
    expect(shortest({ stops: [{ diameterMm: 2, fromSensorMm: 30 }] }).told.state).toBe('none');
  });
});
