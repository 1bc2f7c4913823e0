import { describe, expect, it } from 'vitest';
import { offConjugate } from '../../../core/aberration/off-conjugate.ts';
import { scaleAtStrehl } from '../../../core/aberration/refocused.ts';
import { random } from '../../support/random.ts';
import { focusedByStage, least, RINGS, rmsOf } from '../support/sine-lenses.ts';

/** Third-order rms of an object `shift` mm off, mm: W040 over 6 √5. */
const fourthOrder = (shift: number, n: number, na: number, m: number): number =>
  Math.abs((shift * na ** 4 * (1 - (n * n) / (m * m))) / (8 * n ** 3)) / (6 * Math.sqrt(5));

describe('an objective off its conjugate', () => {
  it.each([
    [0.25, 1.05],
    [0.42, 1.15],
    [0.65, 1.46],
  ])('at NA %d leaves, for a given shift of the subject, %d of what the fourth order says', (na, factor) => {
    const ratio = offConjugate(1, na, 10, 'sensor').rms / fourthOrder(1, 1, na, 10);
    expect(Number(ratio.toFixed(2))).toBe(factor);
  });

  it('is what the sine-condition phase leaves after every focus has been tried', () => {
    for (const [n, na, m] of [
      [1, 0.1, 4],
      [1, 0.42, 20],
      [1, 0.8, 50],
      [1.33, 0.5, 20],
      [1.52, 1.25, 60],
    ] as const) {
      const object = RINGS.map((r) => 1 - Math.sqrt(1 - ((r * na) / n) ** 2));
      const image = RINGS.map((r) => (m / n) ** 2 * (1 - Math.sqrt(1 - ((r * na) / m) ** 2)));
      const left = (a: number[], b: number[], k: number): number => rmsOf(a.map((x, i) => x - k * (b[i] as number)));
      const byStage = left(
        image,
        object,
        least((k) => left(image, object, k), 0, 2),
      );
      const bySensor = left(
        object,
        image,
        least((k) => left(object, image, k), 0, 3),
      );
      expect(Math.abs(offConjugate(n, na, m).rms / byStage - 1), String(na)).toBeLessThan(1e-4);
      expect(Math.abs(offConjugate(n, na, m, 'sensor').rms / bySensor - 1), String(na)).toBeLessThan(1e-4);
    }
  });

  it('is what a trace through two perfect lenses finds with the sensor held and the stage focused', () => {
    const r = random(83_001);
    for (let k = 0; k < 6; k++) {
      const [fo, f, na] = [r.between(4, 50), r.between(120, 300), r.between(0.1, 0.7)];
      const rig = { fo, f, z: f, n: k % 2 ? 1.33 : 1, na };
      const s = r.between(-20, 30);
      const { rms, paraxial } = focusedByStage(rig, s);
      const due = rig.n * Math.abs(paraxial) * offConjugate(rig.n, na, f / fo).rms;
      expect(Math.abs(due / rms - 1), JSON.stringify({ ...rig, s })).toBeLessThan(2e-3);
    }
  });

  it('holds with the relay anywhere, to an eighth of the change of magnification', () => {
    for (const [z, s] of [
      [60, -5],
      [60, 10],
      [60, 30],
      [300, -20],
    ] as const) {
      const rig = { fo: 10, f: 200, z, n: 1, na: 0.42 };
      const { rms, paraxial } = focusedByStage(rig, s);
      const m = (rig.f + s - (z * s) / rig.f) / rig.fo;
      const off = Math.abs((Math.abs(paraxial) * offConjugate(1, rig.na, m).rms) / rms - 1);
      expect(off, `${z} ${s}`).toBeLessThan(Math.abs(m / 20 - 1) / 8);
    }
  });

  it('leaves a quarter of W040 from peak to valley and W040 over 6 √5 as rms at low aperture, and nothing at m = n', () => {
    const [na, m] = [0.05, 5];
    const w040 = (na ** 4 * (1 - 1 / m ** 2)) / 8;
    const { rms, peakToValley } = offConjugate(1, na, m);
    expect(Math.abs(rms / (w040 / (6 * Math.sqrt(5))) - 1)).toBeLessThan(2e-3);
    expect(Math.abs(peakToValley / (w040 / 4) - 1)).toBeLessThan(2e-3);
    expect(offConjugate(1, 0.3, 1).rms).toBeLessThan(1e-15);
    expect(offConjugate(1.33, 0.3, 1.33).rms).toBeLessThan(1e-15);
  });
});

describe('the Strehl ratio of what is left', () => {
  it('is the square of the mean of the phasors, ring by ring', () => {
    const left = offConjugate(1, 0.42, 20);
    const object = RINGS.map((r) => 1 - Math.sqrt(1 - (r * 0.42) ** 2));
    const image = RINGS.map((r) => 400 * (1 - Math.sqrt(1 - ((r * 0.42) / 20) ** 2)));
    const w = (k: number): number[] => image.map((x, i) => x - k * (object[i] as number));
    const best = w(least((k) => rmsOf(w(k)), 0, 2));
    for (const scale of [50, 300, 1000]) {
      const phase = best.map((x) => 2 * Math.PI * scale * x);
      const mean = (of: (x: number) => number): number => phase.reduce((sum, x) => sum + of(x), 0) / phase.length;
      expect(left.strehl(scale)).toBeCloseTo(mean(Math.cos) ** 2 + mean(Math.sin) ** 2, 5);
    }
    expect(left.strehl(0)).toBeCloseTo(1, 12);
  });

  it('falls to a limit at the scale that is told: 0.8 near a fourteenth of a wave', () => {
    for (const limit of [0.5, 0.8, 0.95, 0.99]) {
      const left = offConjugate(1, 0.5, 20);
      const scale = scaleAtStrehl(left, limit);
      expect(left.strehl(scale)).toBeCloseTo(limit, 10);
      for (let i = 1; i < 20; i++) expect(left.strehl((scale * i) / 20)).toBeGreaterThan(limit);
    }
    const left = offConjugate(1, 0.1, 5);
    expect(left.rms * scaleAtStrehl(left, 0.8)).toBeGreaterThan(1 / 14);
    expect(left.rms * scaleAtStrehl(left, 0.8)).toBeLessThan(1 / 13);
  });
});
