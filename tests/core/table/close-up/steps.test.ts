import { describe, expect, it } from 'vitest';
import { Gap, type Step } from '../../../../core/figure.ts';
import * as aperture from '../../../../core/table/close-up/aperture.ts';
import * as band from '../../../../core/table/close-up/band.ts';
import * as lens from '../../../../core/table/close-up/lens.ts';
import * as own from '../../../../core/table/close-up/own-tubes.ts';
import * as rim from '../../../../core/table/close-up/rim.ts';
import * as tubes from '../../../../core/table/close-up/tubes.ts';
import { ofNeeds } from '../support.ts';

/** Each figure by itself: a close-up lens of 200 mm (5 D), a second of 4 D, a camera lens of 100 mm. */

const [GAP, OTHER] = [Gap.unknown('/a'), Gap.unknown('/b')];
const NONE = { state: 'none' };
const throughFirst = band.closeUpNearestMm.needs[0] as Step<number>;

describe('the close-up lenses together', () => {
  it('are as strong as both, less what stands between them, while the first sees the second', () => {
    expect(ofNeeds(lens.closeUpPowerDioptre, 200, GAP, GAP)).toBe(5);
    expect(ofNeeds(lens.closeUpPowerDioptre, 200, 4, 0)).toBe(9);
    // 10 mm apart they lose 0.01 x 5 x 4.
    expect(ofNeeds(lens.closeUpPowerDioptre, 200, 4, 10)).toBeCloseTo(8.8, 12);
    expect(ofNeeds(lens.closeUpPowerDioptre, 200, 4, 199)).toBeCloseTo(5.02, 12);
    expect(ofNeeds(lens.closeUpPowerDioptre, 200, 4, 200)).toMatchObject(NONE);
    expect(ofNeeds(lens.closeUpPowerDioptre, 200, 4, 210)).toMatchObject(NONE);
    expect(ofNeeds(lens.closeUpPowerDioptre, 200, 4, OTHER)).toBe(OTHER);
    expect(ofNeeds(lens.closeUpPowerDioptre, GAP, 4, 10)).toBe(GAP);
    // Weak ones, 0.25 D in all.
    expect(ofNeeds(lens.closeUpPowerDioptre, 5000, 0.05, 0)).toBeCloseTo(0.25, 12);
  });

  it('have their plane behind the front one', () => {
    // d f / f1 of 10 mm, 125 mm and 200 mm.
    expect(ofNeeds(lens.closeUpPlaneMm, 200, 8, 4, 10)).toBeCloseTo(6.25, 12);
    expect(ofNeeds(lens.closeUpPlaneMm, GAP, 8, 4, 10)).toBe(GAP);
    expect(ofNeeds(lens.closeUpPlaneMm, 200, 8, GAP, 10)).toMatchObject(NONE);
    expect(ofNeeds(lens.closeUpPlaneMm, 200, GAP, 4, 10)).toBe(GAP);
    expect(ofNeeds(lens.closeUpPlaneMm, 200, 8, 4, GAP)).toBe(GAP);
  });
});

