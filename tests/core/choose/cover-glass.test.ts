import { describe, expect, it } from 'vitest';
import { platesAberration } from '../../../core/aberration/plate.ts';
import { coverGlassCaution } from '../../../core/choose/cover-glass.ts';

describe('the caution of a cover glass', () => {
  it('is told from a fourteenth of a wave on, of glass of 1.5255', () => {
    const objective = { magnification: 20, na: 0.5, referenceFocalLengthMm: 200, coverGlassMm: 0 };
    const border = 0.3 * (550e-6 / 14 / platesAberration([{ thicknessMm: 0.3, index: 1.5255 }], 1, 0.5).rms);
    expect(coverGlassCaution(objective, border * 1.001, 550)).toMatch(/^Made for no cover glass and used with [\d.]+ mm: 0\.07 waves/);
    expect(coverGlassCaution(objective, border * 0.999, 550)).toBeUndefined();
    expect(coverGlassCaution({ ...objective, coverGlassMm: 0.17 }, 0.17, 550)).toBeUndefined();
    expect(coverGlassCaution(objective, undefined, 550)).toBeUndefined();
    expect(coverGlassCaution({ ...objective, immersionIndex: 1.33 }, 1, 550)).toBeUndefined();
  });
});
