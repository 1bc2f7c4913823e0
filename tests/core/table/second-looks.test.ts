import { describe, expect, it } from 'vitest';
import { numberIn, type Pairing } from '../../../core/index.ts';
import { byConvention, evaluateTable, planOf, sideViewOf } from '../../../core/table.ts';

/** What the drawings and lists beside the figures say, held to the figures or to plain geometry. */

const RIG: Pairing = {
  objective: {
    magnification: 10,
    na: 0.6,
    referenceFocalLengthMm: 200,
    exitPupilFromShoulderMm: 0,
    workingDistanceMm: 20,
    parfocalDistanceMm: 45,
    noseDiameterMm: 20,
  },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 60, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 24, heightMm: 18, pixelPitchUm: 4 },
  infinitySpaceMm: 60,
  subject: { depthMm: 0.3 },
};

describe('the frames by each convention', () => {
  it('are for the chosen one those of the figures, in a medium and with a rail that errs', () => {
    const pairing = { ...RIG, subject: { depthMm: 0.3, index: 1.5 } };
    for (const railErrorUm of [0, 0.1, 0.3]) {
      const stack = evaluateTable(pairing, { railErrorUm, overlap: 0.05 }, undefined, planOf('stack'));
      const chosen = byConvention(stack).find((one) => one.chosen);
      expect(chosen?.frames).toBe(numberIn(stack.answers.stackFrames));
      expect(chosen?.frames).toBeGreaterThan(30);
    }
  });
});

describe('the view from the side', () => {
  const light = (pairing: Pairing) => evaluateTable(pairing, {}, undefined, planOf('light'));

  it('draws the objective’s cone at the tangent of its half angle', () => {
    expect(sideViewOf(light(RIG))?.coneSlope).toBeCloseTo(Math.tan(Math.asin(0.6)), 12);
  });

  it('says when the relay’s rim and not the nose is in the way, and lowers the rim with an extension', () => {
    expect(sideViewOf(light(RIG))?.byRelay).toBe(false);
    const wide = { ...RIG, relay: { ...RIG.relay, clearApertureMm: 400 } };
    expect(sideViewOf(light(wide))?.byRelay).toBe(true);
    // 100 mm of extension bring the subject 20² × 100 / (200 × F) nearer to all that stands above it; F = 200 + 100 − 30.
    const nearer = (20 ** 2 * 100) / (200 * 270);
    const extended = { ...wide, sensorOffsetMm: 100 };
    expect(sideViewOf(light(extended))?.lightSlope).toBeCloseTo((45 + 60 - nearer) / 200, 12);
  });
});

describe('a camera lens of which focal length and distance are known', () => {
  const guess = (settings: object) =>
    Object.fromEntries(
      evaluateTable({ ...RIG, relay: { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 50 } }, settings).inputs.map((i) => [
        i.path,
        i,
      ]),
    );

  it('is guessed about the thin lens of that length: from half to a fifth more', () => {
    // f / (X − f): 100 mm with the subject 300 mm before the lens is a half.
    const { least, greatest } = guess({ cameraFocalLengthMm: 100, cameraSubjectDistanceMm: 300 })['/cameraMagnification'] ?? {};
    expect(least).toBeCloseTo(0.25, 12);
    expect(greatest).toBeCloseTo(0.6, 12);
  });
});
