import { describe, expect, it } from 'vitest';
import { contradictions, type Pairing, pairingSchema } from '../../../core/index.ts';

const base: Pairing = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 },
  relay: { kind: 'supplementary', focalLengthMm: 200, clearApertureMm: 54 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 60,
};
const found = (change: Partial<Pairing>) => contradictions(pairingSchema.parse({ ...base, ...change }));
const first = (change: Partial<Pairing>) => found(change)[0];

describe('contradictions', () => {
  it('has nothing to say of a sound pairing', () => expect(found({})).toEqual([]));

  it('refuses an aperture that no light leaves at', () => {
    expect(first({ objective: { ...base.objective, na: 1 } })).toMatchObject({ path: '/objective/na', given: '1' });
    expect(first({ objective: { ...base.objective, na: { value: 0.95, plusMinus: 0.05 } } })?.path).toBe('/objective/na');
    expect(found({ objective: { ...base.objective, na: 1.25, immersionIndex: 1.518 } })).toEqual([]);
    expect(first({ objective: { ...base.objective, na: 1.25, immersionIndex: 1.518 }, subject: { index: 1.2 } })?.path).toBe(
      '/subject/index',
    );
  });

  it('leaves an objective its barrel', () => {
    const at = (workingDistanceMm: number) => first({ objective: { ...base.objective, workingDistanceMm, parfocalDistanceMm: 45 } })?.path;
    expect([at(44), at(45), at(60)]).toEqual([undefined, '/objective/workingDistanceMm', '/objective/workingDistanceMm']);
  });

  it('wants a focal length or a power, in agreement to 1 % unless one is measured', () => {
    const relay = (more: object) => first({ relay: { kind: 'supplementary', clearApertureMm: 54, ...more } });
    expect(relay({})).toMatchObject({ path: '/relay/focalLengthMm', code: 'missing' });
    expect(relay({ focalLengthMm: 201.9, powerDioptre: 5 })).toBeUndefined();
    expect(relay({ focalLengthMm: 202.1, powerDioptre: 5 })).toMatchObject({ path: '/relay/focalLengthMm', code: 'contradiction' });
    expect(relay({ focalLengthMm: 202.1, powerDioptre: 5 })?.expected).toContain('200');
    expect(relay({ focalLengthMm: { value: 210, origin: 'measured' }, powerDioptre: 5 })).toBeUndefined();
  });

  it('keeps a zoom within its range and an aperture with its f-number', () => {
    const lens = (more: object) => first({ relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, ...more } });
    expect(lens({ focalLengthRangeMm: [70, 200] })).toBeUndefined();
    expect(lens({ focalLengthRangeMm: [70, 180] })?.path).toBe('/relay/focalLengthMm');
    expect(lens({ focalLengthRangeMm: [200, 70] })?.path).toBe('/relay/focalLengthRangeMm');
    expect(lens({ entrancePupilDiameterMm: 50.4 })).toBeUndefined();
    expect(lens({ entrancePupilDiameterMm: 51 })?.path).toBe('/relay/entrancePupilDiameterMm');
  });

  it('counts pixels one way only', () => {
    const sensor = (more: object) => first({ sensor: { widthMm: 36, heightMm: 24, ...more } });
    expect(sensor({})).toMatchObject({ path: '/sensor/pixelPitchUm', code: 'missing' });
    expect(sensor({ columns: 8256 })).toMatchObject({ path: '/sensor/rows', code: 'missing' });
    expect(sensor({ rows: 5504 })).toMatchObject({ path: '/sensor/columns', code: 'missing' });
    expect(sensor({ columns: 8256, rows: 5504 })).toBeUndefined();
    expect(sensor({ columns: 8256, rows: 5504, pixelPitchUm: 4.36 })).toBeUndefined();
    expect(sensor({ columns: 8256, rows: 5504, pixelPitchUm: 5 })?.path).toBe('/sensor/pixelPitchUm');
    expect(sensor({ columns: 8256, rows: 4000 })?.path).toBe('/sensor/rows');
    expect(sensor({ pixelPitchUm: 4.35, throatDiameterMm: 46, registerMm: 199 })).toBeUndefined();
    expect(sensor({ pixelPitchUm: 4.35, throatDiameterMm: 46, registerMm: 200 })?.path).toBe('/sensor/registerMm');
    expect(sensor({ pixelPitchUm: 4.35, throatDiameterMm: 46 })).toMatchObject({ path: '/sensor/registerMm', code: 'missing' });
  });

  it('puts every ring on one side of the relay', () => {
    const ring = (stop: object) => first({ stops: [{ diameterMm: 20, ...stop }] });
    expect(ring({ fromShoulderMm: 60 })).toBeUndefined();
    expect(ring({ fromShoulderMm: 60.1 })?.path).toBe('/stops/0/fromShoulderMm');
    expect(ring({ fromSensorMm: 199 })).toBeUndefined();
    expect(ring({ fromSensorMm: 200 })?.path).toBe('/stops/0/fromSensorMm');
    expect(ring({})).toMatchObject({ path: '/stops/0/fromShoulderMm', code: 'missing' });
    expect(ring({ fromShoulderMm: 1, fromSensorMm: 1 })?.path).toBe('/stops/0/fromSensorMm');
  });

  it('keeps the sensor away from the image of the exit pupil', () => {
    expect(found({ sensorOffsetMm: 20 })).toEqual([]);
    expect(first({ sensorOffsetMm: -195 })?.path).toBe('/sensorOffsetMm');
    expect(first({ sensorOffsetMm: 500, infinitySpaceMm: 600 })?.path).toBe('/sensorOffsetMm');
  });
});
