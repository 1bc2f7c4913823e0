import { describe, expect, it } from 'vitest';
import { AIRY_ZERO, rayleigh, waveTerm } from '../../core/index.ts';
import { agrees } from './printed.ts';
import { engraved, told } from './rig.ts';
import { facing } from './rows/aperture.ts';

/**
 * Where sources disagree: core's convention is named, the number printed under it comes out, and the
 * number printed under the other one does not.
 */
describe('depth of field: the whole depth λ n / NA² and other readings', () => {
  const depth = (convention: Parameters<typeof waveTerm>[0]): number => waveTerm(convention, 0.55, 0.25, 1);

  it("'wave-and-pixel' is Murphy's 8.80 µm for 10x/0.25, not the 4.4 µm on either side nor twice it", () => {
    expect(agrees(depth('wave-and-pixel'), '8.80')).toBe(true);
    for (const other of ['4.4', '17.6', '8.66', '4.33']) expect(agrees(depth('wave-and-pixel'), other), other).toBe(false);
  });
  it("'half-wave-term' is the 4.4 µm on one side, not 8.80", () => {
    expect(agrees(depth('half-wave-term'), '4.4')).toBe(true);
    expect(agrees(depth('half-wave-term'), '8.80')).toBe(false);
  });
  it("'double-wave-term' is 17.60 µm, four times 'half-wave-term', and is no table's 8.80", () => {
    expect(agrees(depth('double-wave-term'), '17.60')).toBe(true);
    expect(agrees(depth('double-wave-term'), '8.80')).toBe(false);
  });
  it("'high-aperture' is 8.660 µm, twice λ / (8 n sin²(α/2)) with sin α = 0.25 (worked out), not 8.80", () => {
    expect(agrees(depth('high-aperture'), '8.660')).toBe(true);
    expect(agrees(depth('high-aperture'), '8.80')).toBe(false);
  });
  it('a report that is not told otherwise adds the wave term of wave-and-pixel and the blur of a pixel', () => {
    const figure = (convention?: Parameters<typeof waveTerm>[0]): number =>
      told({ ...engraved(4, 0.1), depth: { blurUm: 2.75, ...(convention ? { convention } : {}) } }, 'depthOfFieldUm');
    expect(agrees(figure(), '61.875')).toBe(true);
    for (const other of ['half-wave-term', 'double-wave-term', 'high-aperture'] as const)
      expect(agrees(figure(other), '61.875'), other).toBe(false);
  });
});

describe("Rayleigh's factor: all digits of k/2, not 0.61 nor 0.612", () => {
  it('0.61 x 0.55 µm is printed as 0.3355 and 0.612 x 0.55 as 0.3366; k/2 gives 0.3354', () => {
    expect(agrees(rayleigh(0.55, 1), '0.3354')).toBe(true);
    for (const other of ['0.3355', '0.3366']) expect(agrees(rayleigh(0.55, 1), other), other).toBe(false);
  });
  it('1.22 λ N is the radius of the Airy disc, not its diameter', () => {
    const radius = told(engraved(10, 0.25), 'airyDiameterUm') / 2;
    expect(agrees(radius / (0.55 * 20), '1.22')).toBe(true);
    expect(agrees(AIRY_ZERO, '1.22')).toBe(true);
    expect(agrees((2 * radius) / (0.55 * 20), '1.22')).toBe(false);
  });
});

describe('numerical aperture: by the sine', () => {
  it.each([
    [1.4, '0.357', '0.33634'],
    [2, '0.25', '0.24254'],
    [4, '0.125', '0.12403'],
  ])('f/%d takes NA %s, not the %s of a tangent definition (AP-004, Wolfram Formula Repository)', (N, sine, tangent) => {
    expect(agrees(told(facing(N), 'systemNa'), sine)).toBe(true);
    expect(agrees(told(facing(N), 'systemNa'), tangent)).toBe(false);
  });
  it('the pupil of 20 mm and NA 0.28 is 11.2 mm, not the 11.7 mm of the tangent', () => {
    const pupil = told({ objective: { na: 0.28 } }, 'pupilDiameterMm');
    expect(agrees(pupil, '11.2')).toBe(true);
    expect(agrees(pupil, '11.7')).toBe(false);
  });
  it('19 mm at 166 mm is the tangent 0.114 with its 2.92 µm; with the sine 0.1137 core has 2.93 µm', () => {
    expect(agrees(told(engraved(2, 0.114, 546), 'rayleighUm'), '2.92')).toBe(true);
    expect(agrees(told(engraved(2, 0.1137, 546), 'rayleighUm'), '2.92')).toBe(false);
  });
});
