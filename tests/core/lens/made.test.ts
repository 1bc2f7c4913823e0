import { describe, expect, it } from 'vitest';
import { secondarySpectrum } from '../../../core/glass/achromat.ts';
import { glassNamed } from '../../../core/glass/glasses.ts';
import { abbeNumber } from '../../../core/glass/lines.ts';
import { AIR, type Medium } from '../../../core/glass/medium.ts';
import { bending, bestBending, type Task } from '../../../core/lens/made/design.ts';
import { closeUpJob } from '../../../core/lens/made/job.ts';
import { workshopLimits } from '../../../core/lens/made/workshop.ts';
import { familyOf, isMade, MADE_KINDS, type MadeKind, type MadeLens, madeLens, triedFamily } from '../../../core/lens/made.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { reversed, widestSemiApertures } from '../../../core/trace/lens.ts';
import { sag } from '../../../core/trace/surface.ts';
import { blursAtJob, focusIn, seenIn, worstAsRelay } from './made-support.ts';

const FOCAL_MM = 200;
const WIDE_MM = 52;
const TASK: Task = { focalLengthMm: FOCAL_MM, limits: workshopLimits(WIDE_MM), job: closeUpJob(WIDE_MM) };
const FAMILIES = new Map(MADE_KINDS.map((kind) => [kind, familyOf(kind, FOCAL_MM, WIDE_MM)]));
const family = (kind: MadeKind): readonly MadeLens[] => FAMILIES.get(kind) ?? [];
const ALL = MADE_KINDS.flatMap(family);

const glass = (name: string): Medium => glassNamed(name) as Medium;
/** As listed. */
const glassesOf = ({ crown, flint, leading }: MadeLens): readonly Medium[] => {
  const both = flint === undefined ? [crown] : [crown, flint];
  return (leading === 'crown' ? both : both.toReversed()).map(glass);
};
/** The pieces of glass: radii before and behind, thickness. */
const pieces = ({ lens }: MadeLens) =>
  lens.media.flatMap((medium, i) =>
    medium === AIR
      ? []
      : { before: lens.radiiMm[i] as number, behind: lens.radiiMm[i + 1] as number, thick: lens.thicknessesMm[i] as number },
  );

