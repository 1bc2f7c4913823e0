import { describe, expect, it } from 'vitest';
import { contradictions, type Pairing, pairingSchema, type QuantityInput, report } from '../../../core/index.ts';
import { randomPairing } from '../../support/pairings.ts';
import { random } from '../../support/random.ts';

/** A pairing whose three circles can be set at will: reference and relay are equal, the rim is far from cutting. */
function pairing(
  circles: { corrected?: QuantityInput; sharp?: QuantityInput; rim?: QuantityInput | undefined },
  more: Partial<Pairing> = {},
): Pairing {
  return {
    objective: {
      magnification: 10,
      na: 0.25,
      referenceFocalLengthMm: 200,
      exitPupilFromShoulderMm: 0,
      ...(circles.corrected === undefined ? {} : { fieldNumberMm: circles.corrected }),
    },
    relay: {
      kind: 'supplementary',
      focalLengthMm: 200,
      frontPrincipalPlaneFromRimMm: 0,
      ...('rim' in circles ? (circles.rim === undefined ? {} : { clearApertureMm: circles.rim }) : { clearApertureMm: 54 }),
      ...(circles.sharp === undefined ? {} : { imageCircleMm: circles.sharp }),
    },
    sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
    infinitySpaceMm: 60,
    ...more,
  };
}
const coverage = (...input: Parameters<typeof pairing>) => report(pairing(...input)).coverage;

/** 43.267 mm: the diagonal of 36 x 24. */
const DIAGONAL = Math.hypot(36, 24);

