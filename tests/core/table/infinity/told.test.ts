import { describe, expect, it } from 'vitest';
import type { Pairing } from '../../../../core/index.ts';
import { evaluateTable, infinitySays, infinitySteps, type Settings, tableCautions, tubeBites } from '../../../../core/table.ts';

const rig = (more: Partial<Pairing> = {}, objective: Partial<Pairing['objective']> = {}): Pairing => ({
  objective: { magnification: 20, na: 0.42, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0, ...objective },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 50, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 24, heightMm: 16, pixelPitchUm: 4 },
  infinitySpaceMm: 50,
  ...more,
});
const says = (pairing: Pairing, settings: Settings = {}): string => infinitySays(evaluateTable(pairing, settings));
const bites = (pairing: Pairing, settings: Settings = {}) => tubeBites(evaluateTable(pairing, settings));

describe('what errs first', () => {
  it('is the magnification, unless more of it, or less of something else, is allowed', () => {
    expect(bites(rig())).toBe('magnification');
    expect(bites(rig(), { magnificationTolerance: 0.5 })).toBe('sharpness');
    expect(bites(rig(), { shiftLimitMm: 0.001 })).toBe('place');
    // A relay one focal length behind the pupil keeps its magnification whatever the tube.
    expect(bites(rig({ infinitySpaceMm: 200 }))).toBe('sharpness');
  });
});

const CAMERA = rig({
  relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, entrancePupilDepthMm: 40, frontPrincipalPlaneFromRimMm: 0 },
});

describe('the sentence of infinity', () => {
  it('says how far it stays sharp, then what the magnification does, then what else errs', () => {
    expect(says(rig())).toMatch(
      /^On axis the picture stays sharp with a tube up to 43\.3 mm too short or 64 mm too long; the corners suffer first\. A tube wrong by 2\.67 mm changes the magnification by 1 %, which matters only where scale is measured\. /,
    );
    expect(says(rig(), { magnificationTolerance: 0.5 })).toMatch(/ changes the magnification by 50 %, /);
    expect(says(rig(), { shiftLimitMm: 0.001 })).toMatch(/the subject’s place errs first, by 0\.001 mm with a tube wrong by 0\.399 mm\./i);
    expect(says(rig())).not.toMatch(/place errs/);
    expect(says(rig({}, { na: 0.05, magnification: 2 }))).toMatch(/^On axis the picture stays sharp whatever the length of the tube;/);
    // A relay one focal length behind the pupil keeps its magnification whatever the tube.
    expect(says(rig({ infinitySpaceMm: 200 }))).not.toMatch(/changes the magnification/);
  });

  it('says so where the magnification is known less well than it may change', () => {
    const focal = (plusMinus: number) => rig({ relay: { ...rig().relay, focalLengthMm: { value: 200, plusMinus, origin: 'measured' } } });
    expect(says(focal(6))).toMatch(/where scale is measured, and the magnification itself is known only to ±3 %\./);
    expect(says(focal(1))).toMatch(/where scale is measured\./);
  });

  it('speaks of the focus ring where a camera lens is the relay, and never of a tube', () => {
    const text = says(CAMERA);
    expect(text).toMatch(
      /^Set the lens’s focus ring; a far thing beyond [\d.]+ m will do\. On axis the picture stays sharp with the sensor /,
    );
    expect(text).toMatch(/ Focused on something 100 m away, the sensor stands 0\.401 mm beyond focus, with /);
    expect(`${text} ${infinitySteps(evaluateTable(CAMERA, {})).join(' ')}`).not.toMatch(/tube/);
    expect(says({ ...CAMERA, relay: { ...CAMERA.relay, reversed: true } })).toMatch(/^On axis the picture stays sharp with a tube /);
  });

  it('says what a far thing leaves and what may stand for infinity', () => {
    expect(says(rig(), { farThingM: 20.2 })).toContain(
      'A relay focused on something 20.2 m away leaves the tube 2 mm too long, with 0.8 % more magnification; anything beyond 15.2 m may stand for infinity.',
    );
    expect(says(rig({ infinitySpaceMm: 300 }), { farThingM: 20.2 })).toContain('0.5 % less magnification');
    expect(says(rig({ infinitySpaceMm: 200 }))).toContain('0.401 mm too long, with the magnification as it was;');
  });

  it('says what lies over the subject, where it is known what should', () => {
    expect(says(rig())).not.toContain('slip');
    expect(says(rig({}, { coverGlassMm: 0 }))).not.toContain('slip');
    expect(says(rig({}, { coverGlassMm: 0 }), { slipMm: 0.5 })).toMatch(
      /With a slip of 0\.5 mm where the objective wants none .* no longer sharp\.$/,
    );
    expect(says(rig({}, { coverGlassMm: 0.17 }))).toMatch(/With no slip where the objective wants 0\.17 mm .* 0\.941: still sharp\.$/);
    expect(says(rig({}, { coverGlassMm: 0.17 }), { slipMm: 0.17, resinMm: 2 })).toMatch(/With a slip of 0\.17 mm and 2 mm of resin/);
  });

  it('says so where the sensor is already too far out', () => {
    expect(says(rig({ sensorOffsetMm: 90 }))).not.toContain('may stand for infinity');
    expect(says(rig({ sensorOffsetMm: 90 }))).toMatch(
      /^The sensor stands so far from the relay’s focus that spherical aberration already shows/,
    );
  });
});

describe('the steps to infinity', () => {
  const steps = (pairing: Pairing) => infinitySteps(evaluateTable(pairing, {}));

  it('turn the ring of a camera lens and change the tube of any other relay', () => {
    expect(steps(rig())).toEqual([
      'Put the relay alone on the camera, without the objective: aperture wide open, autofocus and stabiliser off.',
      'Change the length of the tube until something at least 15.2 m away is sharp on the magnified screen, never the sun, and lock it.',
      'Put the objective on. From here on focus with the rail only: the tube stays as it is.',
    ]);
    expect(steps(CAMERA)[1]).toMatch(/^Turn the focus ring until something at least [\d.]+ m away is sharp .* lock it with tape\.$/);
  });

  it('say what a sensor off infinity on purpose adds, and ask for no distance where none would do', () => {
    expect(steps(rig({ sensorOffsetMm: 5 }))[1]).toMatch(/lock it\. Then make it 5 mm longer, as this rig is on purpose\.$/);
    expect(steps(rig({ sensorOffsetMm: -5 }))[1]).toMatch(/This rig then stands 5 mm nearer to the relay on purpose\.$/);
    expect(steps({ ...CAMERA, sensorOffsetMm: 5 })[1]).toMatch(/Then add the 5 mm of extension that this rig has on purpose\.$/);
    expect(steps(rig({ sensorOffsetMm: 90 }))[1]).toMatch(/until something as far away as can be seen is sharp/);
  });
});

describe('the cautions of infinity', () => {
  it('warn of the sun always', () => {
    expect(tableCautions(evaluateTable(rig(), {}), 'infinity').join()).toMatch(/by the sun/);
  });
});
