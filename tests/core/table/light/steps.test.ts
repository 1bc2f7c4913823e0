import { describe, expect, it } from 'vitest';
import { Gap, type Step } from '../../../../core/figure.ts';
import { besideNose } from '../../../../core/table/light/beside.ts';
import { diffuserShare, foot, top } from '../../../../core/table/light/diffuser.ts';
import { noseOverBack } from '../../../../core/table/light/nose.ts';
import {
  lightFarCornerDeg,
  lightMiddleDeg,
  lightShare,
  middleSlope,
  noseWhole,
  objectiveConeDeg,
  sineOfCone,
} from '../../../../core/table/light/room.ts';
import { ofNeeds } from '../support.ts';

/** Each step by itself, of numbers that can be followed by hand. */

const GAP = Gap.unknown('/a');
const farSlope = lightFarCornerDeg.needs[0] as Step<number>;

describe('a nose let down into a wall', () => {
  const tube = { foot: 10, top: 10, height: 20 };
  const cone = { foot: 12, top: 6, height: 20 };

  it('is as wide as its whole at once where no length of taper is told, or as its end where that is wider', () => {
    expect(besideNose({ end: 3, whole: 8, taper: 0 }, 5, tube)).toBe(2);
    expect(besideNose({ end: 9, whole: 8, taper: 0 }, 5, tube)).toBe(1);
  });

  it('grows along its taper, and stays as wide above it', () => {
    // Down by 15 into a tube: the taper of 5 is all inside, and the whole width of 8.
    expect(besideNose({ end: 3, whole: 8, taper: 5 }, 5, tube)).toBe(2);
    // Of a taper of 30 half is inside: 3 + 5 / 2.
    expect(besideNose({ end: 3, whole: 8, taper: 30 }, 5, tube)).toBe(4.5);
    // Of one of 1 mm, at a wall that ends half a millimetre above its end, half.
    expect(besideNose({ end: 3, whole: 8, taper: 1 }, 19.5, tube)).toBe(4.5);
  });

  it('meets a cone at its top, or where the taper ends', () => {
    // At the top 6 less the whole 5; where the taper ends, 8 high, 12 - 6 x 8 / 20 = 9.6 less 5.
    expect(besideNose({ end: 3, whole: 5, taper: 3 }, 5, cone)).toBe(1);
    // A cone that opens: at the taper's end, 8 high, 6 + 6 x 8 / 20 = 8.4 less 8; at the nose's end 7.5 less 3.
    expect(besideNose({ end: 3, whole: 8, taper: 3 }, 5, { foot: 6, top: 12, height: 20 })).toBeCloseTo(0.4, 12);
  });

  it('counts a wall that ends below it with its top and the nose’s end', () => {
    expect(besideNose({ end: 3, whole: 8, taper: 5 }, 21, cone)).toBe(3);
    expect(besideNose({ end: 3, whole: 8, taper: 5 }, 20, cone)).toBe(3);
  });
});

describe('the wall of a diffuser', () => {
  it('leaves half its width inside, and nothing where it is as thick', () => {
    expect(ofNeeds(foot, 10, 1)).toBe(4);
    expect(ofNeeds(foot, 10, 4)).toBe(1);
    expect(ofNeeds(foot, 10, 5)).toMatchObject({ state: 'none' });
    expect(ofNeeds(foot, 10, 6)).toMatchObject({ state: 'none' });
    expect(ofNeeds(top, 8, 1, 4)).toBe(3);
    expect(ofNeeds(top, GAP, 1, 4)).toBe(4);
  });
});

describe('the nose over the back of the subject', () => {
  it('is the free space and what the focus runs ahead of the rail, where that is all known', () => {
    // In water of 1.5 the rail goes 0.4 mm for 0.6 of focus.
    expect(ofNeeds(noseOverBack, 10, 0.6, 1.5)).toBeCloseTo(10.2, 12);
    expect(ofNeeds(noseOverBack, 10, GAP, 1.5)).toBe(10);
    expect(ofNeeds(noseOverBack, 10, 0.6, GAP)).toBe(10);
    expect(ofNeeds(noseOverBack, 10, GAP, GAP)).toBe(10);
    expect(ofNeeds(noseOverBack, GAP, 0.6, 1.5)).toBe(GAP);
    expect(ofNeeds(noseOverBack, GAP, 0.6, GAP)).toBe(GAP);
    expect(ofNeeds(noseOverBack, GAP, GAP, 1.5)).toBe(GAP);
  });
});