describe('where it is sharp', () => {
  it('the farthest is their focus, counted from the front one', () => {
    expect(ofNeeds(band.closeUpFarthestMm, 125, 6.25)).toBe(118.75);
    expect(ofNeeds(band.closeUpFarthestMm, 125, GAP)).toBe(125);
    expect(ofNeeds(band.closeUpFarthestMm, GAP, 6.25)).toBe(GAP);
  });

  it('the nearest alone is as told, or what the lens leaves of its closest focus', () => {
    expect(ofNeeds(band.nearestAlone, 300, 900, 200)).toBe(300);
    expect(ofNeeds(band.nearestAlone, GAP, 900, 200)).toBe(700);
    expect(ofNeeds(band.nearestAlone, GAP, 200, 200)).toMatchObject(NONE);
    expect(ofNeeds(band.nearestAlone, GAP, 199, 200)).toMatchObject(NONE);
    expect(ofNeeds(band.nearestAlone, GAP, OTHER, 200)).toMatchObject({ missing: ['/cameraSubjectDistanceMm'] });
    expect(ofNeeds(band.nearestAlone, GAP, 900, OTHER)).toBe(OTHER);
  });

  it('each lens brings it nearer', () => {
    // 1/300 + 1/200 = 1/120; 120 - 20 = 100; 1/100 + 4/1000 = 1.4/100.
    const first = throughFirst.needs[0] as Step<number>;
    expect(ofNeeds(first, 300, 200)).toBeCloseTo(120, 12);
    expect(ofNeeds(first, 300, GAP)).toBe(GAP);
    expect(ofNeeds(first, OTHER, 200)).toBe(OTHER);
    expect(ofNeeds(throughFirst, 120, 4, 20)).toBe(100);
    expect(ofNeeds(throughFirst, 120, GAP, GAP)).toBe(120);
    expect(ofNeeds(throughFirst, OTHER, 4, 20)).toBe(OTHER);
    expect(ofNeeds(throughFirst, 120, 4, GAP)).toBe(GAP);
    expect(ofNeeds(throughFirst, 120, 4, 120)).toMatchObject(NONE);
    expect(ofNeeds(throughFirst, 120, 4, 130)).toMatchObject(NONE);
    expect(ofNeeds(band.closeUpNearestMm, 100, 4)).toBeCloseTo(100 / 1.4, 12);
    expect(ofNeeds(band.closeUpNearestMm, 100, GAP)).toBe(100);
    expect(ofNeeds(band.closeUpNearestMm, OTHER, 4)).toBe(OTHER);
  });

  it('each makes it larger', () => {
    expect(ofNeeds(band.closeUpGain, 300, 200, 100, 4)).toBeCloseTo(2.5 * 1.4, 12);
    expect(ofNeeds(band.closeUpGain, 300, 200, 120, GAP)).toBe(2.5);
    expect(ofNeeds(band.closeUpGain, 300, GAP, 100, 4)).toBe(GAP);
    expect(ofNeeds(band.closeUpGain, GAP, 200, OTHER, 4)).toBe(GAP);
    expect(ofNeeds(band.closeUpGain, 300, 200, OTHER, 4)).toBe(OTHER);
  });

  it('the fields are the sensor over the magnification', () => {
    expect(ofNeeds(band.closeUpFarFieldMm, 24, 0.5)).toBe(48);
    expect(ofNeeds(band.closeUpNearFieldMm, 24, 0.75)).toBe(32);
  });
});

describe('light', () => {
  it('is less by the magnification over the ratio of the pupils', () => {
    // m / P = 0.5 / 2: a quarter more.
    expect(ofNeeds(aperture.closeUpNearFNumber, 8, 0.5, 2)).toBe(10);
    expect(ofNeeds(aperture.closeUpNearDiffractionFNumber, 10, 0.5, 2)).toBe(8);
    expect(ofNeeds(tubes.tubesFarFNumber, 8, 0.5, 2)).toBe(10);
    expect(ofNeeds(tubes.tubesNearFNumber, 8, 0.5, 2)).toBe(10);
    expect(ofNeeds(tubes.tubesDiffractionFNumber, 10, 0.5, 2)).toBe(8);
    expect(ofNeeds(tubes.tubesNearDiffractionFNumber, 10, 0.5, 2)).toBe(8);
    // Twice the f-number is two stops.
    expect(ofNeeds(tubes.tubesFarCostEv, 2, 2)).toBe(2);
    expect(ofNeeds(tubes.tubesFarCostEv, 6, 2)).toBe(4);
    // (1 + 6 / 2) over (1 + 2 / 2).
    expect(ofNeeds(tubes.tubesNearCostEv, 6, 2, 2)).toBe(2);
  });
});

