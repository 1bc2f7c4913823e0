import { describe, expect, test } from 'vitest';
import { coloursOf } from '../../../core/contrast/colours.ts';
import { diffractionMtf } from '../../../core/diffraction/mtf.ts';
import { beam, contrastAgainstDetail, ringsAndSpokes, studyOf, trace } from '../../../core/glassworks.ts';
import { numberIn, report } from '../../../core/index.ts';
import { blurOf } from '../../../core/lens/blur.ts';
import { settingAt } from '../../../core/lens/judging.ts';
import { spotDiagram } from '../../../core/lens/spots.ts';
import { spot } from '../../../core/trace/spot.ts';
import { judgingIn, pairingWith, works } from './rigs.ts';

describe('the glass where it stands', () => {
  const judging = judgingIn(pairingWith());
  const study = studyOf(judging, 85);

  test('is told from the middle to the corner', () => {
    expect(study.points.map((p) => p.radiusMm)[0]).toBe(0);
    expect(study.points.at(-1)?.radiusMm).toBeCloseTo(Math.hypot(36, 24) / 2, 12);
    expect(study.points.every((p) => p.seen)).toBe(true);
  });

  test('agrees with the sharp circle: inside it every point passes the criterion, at its border the corner fails', () => {
    const circle = numberIn(report(pairingWith(), works).figures.sharpCircleMm) as number;
    const inside = studyOf({ ...judging, cornerMm: 0.999 * (circle / 2) }, 85);
    const outside = studyOf({ ...judging, cornerMm: 1.003 * (circle / 2) }, 85);
    expect(inside.worst.oneFrame).toBeGreaterThan(0.8 - 2e-3);
    expect(outside.worst.oneFrame).toBeLessThan(0.8 + 2e-3);
  });

  test('has one flat focus that no point likes better than its own', () => {
    for (const { seen } of study.points) {
      if (!seen) continue;
      const worse = (f: typeof seen.oneFrame): number => Math.min(f.sagittal, f.tangential);
      expect(worse(seen.stack)).toBeGreaterThanOrEqual(worse(seen.oneFrame) - 1e-4);
    }
    expect(study.worst.oneFrame).toBeCloseTo(
      Math.min(...study.points.map(({ seen }) => Math.min(seen?.oneFrame.sagittal ?? 0, seen?.oneFrame.tangential ?? 0))),
      6,
    );
  });

  test('tells the curved field as depth at the subject and in frames', () => {
    const m = judging.magnification;
    expect(study.curvatureAtSubjectUm).toBeCloseTo((1000 * study.fieldCurvatureMm) / (m * m), 12);
    expect(study.extraFrames).toBe(
      Math.max(0, Math.ceil((study.curvatureAtSubjectUm - judging.depthOfFieldUm) / (0.8 * judging.depthOfFieldUm))),
    );
    const foci = study.points.flatMap(({ seen }) => seen?.focusMm ?? []);
    expect(study.fieldCurvatureMm).toBeCloseTo(Math.max(...foci) - Math.min(...foci), 12);
    expect(study.fieldCurvatureMm).toBeGreaterThan(0.1);
  });

  test('has no colour in one wavelength, and in white light that of its glasses', () => {
    expect(study.lateralColourUm).toBe(0);
    expect(study.axialColour).toEqual([{ wavelengthNm: expect.closeTo(587.5618, 9), shiftMm: 0 }]);
    const white = studyOf(judgingIn(pairingWith({}, { sharp: {} })), 85);
    expect(white.lateralColourUm).toBeGreaterThan(1);
    expect(white.lateralColourPixels).toBeCloseTo(white.lateralColourUm / 4, 12);
    expect(white.axialColour).toHaveLength(5);
    // An achromat's blue and red ends both focus beyond the green.
    expect(Math.min(white.axialColour[0]?.shiftMm ?? 0, white.axialColour.at(-1)?.shiftMm ?? 0)).toBeGreaterThan(0);
  });

  // Back focal lengths from that of 587.5618 nm, by an independent program.
  test('has the axial colour that an independent trace found for this lens', () => {
    const [way, turned] = judging.ways;
    const spectrum = [486.1327, 656.2725].map((wavelengthNm) => ({ wavelengthNm, weight: 0.5 }));
    const inTwo = { ...judging, ways: [{ ...way, colours: coloursOf(way.lens, spectrum, 587.5618) }, turned] as const };
    const shifts = studyOf(inTwo, 85).axialColour.map((c) => c.shiftMm);
    expect(shifts).toEqual([expect.closeTo(0.0274218, 6), expect.closeTo(0.131795, 5)]);
  });

  test('gives contrast against detail: the perfect pupil in closed form, the relay below it, the pixel beside it', () => {
    const f = study.way.cardinal.effectiveFocalLengthMm;
    const curve = contrastAgainstDetail(judging, {
      infinitySpaceMm: 85,
      radiusMm: 0,
      focusMm: study.flatFocusMm,
      magnification: judging.magnification,
      pixelMm: 0.004,
      frequencies: [1, 20, 50, 80, 200],
    });
    expect(curve).toHaveLength(4);
    for (const p of curve) {
      expect(Math.abs(p.perfect - diffractionMtf((p.imageLpPerMm * 587.5618e-6 * f) / 11.2))).toBeLessThan(1e-3);
      expect(Math.max(p.sagittal, p.tangential)).toBeLessThanOrEqual(p.perfect + 1e-9);
      expect(p.objectLpPerMm).toBeCloseTo(p.imageLpPerMm * judging.magnification, 10);
      expect(p.pixel).toBeCloseTo(Math.sin(Math.PI * 0.004 * p.imageLpPerMm) / (Math.PI * 0.004 * p.imageLpPerMm), 10);
    }
  });

  test('says of a point without light that it is not seen', () => {
    const dark = studyOf(judgingIn(pairingWith({ clearApertureMm: 8 })), 120);
    expect(dark.points.at(-1)?.seen).toBeUndefined();
    expect(dark.worst).toMatchObject({ oneFrame: 0, stack: 0, cornerLight: 0 });
    expect(dark.worst.oneFrameBlurUm).toBeUndefined();
  });
});