describe('the steepest light', () => {
  // 10 mm free; the end 8 mm wide, and 4 mm above it the whole nose of 20; the relay's rim of 50 mm is 100 mm up.
  const nose = [10, 8, 4, 20] as const;

  it('passes whatever edge is lowest: the nose’s end, its whole width, or the relay', () => {
    expect(ofNeeds(middleSlope, ...nose, 50, 100)).toBeCloseTo(14 / 10, 12);
    expect(ofNeeds(middleSlope, 10, 18, 4, 20, 50, 100)).toBeCloseTo(10 / 9, 12);
    expect(ofNeeds(middleSlope, ...nose, 50, 30)).toBeCloseTo(30 / 25, 12);
    expect(ofNeeds(farSlope, ...nose, 50, 100, 2)).toBeCloseTo(14 / 11, 12);
    for (const relay of [
      [GAP, 30],
      [50, GAP],
      [GAP, GAP],
    ])
      expect(ofNeeds(middleSlope, ...nose, ...relay)).toBeCloseTo(1.4, 12);
  });

  it('is unknown with what it needs, all of that told', () => {
    const b = Gap.unknown('/b');
    expect(ofNeeds(middleSlope, GAP, 8, 4, 20, 50, 100)).toMatchObject({ state: 'unknown', missing: ['/a'] });
    expect(ofNeeds(middleSlope, GAP, b, 4, 20, 50, 100)).toMatchObject({ missing: ['/a', '/b'] });
    expect(ofNeeds(farSlope, 10, 8, 4, 20, 50, 100, GAP)).toMatchObject({ missing: ['/a'] });
    expect(ofNeeds(farSlope, b, 8, 4, 20, 50, 100, GAP)).toMatchObject({ missing: ['/b', '/a'] });
  });

  it('is written with the relay only where that is known', () => {
    const as = (...texts: string[]) => middleSlope.as(...texts);
    expect(as('a', 'w', 'l', 'h', 'D', 'r')).toBe('min(a / (w / 2), (a + l) / (h / 2), r / (D / 2))');
    for (const relay of [
      ['', 'r'],
      ['D', ''],
      ['', ''],
    ])
      expect(as('a', 'w', 'l', 'h', ...relay)).toBe('min(a / (w / 2), (a + l) / (h / 2))');
  });

  it('meets the relay no lower than in focus', () => {
    const height = middleSlope.needs[5] as Step<number>;
    expect(ofNeeds(height, 45, 0.5, 60)).toBe(104.5);
    expect(ofNeeds(height, 45, 44.5, 0)).toBe(0.5);
    expect(ofNeeds(height, 45, 50, 0)).toBe(0);
  });

  it('comes from 0 to 90°, and from a share of the half-space from 0 to 1', () => {
    expect([lightMiddleDeg, lightFarCornerDeg, objectiveConeDeg].map(({ bounds }) => bounds)).toEqual([
      [0, 90],
      [0, 90],
      [0, 90],
    ]);
    expect([lightShare, diffuserShare].map(({ bounds }) => bounds)).toEqual([
      [0, 1],
      [0, 1],
    ]);
  });
});

it('the whole nose is as wide as its end where that alone is told', () => {
  const taper = noseWhole.needs[1] as Step<number>;
  expect(ofNeeds(noseWhole, 8, ofNeeds(taper, 0), 30)).toBe(8);
  expect(ofNeeds(noseWhole, 8, ofNeeds(taper, 0.5), 30)).toBe(30);
  expect(ofNeeds(noseWhole, GAP, ofNeeds(taper, 0), 30)).toBe(30);
});

it("the objective's own cone is steeper in air than in oil, and never beyond 90°", () => {
  expect(ofNeeds(sineOfCone, 1.2, 1.5)).toBeCloseTo(0.8, 12);
  expect(ofNeeds(objectiveConeDeg, 0.5)).toBeCloseTo(30, 9);
  // As rounding may leave it.
  expect(ofNeeds(objectiveConeDeg, 1 + 1e-12)).toBe(90);
});
