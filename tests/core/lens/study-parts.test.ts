import { describe, expect, it } from 'vitest';
import { coloursOf } from '../../../core/contrast/colours.ts';
import { evaluate } from '../../../core/index.ts';
import { contrastAgainstDetail, type DetailQuestion } from '../../../core/lens/detail.ts';
import { type Judging, judgingOf } from '../../../core/lens/judging.ts';
import { type SpacingPoint, spacingPoint, spacings } from '../../../core/lens/spacing.ts';
import { type Study, studyOf } from '../../../core/lens/study.ts';
import { BENT } from '../contrast/lenses.ts';
import { pairingWith } from './rigs.ts';

const JUDGING = judgingOf(evaluate(pairingWith({ glass: undefined, focalLengthMm: 198 })), BENT);
const SWAPPED: Judging = { ...JUDGING, ways: [JUDGING.ways[1], JUDGING.ways[0]] };
/** Beyond 14 mm or so on the sensor nothing arrives of what a rim of 8 mm lets through in the middle. */
const NARROW = judgingOf(evaluate(pairingWith({ glass: undefined, focalLengthMm: 198, clearApertureMm: 8 })), BENT);

describe('the glass where it stands', () => {
  const study = studyOf(JUDGING, 60);
  const seen = study.points.map((p) => p.seen as NonNullable<typeof p.seen>);

  it('is looked at in nine points, evenly to the corner', () => {
    expect(study.points).toHaveLength(9);
    expect(study.points[2]?.radiusMm).toBeCloseTo(JUDGING.cornerMm / 4, 12);
    expect(study.points.map((p) => p.radiusMm)).toEqual(study.points.map((_, i) => expect.closeTo((JUDGING.cornerMm * i) / 8, 9)));
  });

  it('turned round is the other way round', () => {
    const turned = studyOf({ ...JUDGING, reversed: true }, 60);
    expect(turned.way).toBe(JUDGING.ways[1]);
    expect(turned.worst).toEqual(spacingPoint(JUDGING, JUDGING.ways[1], 60));
    expect(study.way).toBe(JUDGING.ways[0]);
  });

  it('has each point at its own best focus in a stack, where its worse direction is better than at the common one', () => {
    const worse = (f: { sagittal: number; tangential: number }): number => Math.min(f.sagittal, f.tangential);
    const gain = seen.map((s) => worse(s.stack) - worse(s.oneFrame));
    expect(Math.min(...gain)).toBeGreaterThan(-1e-4);
    expect(Math.max(...gain)).toBeGreaterThan(0.02);
    for (const s of seen) expect(s.stack.spot.rmsUm).toBeLessThanOrEqual(s.oneFrame.spot.rmsUm + 1e-9);
    expect(study.worst.stack).toBeCloseTo(Math.min(...seen.map((s) => worse(s.stack))), 6);
    expect(study.worst.oneFrame).toBeCloseTo(Math.min(...seen.map((s) => worse(s.oneFrame))), 6);
    const foci = seen.map((s) => s.focusMm);
    expect(study.fieldCurvatureMm).toBeCloseTo(Math.max(...foci) - Math.min(...foci), 12);
  });

  it('has its curved field as depth at the subject, by the square of the magnification and the index there', () => {
    const told = studyOf({ ...JUDGING, magnification: 8, subjectIndex: 1.33, depthOfFieldUm: 1e6 }, 60);
    expect(told.curvatureAtSubjectUm / study.fieldCurvatureMm).toBeCloseTo((1000 * 1.33) / 64, 9);
    expect(told.extraFrames).toBe(0);
  });

  // Of a depth of three times what a frame holds, a step of 0.8 of that: two thirds take 2.5 of them.
  it('takes as many frames more as its depth over the steps', () =>
    expect(studyOf({ ...JUDGING, depthOfFieldUm: study.curvatureAtSubjectUm / 3 }, 60).extraFrames).toBe(3));

  it('in one wavelength has no colour', () => {
    expect(study.axialColour).toEqual([{ wavelengthNm: expect.closeTo(587.5618, 9), shiftMm: 0 }]);
    expect(study).toMatchObject({ lateralColourUm: 0, lateralColourPixels: 0 });
  });

  it('in two has the greatest distance of their middles', () => {
    const spectrum = [486.1327, 656.2725].map((wavelengthNm) => ({ wavelengthNm, weight: 0.5 }));
    const [way, other] = JUDGING.ways;
    const two = studyOf({ ...JUDGING, pixelUm: 5, ways: [{ ...way, colours: coloursOf(way.lens, spectrum, 587.5618) }, other] }, 60);
    expect(two.axialColour.map((c) => c.wavelengthNm)).toEqual([486.1327, 656.2725].map((nm) => expect.closeTo(nm, 9)));
    const all = two.points.map((p) => p.seen?.oneFrame.spot.lateralColourUm ?? 0);
    expect(two.lateralColourUm).toBe(Math.max(...all));
    expect(two.lateralColourUm).toBeGreaterThan(1);
    expect(two.lateralColourPixels).toBeCloseTo(two.lateralColourUm / 5, 12);
  });
});