describe('the subject in a medium', () => {
  test('lies as much deeper as the medium is denser, the curved field too', () => {
    const [air, water] = [1, 1.33].map((index) => studyOf(judgingIn(pairingWith({}, { subject: { index } })), 85).curvatureAtSubjectUm);
    expect((water ?? 0) / (air ?? 1)).toBeCloseTo(1.33, 9);
  });
});

describe('blur', () => {
  // A beam that a rim cuts, by a plain grid over what is left of the pupil.
  test('of a cut beam counts what is left of it alone', () => {
    const judging = judgingIn(pairingWith({ clearApertureMm: 24 }));
    const setting = settingAt(judging, judging.ways[0], 150);
    const slope = 15 / setting.scaleMm;
    const points: [number, number][] = [];
    const n = 60;
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        const [x, y] = [5.6 * (-1 + (2 * i + 1) / n), 5.6 * (-1 + (2 * j + 1) / n)];
        if (setting.discs.radius.every((r, k) => Math.hypot(x, y - (setting.discs.walk[k] ?? 0) * slope) <= r)) points.push([x, y]);
      }
    expect(points.length).toBeLessThan(0.7 * (Math.PI / 4) * n * n);
    const disc = {
      count: points.length,
      x: Float64Array.from(points, ([x]) => x),
      y: Float64Array.from(points, ([, y]) => y),
      share: new Float64Array(points.length).fill(1 / points.length),
    };
    const bundle = beam(disc, { pupilRadiusMm: 1, pupilDistanceMm: setting.pupilDistanceMm, slope });
    trace(judging.ways[0].prescribed, bundle);
    const own = spot(bundle, disc.share, judging.ways[0].cardinal.backFocalLengthMm).square;
    const told = blurOf(setting, slope);
    expect(Math.abs((told?.at ?? 0) - own.at)).toBeLessThan(0.02);
    expect(Math.sqrt((told?.least ?? 0) / own.least)).toBeCloseTo(1, 1);
    expect(Math.sqrt((told?.rate ?? 0) / own.rate)).toBeCloseTo(1, 2);
  });

  test.each(['one wavelength', 'photopic'] as const)('in the light of %s is that of the points that are drawn', (spectrum) => {
    const judging = judgingIn(pairingWith({}, { sharp: { spectrum } }));
    const { points, worst } = studyOf(judging, 40);
    for (const focus of ['oneFrame', 'stack'] as const) {
      const spots = points.flatMap(({ seen }) => (seen ? [seen[focus].spot] : []));
      expect(Math.max(...spots.map((spot) => spot.rmsUm))).toBeCloseTo(
        (focus === 'stack' ? worst.stackBlurUm : worst.oneFrameBlurUm) ?? 0,
        9,
      );
      if (spectrum === 'photopic') continue;
      // An even scatter of 120 rays is good to a few per cent.
      for (const { xUm, yUm, rmsUm } of spots) {
        const square = xUm.reduce((sum, x, i) => sum + (x * x + (yUm[i] ?? 0) ** 2) / xUm.length, 0);
        expect(Math.sqrt(square) / rmsUm).toBeCloseTo(1, 1);
      }
    }
  });

  // In white light the spots of five colours, each about its own middle, and how far the middles are apart.
  test('in white light adds up the colours and the distances of their middles', () => {
    const judging = judgingIn(pairingWith({}, { sharp: {} }));
    const { points, way } = studyOf(judging, 40);
    const corner = points.at(-1);
    if (!corner?.seen) throw new Error('the corner gets light');
    const plane = way.cardinal.backFocalLengthMm + 0.4;
    const disc = ringsAndSpokes(16, 32);
    const { prescriptions, weights } = way.colours;
    const land = prescriptions.map((lens) => {
      const rays = beam(disc, { pupilRadiusMm: 5.6, pupilDistanceMm: 40, slope: corner.slope });
      trace(lens, rays);
      return Array.from(disc.share, (share, i) => {
        const reach = (plane - (rays.z[i] ?? 0)) / (rays.N[i] ?? 1);
        return { share, x: (rays.x[i] ?? 0) + reach * (rays.L[i] ?? 0), y: (rays.y[i] ?? 0) + reach * (rays.M[i] ?? 0) };
      });
    });
    const mean = (of: (ray: { x: number; y: number }) => number): number =>
      land.reduce((sum, rays, c) => sum + (weights[c] ?? 0) * rays.reduce((s, ray) => s + ray.share * of(ray), 0), 0);
    const middle = mean((ray) => ray.y);
    const square = mean((ray) => ray.x ** 2 + (ray.y - middle) ** 2);
    const setting = settingAt(judging, way, 40);
    expect(spotDiagram(setting, corner.slope, plane)?.rmsUm).toBeCloseTo(1000 * Math.sqrt(square), 3);
    const middles = land.map((rays) => rays.reduce((sum, ray) => sum + ray.share * ray.y, 0));
    expect(spotDiagram(setting, corner.slope, plane)?.lateralColourUm).toBeCloseTo(1000 * (Math.max(...middles) - Math.min(...middles)), 3);
  });
});