describe('a family of lenses of a class', () => {
  it('is of several glasses, achromats with either glass first, all of them by names of their own', () => {
    expect(MADE_KINDS.map((kind) => family(kind).length)).toEqual([4, 16, 16]);
    expect(new Set(ALL.map((m) => m.name)).size).toBe(ALL.length);
    expect(ALL.map((m) => m.name)).toContain('cemented, N-BK7 and N-SF5, crown toward the camera lens');
  });

  it.each(ALL)('$name: has the focal length asked for, clear height and glasses in the order said', (made) => {
    expect(cardinal(seenIn(made.lens, 'd')).effectiveFocalLengthMm / FOCAL_MM).toBeCloseTo(1, 11);
    expect(made.lens.semiAperturesMm).toEqual(made.lens.radiiMm.map(() => WIDE_MM / 2));
    expect(made.lens.media.filter((m) => m !== AIR)).toEqual(glassesOf(made));
    expect(made.lens.media.includes(AIR)).toBe(made.kind === 'air-spaced-achromat');
  });

  it.each(ALL)('$name: has glass thick enough, and no thicker than it need be', (made) => {
    const { centreThicknessesMm, edgeThicknessesMm } = made.residuals;
    const rim = WIDE_MM / 2 + 1;
    for (const [i, { before, behind, thick }] of pieces(made).entries()) {
      const edge = thick - sag(before, rim) + sag(behind, rim);
      expect(centreThicknessesMm[i]).toBe(thick);
      expect(edgeThicknessesMm[i]).toBeCloseTo(edge, 9);
      // 3 % and an eighteenth of the diameter: one of the two is what the thickness was made by.
      const [overEdge, overCentre] = [edge - 0.03 * WIDE_MM, thick - WIDE_MM / 18];
      expect(Math.min(overEdge, overCentre)).toBeCloseTo(0, 9);
    }
    expect(Math.min(...widestSemiApertures(made.lens.radiiMm, made.lens.thicknessesMm))).toBeGreaterThan(WIDE_MM / 2);
  });

  it.each(ALL)('$name: keeps its outer surfaces to half their radius and the inner ones to 0.8', ({ lens }) => {
    const reach = lens.radiiMm.map((r) => (WIDE_MM / 2 + 1) / Math.abs(r));
    expect(Math.max(reach[0] as number, reach.at(-1) as number)).toBeLessThanOrEqual(0.5);
    expect(Math.max(0, ...reach.slice(1, -1))).toBeLessThanOrEqual(0.8);
  });

  it.each(ALL)('$name: tells what colour is left', ({ lens, crown, flint, residuals }) => {
    const [blue, yellow, red] = [focusIn(lens, 'F'), focusIn(lens, 'd'), focusIn(lens, 'C')];
    expect(residuals.axialColourMm).toBeCloseTo(blue - red, 9);
    expect(residuals.secondaryColourMm).toBeCloseTo(yellow - (blue + red) / 2, 9);
    if (flint === undefined) {
      // A thin lens's focal lengths differ by its Abbe number; a lens a fortieth of f thick hardly otherwise.
      expect(residuals.axialColourMm / (-FOCAL_MM / abbeNumber(glass(crown), 'd'))).toBeCloseTo(1, 1);
    } else {
      expect(Math.abs(blue - red)).toBeLessThan(1e-9);
      expect(residuals.secondaryColourMm / (-FOCAL_MM * secondarySpectrum(glass(crown), glass(flint)))).toBeCloseTo(1, 1);
    }
  });

  it.each(ALL.filter((_, i) => i % 5 === 0))('$name: blurs at its job as it tells, by another route', ({ lens, residuals }) => {
    const { picture, worst, middle } = blursAtJob(lens, TASK.job);
    // What is left of the fifth order, and of three fields for five.
    for (const ratio of [residuals.pictureRmsUm / picture, residuals.worstRmsUm / worst, residuals.sphericalRmsUm / middle]) {
      expect(Math.abs(ratio - 1)).toBeLessThan(0.005);
    }
  });

  it('is the same each time', () => {
    expect(familyOf('singlet', FOCAL_MM, WIDE_MM)).toEqual(family('singlet'));
  });
});

describe('a bending', () => {
  it.each(MADE_KINDS)('is the best of its neighbours: %s', (kind) => {
    for (const made of family(kind).slice(0, 4)) {
      const bent = bestBending(kind, glassesOf(made), TASK);
      if (!bent) throw new Error(`${made.name} was made before`);
      const blur = bent.blur(bent.at);
      expect(1000 * Math.sqrt(blur)).toBeCloseTo(made.residuals.pictureRmsUm, 9);
      for (const d of bent.at.keys())
        for (const off of [-0.01, 0.01]) expect(bent.blur(bent.at.map((x, k) => (k === d ? x + off : x)))).toBeGreaterThan(blur);
    }
  });

  it('is the best of all gentle ones: no other minimum is deeper', () => {
    for (const made of family('cemented-achromat').slice(0, 4)) {
      const bent = bending(made.kind, glassesOf(made), TASK);
      const others = Array.from({ length: 121 }, (_, i) => 1000 * Math.sqrt(bent.blur([(i - 60) / 12])));
      expect(Math.min(...others)).toBeGreaterThanOrEqual(made.residuals.pictureRmsUm);
    }
  });

  it.each(MADE_KINDS)('scales: twice the lens for twice the job, %s', (kind) => {
    const glasses = kind === 'singlet' ? [glass('N-BAK4')] : [glass('N-SF10'), glass('N-BAK4')];
    const { limits, job } = TASK;
    const twice: Task = {
      focalLengthMm: 2 * FOCAL_MM,
      limits: {
        ...limits,
        blankRadiusMm: 2 * limits.blankRadiusMm,
        centreMm: 2 * limits.centreMm,
        edgeMm: 2 * limits.edgeMm,
        airMm: 2 * limits.airMm,
      },
      job: { ...job, stopsMm: job.stopsMm.map((s) => 2 * s), stopRadiusMm: 2 * job.stopRadiusMm },
    };
    const [one, two] = [bestBending(kind, glasses, TASK), bestBending(kind, glasses, twice)];
    expect(two?.at).toEqual(one?.at);
    expect(two?.work.d.curvature.map((c) => 2 * c)).toEqual(one?.work.d.curvature);
    expect(two?.work.d.gap.map((g) => g / 2)).toEqual(one?.work.d.gap);
  });
});