describe('a picture part of which gets no light', () => {
  const study: Study = studyOf(NARROW, 120);
  const lit = study.points.filter((p) => p.seen);

  it('has points that are not seen, from some radius on, with no more told of them than where they are', () => {
    expect(lit.length).toBeGreaterThan(0);
    expect(lit.length).toBeLessThan(9);
    expect(study.points.slice(0, lit.length).every((p) => p.seen)).toBe(true);
    expect(study.points.at(-1)).toStrictEqual({ radiusMm: expect.closeTo(NARROW.cornerMm, 9), slope: expect.any(Number) });
  });

  it('has none that is seen where nothing of the detail arrives, with all the light there is', () => {
    const fine = studyOf({ ...JUDGING, frequency: 500 }, 60);
    expect(fine.points.map((p) => p.seen)).toEqual(Array(9).fill(undefined));
    expect(fine.worst).toMatchObject({ oneFrame: 0, stack: 0, cornerLight: 1, oneFrameBlurUm: expect.any(Number) });
  });

  it('keeps no contrast in its worst point, and has no blur there', () => {
    expect(spacingPoint(NARROW, NARROW.ways[0], 120)).toStrictEqual({ infinitySpaceMm: 120, oneFrame: 0, stack: 0, cornerLight: 0 });
  });

  it('has no colour where nothing is seen at all', () => {
    const dark = studyOf({ ...NARROW, ways: dimmed(NARROW) }, 120);
    expect(dark.points.some((p) => p.seen)).toBe(false);
    expect(dark.lateralColourUm).toBe(0);
    expect(dark.fieldCurvatureMm).toBe(0);
  });
});

/** The same ways round, of glass that lets nothing through. */
function dimmed({ ways }: Judging): Judging['ways'] {
  const shut = (way: Judging['ways'][0]): Judging['ways'][0] => ({
    ...way,
    colours: coloursOf(
      { ...way.lens, semiAperturesMm: way.lens.semiAperturesMm.map(() => 1e-9) },
      [{ wavelengthNm: 587.5618, weight: 1 }],
      587.5618,
    ),
  });
  return [shut(ways[0]), shut(ways[1])];
}

describe('the places of the infinity space', () => {
  const spaces = (count: number): number[][] =>
    [...spacings(NARROW, { fromMm: 110, toMm: 150, count })].map((pair) => pair.map((p: SpacingPoint) => p.infinitySpaceMm));
  it('are evenly spaced, both ways round; one of them is the first', () => {
    expect(spaces(1)).toEqual([[110, 110]]);
    expect(spaces(2)).toEqual([
      [110, 110],
      [150, 150],
    ]);
    expect(spaces(3).map(([a]) => a)).toEqual([110, 130, 150]);
  });
  it('are as listed first and then turned round', () => {
    const [pair] = [...spacings(JUDGING, { fromMm: 85, toMm: 85, count: 1 })];
    const [swapped] = [...spacings(SWAPPED, { fromMm: 85, toMm: 85, count: 1 })];
    expect(swapped).toEqual(pair?.toReversed());
    expect(pair?.[0].stack).toBeGreaterThanOrEqual(pair?.[0].oneFrame as number);
    // Each point at its own focus: the worst of them, not the best.
    expect(pair?.[1].stack).toBeLessThan(0.5);
  });
});

describe('contrast against detail', () => {
  const asked = (more: Partial<DetailQuestion> = {}): DetailQuestion => ({
    infinitySpaceMm: 85,
    radiusMm: 15,
    focusMm: 0.2,
    magnification: 10,
    pixelMm: 0.004,
    frequencies: [40],
    ...more,
  });

  it('is that of the way round in which the lens stands', () => {
    const listed = contrastAgainstDetail(JUDGING, asked());
    const turned = contrastAgainstDetail({ ...JUDGING, reversed: true }, asked());
    expect(listed).toHaveLength(1);
    expect(turned).toEqual(contrastAgainstDetail(SWAPPED, asked()));
    expect(turned[0]?.tangential).toBeLessThan(0.8 * (listed[0]?.tangential as number));
  });

  it('is that of the point asked for: nothing where no light arrives', () => {
    const lit = studyOf(NARROW, 120).points.filter((p) => p.seen).length;
    expect(
      contrastAgainstDetail(NARROW, asked({ infinitySpaceMm: 120, radiusMm: (NARROW.cornerMm * (lit - 1)) / 8, frequencies: [5] })),
    ).toHaveLength(1);
    expect(contrastAgainstDetail(NARROW, asked({ infinitySpaceMm: 120, radiusMm: NARROW.cornerMm, frequencies: [5] }))).toEqual([]);
  });

  it('has that of the pixel beside it', () => {
    // Half a cycle to a pixel of 12.5 µm: sin(π/2) / (π/2).
    expect(contrastAgainstDetail(JUDGING, asked({ pixelMm: 0.0125 }))[0]?.pixel).toBeCloseTo(2 / Math.PI, 12);
  });
});