describe('verdict', () => {
  it('covers when every known circle reaches the corners, and names the unknown one', () => {
    expect(coverage({ corrected: 44 })).toMatchObject({ verdict: 'covers', unknown: ['sharp'], hangsOn: [], largestCropMm: [36, 24] });
    expect(coverage({ corrected: 44 }).bites).toBeUndefined();
    expect(coverage({ corrected: 44, sharp: 45 }).unknown).toEqual([]);
  });

  it('covers at the diagonal itself and crops just below it', () => {
    expect(coverage({ corrected: DIAGONAL + 1e-9 }).verdict).toBe('covers');
    expect(coverage({ corrected: DIAGONAL - 1e-6 })).toMatchObject({ verdict: 'crops', bites: 'corrected' });
  });

  it('crops to the smallest circle, in the shape of the sensor', () => {
    const { verdict, bites, largestCropMm } = coverage({ corrected: 30, sharp: 40 });
    expect([verdict, bites]).toEqual(['crops', 'corrected']);
    expect(Math.hypot(...largestCropMm)).toBeCloseTo(30, 9);
    expect(largestCropMm[0] / largestCropMm[1]).toBeCloseTo(1.5, 12);
    expect(coverage({ corrected: 40, sharp: 30 }).bites).toBe('sharp');
  });

  it('misses when the largest crop is under half of the width', () => {
    expect(coverage({ corrected: DIAGONAL / 2 + 1e-6 }).verdict).toBe('crops');
    expect(coverage({ corrected: DIAGONAL / 2 - 1e-6 }).verdict).toBe('misses');
  });

  it('is undecided where ± crosses a border, and names the input that decides', () => {
    const doubtful = coverage({ corrected: { value: 43, plusMinus: 2, origin: 'assumed' } });
    expect(doubtful).toMatchObject({ verdict: 'undecided', bites: 'corrected', hangsOn: ['/objective/fieldNumberMm'] });
    expect(doubtful.between).toEqual(['crops', 'covers']);
    expect(coverage({ corrected: { value: 22, plusMinus: 2, origin: 'assumed' } })).toMatchObject({
      verdict: 'undecided',
      between: ['misses', 'crops'],
    });
    expect(coverage({ corrected: { value: 30, plusMinus: 2, origin: 'assumed' } }).verdict).toBe('crops');
  });

  it('names what decides even where the value itself covers', () => {
    const doubtful = coverage({ corrected: { value: 44, plusMinus: 2, origin: 'assumed' }, sharp: 60 });
    expect(doubtful).toMatchObject({ verdict: 'undecided', bites: 'corrected', hangsOn: ['/objective/fieldNumberMm'] });
  });

  it('is undecided when nothing but the light is known, unless the light alone misses', () => {
    expect(coverage({})).toMatchObject({ verdict: 'undecided', hangsOn: [], unknown: ['corrected', 'sharp'] });
    expect(coverage({ rim: 20 }).verdict).toBe('undecided');
    expect(coverage({ rim: 11 }, { infinitySpaceMm: 300 })).toMatchObject({ verdict: 'misses', bites: 'lit' });
  });

  it('does not count an unknown circle as passing', () => {
    const { coverage: c, figures } = report(pairing({ rim: undefined, corrected: 44 }));
    expect(c.unknown).toEqual(['lit', 'sharp']);
    expect(figures.litCircleMm).toEqual({ state: 'unknown', unit: 'mm', missing: ['/relay/clearApertureMm'] });
    expect(figures.coveredShare).toMatchObject({ state: 'known', value: 1 });
  });

  it('judges the subject by its own corners', () => {
    const subject = (widthMm: number, heightMm?: number) =>
      coverage({ corrected: 30 }, { subject: { widthMm, ...(heightMm ? { heightMm } : {}) } }).subject;
    expect(subject(1.2, 2)).toMatchObject({ verdict: 'covers', fits: true });
    expect(subject(1.2, 2)?.diagonalMm).toBeCloseTo(Math.hypot(12, 20), 9);
    expect(subject(2.2)).toMatchObject({ verdict: 'crops', bites: 'corrected', fits: true });
    expect(subject(5, 1)).toMatchObject({ fits: false });
    // Its long side goes along the sensor's long side: the camera can be turned.
    expect(subject(1, 3)).toMatchObject({ fits: true });
    expect(subject(1, 3)?.diagonalMm).toBeCloseTo(Math.hypot(30, 10), 9);
    expect(coverage({ corrected: 30 }).subject).toBeUndefined();
  });

  it('tells the grounds circle by circle', () => {
    expect(coverage({ corrected: 30, sharp: 50 }).reasons).toEqual([
      "the objective's corrected field ends 6.63 mm short of the corners",
      expect.stringContaining('the light reaches'),
      "the relay's rated circle reaches 3.37 mm past the corners",
    ]);
  });

  it('hangs on the circle whose ± decides, even where another is smaller', () => {
    const narrow: Pairing = {
      objective: {
        magnification: 10,
        na: 0.28,
        referenceFocalLengthMm: 200,
        fieldNumberMm: { value: 24, plusMinus: 0.5 },
        exitPupilFromShoulderMm: 0,
      },
      relay: { kind: 'tube-lens', focalLengthMm: 125, clearApertureMm: { value: 20, plusMinus: 5 }, frontPrincipalPlaneFromRimMm: 0 },
      sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 },
      infinitySpaceMm: 140,
    };
    const { coverage, sentence } = report(narrow);
    expect(coverage).toMatchObject({
      verdict: 'undecided',
      bites: 'lit',
      hangsOn: ['/relay/clearApertureMm'],
      between: ['misses', 'crops'],
    });
    expect(coverage.reasons[1]).toContain('which its ± leaves open');
    expect(sentence).toContain("hangs on the relay's clear opening: the relay's 20 mm rim leaves");
  });
  it('names what it hangs on wherever ± crosses a border', () => {
    const r = random(11);
    let undecided = 0;
    for (let k = 0; k < 160; k++) {
      const before = randomPairing(r);
      if (!pairingSchema.safeParse(before).success || contradictions(before).length > 0) continue;
      const coverage = report(before).coverage;
      if (coverage.verdict !== 'undecided' || !coverage.between) continue;
      undecided++;
      expect(coverage.hangsOn.length, JSON.stringify(before)).toBeGreaterThan(0);
    }
    expect(undecided).toBeGreaterThan(15);
  });
});
