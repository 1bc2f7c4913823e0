import { describe, expect, it } from 'vitest';
import type { Pairing } from '../../../../core/index.ts';
import { evaluateTable, type Settings, stillnessSays, tableCautions } from '../../../../core/table.ts';

const rig = (clearApertureMm?: number): Pairing => ({
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0 },
  relay: { kind: 'tube-lens', focalLengthMm: 200, frontPrincipalPlaneFromRimMm: 0, ...(clearApertureMm ? { clearApertureMm } : {}) },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
  infinitySpaceMm: 80,
});
const ALIKE: Settings = { referencePupilRatio: 1 };
const says = (settings: Settings = {}, pairing = rig(50)): string => stillnessSays(evaluateTable(pairing, { ...ALIKE, ...settings }));

describe('the sentence of light and stillness', () => {
  it('compares the light, middle and corner', () => {
    expect(says()).toMatch(
      /^It takes 4\.28 stops less exposure than a macro lens set to f\/8 and reversed or extended to the same size\. /,
    );
    expect(says({ referencePupilRatio: { value: 1, plusMinus: 0.3, origin: 'assumed' } })).toMatch(/^It takes 4\.28 stops less/);
    expect(says({ referenceFNumber: 20 / 11 })).toMatch(/^It takes as much exposure as a macro lens set to f\/1\.82 /);
    expect(says({ referenceFNumber: 10 / 11 })).toMatch(/^It takes 2 stops more exposure/);
    expect(says({ referenceFNumber: 40 / 11 })).toMatch(/^It takes 2 stops less exposure/);
    expect(says({}, rig(12))).toMatch(/, and the corner of the picture [\d.]+ stops more than its middle\./);
    expect(says({}, rig(1))).toMatch(/, and no light reaches the corner\. Nothing may move/);
    expect(says({}, rig())).toMatch(/^How much light arrives is not known/);
  });

  it('says how still it must stand, and what the drift and the swinging do', () => {
    expect(says()).toMatch(
      /Nothing may move by more than 0\.4 µm at the subject during the exposure or the flash: 40 µm\/s over 1\/100 s, 400 µm\/s in a flash of 1 ms\.$/,
    );
    expect(says({ exposureS: 2, driftUmPerS: 1 })).toMatch(/As it drifts now a point is drawn out over 5 pixels\.$/);
    expect(says({ swingUm: 1, swingHz: 50 })).toMatch(
      /The swinging draws a point out over 5 pixels in the exposure, over 0\.78 in the flash\.$/,
    );
  });

  it('warns of light in the eyes, and of flashes', () => {
    expect(tableCautions(evaluateTable(rig(50), {}), 'stillness').join(' ')).toMatch(/IEC 62471.*seizures/);
  });
});
