import { describe, expect, it } from 'vitest';
import { divergence, focalLengthForScale, gap, imageScale, thinLens, train } from '../../../core/index.ts';
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

  it('gives the focal length back from the scale', () => {
    const r = random(62_002);
    for (let k = 0; k < 100; k++) {
      const [f, s, z] = [r.between(80, 450), r.between(-10, 15), r.between(0, 300)];
      expect(focalLengthForScale(imageScale(f, s, z), s, z) / f).toBeCloseTo(1, 11);
    }
  });
});