describe('what is not made', () => {
  it('is told apart, with the reason', () => {
    const tried = triedFamily('cemented-achromat', 100, WIDE_MM);
    const steep = tried.flatMap((m) => (isMade(m) ? [] : [m]));
    expect(tried).toHaveLength(16);
    expect(tried.filter(isMade)).toEqual(familyOf('cemented-achromat', 100, WIDE_MM));
    expect(steep.length).toBeGreaterThan(0);
    expect(steep.length).toBeLessThan(16);
    for (const { why } of steep)
      expect(why).toBe(
        'does its job best with surfaces too steep to make: under 54.0 mm of radius outside or 33.8 mm inside, for glass 54.0 mm wide',
      );
    expect(familyOf('cemented-achromat', 60, 58)).toEqual([]);
  });
  it('is what has no glass, or glasses the wrong way about', () => {
    expect(madeLens('singlet', FOCAL_MM, WIDE_MM, { crown: 'N-BK77' })).toMatchObject({ why: 'no glass is known by the name of N-BK77' });
    expect(madeLens('singlet', FOCAL_MM, WIDE_MM, { crown: 'air' })).toMatchObject({ why: 'no glass is known by the name of air' });
    expect(madeLens('cemented-achromat', FOCAL_MM, WIDE_MM, { crown: 'N-SF5', flint: 'N-BK7' })).toMatchObject({
      why: 'N-SF5 disperses no less than N-BK7: together they make no achromat',
    });
  });
  it('is misuse without a focal length or a diameter', () => {
    expect(() => madeLens('singlet', 0, WIDE_MM)).toThrow(RangeError);
    expect(() => madeLens('singlet', FOCAL_MM, Number.NaN)).toThrow(RangeError);
  });
});

describe('one lens of a class', () => {
  it('is the one that the family holds', () => {
    const flintFirst = madeLens('cemented-achromat', FOCAL_MM, WIDE_MM, { crown: 'N-BAK4', flint: 'N-SF10', leading: 'flint' });
    expect(family('cemented-achromat')).toContainEqual(flintFirst);
  });
  it('is the first of the class where nothing is said, and a single lens has no flint', () => {
    expect(madeLens('cemented-achromat', FOCAL_MM, WIDE_MM)).toEqual(family('cemented-achromat')[0]);
    expect(madeLens('singlet', FOCAL_MM, WIDE_MM, { flint: 'F2', leading: 'flint' })).toEqual(family('singlet')[0]);
  });
});

describe('a lens of 5 D as a relay, behind a pupil of 11.2 mm', () => {
  const least = (lens: MadeLens['lens']): number => Math.min(...[40, 70, 100, 150].map((mm) => worstAsRelay(lens, mm)));

  it.each(ALL.filter((_, i) => i % 3 === 0))(
    '$name: wants its camera side toward the objective, where its weaker outer surface is',
    ({ lens }) => {
      expect(Math.abs(lens.radiiMm[0] as number)).toBeGreaterThan(Math.abs(lens.radiiMm.at(-1) as number));
      expect(least(lens)).toBeLessThan(least(reversed(lens)));
    },
  );
});