describe('tubes', () => {
  it('leave f / m before the front focus, that is f - h before the rim, while the subject stands outside', () => {
    for (const figure of [tubes.tubesFarDistanceMm, tubes.tubesNearDistanceMm]) {
      expect(ofNeeds(figure, 100, 0.5, 20)).toBe(280);
      expect(ofNeeds(figure, 100, 0.5, 299.5)).toBe(0.5);
      expect(ofNeeds(figure, 100, 0.5, 300)).toMatchObject(NONE);
      expect(ofNeeds(figure, 100, 0.5, 301)).toMatchObject(NONE);
    }
    expect(ofNeeds(own.ownTubesFarDistanceMm, 100, 0.5, 20)).toBe(280);
    expect(ofNeeds(own.ownTubesFarDistanceMm, 100, 0.5, 299.5)).toBe(0.5);
    expect(ofNeeds(own.ownTubesFarDistanceMm, 100, 0.5, 300)).toMatchObject(NONE);
    expect(ofNeeds(own.ownTubesFarDistanceMm, 100, 0.5, 301)).toMatchObject(NONE);
  });

  it('of no length do nothing, of half a millimetre something', () => {
    expect(ofNeeds(own.ownTubesFarMagnification, 0.5, 100)).toBe(0.005);
    expect(ofNeeds(own.ownTubesFarMagnification, 0, 100)).toMatchObject(NONE);
    expect(ofNeeds(own.ownTubesNearMagnification, 0.25, 0.5, 100)).toBe(0.255);
    expect(ofNeeds(own.ownTubesNearMagnification, 0.25, 0, 100)).toMatchObject(NONE);
  });

  it('bring the nearest subject nearer, as long as it stands outside', () => {
    // From 80 / 0.25 before the front focus to 80 / 0.5: 160 nearer.
    expect(ofNeeds(own.ownTubesNearDistanceMm, 300, 80, 0.25, 0.5)).toBe(140);
    expect(ofNeeds(own.ownTubesNearDistanceMm, 160.5, 80, 0.25, 0.5)).toBe(0.5);
    expect(ofNeeds(own.ownTubesNearDistanceMm, 160, 80, 0.25, 0.5)).toMatchObject(NONE);
    expect(ofNeeds(own.ownTubesNearDistanceMm, 150, 80, 0.25, 0.5)).toMatchObject(NONE);
  });
});

describe("the rim's room", () => {
  const [clear, , , depth] = rim.closeUpRoomMm.needs as readonly Step<number>[];
  it('is told of the lens that is on', () => {
    expect(ofNeeds(clear as Step<number>, 50, 200, 'supplementary', 54)).toBe(50);
    expect(ofNeeds(clear as Step<number>, GAP, GAP, 'supplementary', 54)).toBe(54);
    expect(ofNeeds(clear as Step<number>, GAP, 200, 'supplementary', 54)).toMatchObject({ missing: ['/closeUpClearApertureMm'] });
    expect(ofNeeds(clear as Step<number>, GAP, GAP, 'tube-lens', 54)).toMatchObject({ missing: ['/closeUpClearApertureMm'] });
  });
  it('is as much less as the pupil is deep, before the rim or behind it', () => {
    const pupil = (rim.closeUpRoomMm.needs as readonly Step<number>[])[3] as Step<number>;
    expect(pupil).toBe(depth);
    expect(ofNeeds(pupil, 60, 4, 10)).toBe(70);
    expect(ofNeeds(pupil, 60, GAP, GAP)).toBe(60);
    expect(ofNeeds(pupil, 60, 4, OTHER)).toBe(OTHER);
    expect(ofNeeds(pupil, GAP, 4, 10)).toBe(GAP);
    // 50 less a pupil of 10 and 60 x 30 / 80.
    expect(ofNeeds(rim.closeUpRoomMm, 50, 80, 8, 60, 30)).toBe(17.5);
    expect(ofNeeds(rim.closeUpRoomMm, 50, 80, 8, -60, 30)).toBe(17.5);
    expect(ofNeeds(rim.closeUpShortestCameraMm, 50, 60, 30)).toBe(36);
    expect(ofNeeds(rim.closeUpShortestCameraMm, 50, -60, 30)).toBe(36);
  });
});
