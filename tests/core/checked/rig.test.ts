import { describe, expect, it } from 'vitest';
import { engraved, figureValue, OIL, onTable, pairingOf, told } from '../../../core/checked/rig.ts';

describe('the rig on which checks stand', () => {
  it('is 10x/0.25 and its tube lens, in which nothing cuts light', () => {
    expect(told({}, 'systemMagnification')).toBe(10);
    expect(told({}, 'systemNa')).toBe(0.25);
    expect(told({ sensor: { widthMm: 40, heightMm: 30 } }, 'cornerIllumination')).toBe(1);
    // Pixels of 4 µm at 10x, a field of 4.8 by 3.6 mm.
    expect(told({}, 'pixelAtSubjectUm')).toBeCloseTo(0.4, 12);
    expect(told({}, 'objectFieldDiagonalMm')).toBeCloseTo(0.6, 12);
    // The tube lens 50 mm behind the shoulder, the sensor 200 mm behind that.
    expect(told({}, 'totalLengthMm')).toBe(250);
    expect(pairingOf()).toEqual(pairingOf({}));
  });
  it('takes what is told of it, and what is set on the table beside it', () => {
    const { pairing, settings } = onTable({ relay: { focalLengthMm: 100 }, table: { tubeErrorMm: 1 } });
    expect(pairing.relay).toMatchObject({ kind: 'tube-lens', focalLengthMm: 100 });
    expect(settings).toEqual({ tubeErrorMm: 1 });
    expect(onTable({}).settings).toEqual({});
  });
  it('has the objective that is engraved', () => {
    expect(engraved('25x/0.80', { immersionIndex: OIL })).toEqual({
      objective: { magnification: 25, na: 0.8, immersionIndex: 1.515 },
      wavelengthNm: 550,
    });
    expect(engraved('100x/0.9')).toEqual({ objective: { magnification: 100, na: 0.9, immersionIndex: 1 }, wavelengthNm: 550 });
  });
});

describe('a figure of a rig', () => {
  it('without a value is an error, which says why', () => {
    // Nothing is known of how near the objective comes.
    expect(() => told({}, 'clearWorkingDistanceMm')).toThrow('clearWorkingDistanceMm is unknown');
    expect(() => told({}, 'nearestThingM')).not.toThrow();
  });
  it('is the same each time that it is asked, of whatever rig', () => {
    const ask = (): number[] => [told({}, 'rayleighUm'), told(engraved('10x/0.50'), 'rayleighUm')];
    const [coarse = 0, fine = 0] = ask();
    expect(fine).toBeCloseTo(coarse / 2, 12);
    expect(ask()).toEqual([coarse, fine]);
  });
  it('is told in the unit of its source, of a rig that is not made before it is asked', () => {
    let made = 0;
    const value = figureValue('pixelAtSubjectUm', '400', () => ({ sensor: { pixelPitchUm: 4 * ++made } }), { what: 'w', per: 1000 });
    expect(made).toBe(0);
    expect([value.of(), value.of()]).toEqual([400, 800]);
    expect(value).toMatchObject({ what: 'w', printed: '400', figure: 'pixelAtSubjectUm' });
    expect(value.rig?.().pairing.sensor.pixelPitchUm).toBe(12);
    expect(figureValue('systemMagnification', '0.1', {}, { as: (m) => 1 / m }).of()).toBe(0.1);
    expect(figureValue('systemMagnification', '10', {}).of()).toBe(10);
  });
});
