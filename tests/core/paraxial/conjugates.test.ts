import { describe, expect, it } from 'vitest';
import { divergence, focalLengthForScale, gap, imageScale, thinLens, train } from '../../../core/index.ts';
import { chiefRaySlope, offsetFocusedOn } from '../../../core/paraxial/conjugates.ts';
import { random } from '../../support/random.ts';

describe('a sensor off the focus', () => {
  it('gathers a beam that diverges as told, at the height that the scale tells', () => {
    const r = random(62_001);
    for (let k = 0; k < 100; k++) {
      const [f, s, z] = [r.between(80, 450), r.between(-10, 15), r.between(-60, 300)];
      const toSensor = train(gap(z), thinLens(f), gap(f + s));
      const c = divergence(f, s, z);
      const t = r.between(-0.2, 0.2);
      // Rays of the slope t + c p from all over the pupil land at one height, t times the scale.
      for (const p of [-5, 0, 3]) expect(toSensor.a * p + toSensor.b * (t + c * p)).toBeCloseTo(imageScale(f, s, z) * t, 9);
      expect(imageScale(f, s, z)).toBeCloseTo(toSensor.b, 9);
    }
  });

  it('is at the focus with no offset', () => {
    expect(imageScale(200, 0, 123)).toBe(200);
    expect(divergence(200, 0, 123)).toBe(0);
  });

  it('has no focal length for a scale that every one exceeds', () => {
    // f + s - z s/f with s = 10, z = -20 is least at √200 = 14.14: 38.28.
    expect(focalLengthForScale(38.2, 10, -20)).toBe(0);
    const f = focalLengthForScale(38.3, 10, -20);
    expect(f).toBeGreaterThan(14.14);
    expect(imageScale(f, 10, -20)).toBeCloseTo(38.3, 12);
    // The border itself: with z = -10, 30 is had at 10 and nowhere else.
    expect(focalLengthForScale(30, 10, -10)).toBe(10);
    // f² + (10 - F) f - z s = 0: f² + 10 f + 10 = 0 has only negative roots.
    expect(focalLengthForScale(0, 10, -1)).toBe(0);
  });

  it('gives the focal length back from the scale', () => {
    const r = random(62_002);
    for (let k = 0; k < 100; k++) {
      const [f, s, z] = [r.between(80, 450), r.between(-10, 15), r.between(0, 300)];
      expect(focalLengthForScale(imageScale(f, s, z), s, z) / f).toBeCloseTo(1, 11);
    }
  });
});

describe('the chief ray behind the relay', () => {
  it('goes on as the matrices take it from the middle of the pupil', () => {
    const r = random(62_003);
    for (let k = 0; k < 50; k++) {
      const [f, s, z] = [r.between(80, 450), r.between(-10, 15), r.between(-60, 300)];
      const toLens = train(gap(z), thinLens(f));
      const onSensor = r.between(-20, 20);
      // Height F t on the sensor for the slope t.
      const t = onSensor / imageScale(f, s, z);
      expect(chiefRaySlope(onSensor, imageScale(f, s, z), f, z)).toBeCloseTo(toLens.d * t, 12);
    }
    // Behind a pupil in the front focal plane it runs along the axis; from half of it, half as steep.
    expect(chiefRaySlope(20, 200, 200, 200)).toBe(0);
    expect(chiefRaySlope(20, 200, 200, 100)).toBeCloseTo(0.05, 14);
    expect(chiefRaySlope(20, 200, 200, 400)).toBeCloseTo(-0.1, 14);
  });
});

describe('a lens focused on a thing', () => {
  it('draws it beyond its focus as the lens equation has it', () => {
    for (const [f, distance] of [
      [50, 100],
      [200, 1200],
      [100, 101],
    ] as const) {
      const image = f + offsetFocusedOn(f, distance);
      expect(1 / distance + 1 / image).toBeCloseTo(1 / f, 12);
    }
    // Twice the focal length: as far beyond the focus as before it.
    expect(offsetFocusedOn(50, 100)).toBe(50);
  });
  it('has no picture of one in its focus or nearer', () => {
    expect(offsetFocusedOn(50, 50)).toBe(Number.POSITIVE_INFINITY);
    expect(offsetFocusedOn(50, 20)).toBe(Number.POSITIVE_INFINITY);
    expect(offsetFocusedOn(50, 51)).toBe(2500);
  });
});
