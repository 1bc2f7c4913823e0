import { describe, expect, it } from 'vitest';
import type { Pairing } from '../../../../core/index.ts';
import { evaluateTable, infinitySays, type Settings, tableCautions, tubeBites } from '../../../../core/table.ts';

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

describe('the sentence of infinity', () => {
  it('says how wrong the tube may be, what errs first, and what else would bear', () => {
    expect(says(rig())).toMatch(
      /^Set the tube to within ±2\.67 mm: the magnification errs first, by 1 %; sharpness alone would bear 43\.3 mm shorter and 64 mm longer\./,
    );
    expect(says(rig(), { magnificationTolerance: 0.5 })).toMatch(
      /^Set the tube to within ±43\.3 mm: the sharpness goes first, by spherical/,
    );
    expect(says(rig(), { shiftLimitMm: 0.001 })).toMatch(/the subject’s place errs first, by 0\.001 mm; sharpness/);
    expect(says(rig({}, { na: 0.05, magnification: 2 }))).toMatch(/; sharpness never asks\./);
  });

  it('says what a far thing leaves and what may stand for infinity', () => {
    expect(says(rig(), { farThingM: 20.2 })).toContain(
      'A relay focused on something 20.2 m away leaves it 2 mm too long, with 0.8 % more magnification; anything beyond 15 m may stand for infinity.',
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

describe('the cautions of infinity', () => {
  it('warn of the sun always', () => {
    expect(tableCautions(evaluateTable(rig(), {}), 'infinity').join()).toMatch(/by the sun/);
  });
});
