import { describe, expect, it } from 'vitest';
import { closeUpJob } from '../../../../core/lens/made/job.ts';

describe('the job of a lens too small for a telephoto', () => {
  it('is half as wide as itself, and out to where such a beam just passes from 75 mm away', () => {
    // A quarter of 20 mm for the stop, and as much again for the way to the corner.
    expect(closeUpJob(20)).toEqual({ stopsMm: [40, 75], stopRadiusMm: 5, cornerSlope: 5 / 75 });
    // 32 mm are enough for a corner at 0.1067, not for a stop of 10 mm; 33 mm for one at 0.108.
    expect(closeUpJob(32)).toMatchObject({ stopRadiusMm: 8, cornerSlope: 8 / 75 });
    expect(closeUpJob(33)).toMatchObject({ stopRadiusMm: 8.25, cornerSlope: 21.633 / 200 });
    expect(closeUpJob(44)).toMatchObject({ stopRadiusMm: 10, cornerSlope: 21.633 / 200 });
  });
});
