import { describe, expect, it } from 'vitest';
import { type Pairing, pairingSchema } from '../../../../core/index.ts';
import { closeUpClaims, closeUpSays, evaluateTable, planOf, type Settings, tableCautions } from '../../../../core/table.ts';
import opening from '../../../../data/opening.json';

/** What is said of it. */

const OPENING: Pairing = pairingSchema.parse(opening.pairing);
const TELEPHOTO: Pairing = { ...OPENING, relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 } };
const on = (settings: Settings, pairing = OPENING) => evaluateTable(pairing, settings, undefined, planOf('closeUp'));
const LENS: Settings = { closeUpFocalLengthMm: 300, cameraFocalLengthMm: 200 };
const MACRO: Settings = { closeUpFocalLengthMm: 300, cameraMagnification: 1, cameraSubjectDistanceMm: 180 };

describe('what the close-up lens elsewhere comes to', () => {
  it('is none where the relay is no close-up lens and none is told, each figure of it with that reason', () => {
    const { answers } = on({ cameraFocalLengthMm: 200 }, TELEPHOTO);
    expect(answers.closeUpFarthestMm).toMatchObject({ state: 'none', why: expect.stringContaining('no close-up lens') });
    expect(answers.tubesFarExtensionMm).toMatchObject({ state: 'none' });
    expect(closeUpSays(on({}, TELEPHOTO))).toEqual([expect.stringMatching(/^The relay is no close-up lens: /)]);
    expect(tableCautions(on({ cameraFocalLengthMm: 200 }, TELEPHOTO), 'closeUp')).toEqual([]);
    expect(on(LENS, TELEPHOTO).answers.closeUpFarthestMm).toMatchObject({ state: 'known', value: 300 });
  });

  it('asks for the camera lens, then for its closest focus, then for what is only guessed', () => {
    expect(closeUpSays(on({ closeUpFocalLengthMm: 300 }))[0]).toContain('Tell which lens it goes on');
    expect(closeUpSays(on(LENS))[0]).toContain('at no more than 300 mm at 0.667×. How near it comes hangs on its closest focus');
    expect(closeUpSays(on({ ...LENS, closestFocusMm: 950 }))[0]).toMatch(/photograph a ruler .* and measure how far/);
    const measured = closeUpSays(on({ ...LENS, cameraMagnification: 0.31, cameraSubjectDistanceMm: 650 }))[0];
    expect(measured).toBe('A 200 mm lens with the close-up lens is sharp from 205 mm at 0.982× to 300 mm at 0.667×.');
  });

  it('says that the rim is too narrow only where that is sure', () => {
    const narrow: Settings = { ...LENS, closeUpClearApertureMm: 30, cameraFNumber: 4 };
    expect(closeUpSays(on({ ...narrow, cameraPupilDepthMm: 60 })).at(-1)).toContain('too narrow for the corners');
    expect(closeUpSays(on({ ...narrow, closeUpClearApertureMm: 58 })).at(-1)).toContain('Tubes');
  });

  it('shows the arithmetic of a claim of twice as large', () => {
    expect(closeUpClaims(on(MACRO))).toEqual([
      'Farther than 300 mm nothing is sharp: a greater distance in a table was measured from another plane, such as the sensor.',
      'At its nearest it shows things 1 + 180 / 300 = 1.6 times as large as without the close-up lens; twice would take a subject that stood 300 mm off before.',
    ]);
    const open = on({ ...MACRO, cameraSubjectDistanceMm: { value: 180, plusMinus: 60 } });
    expect(closeUpClaims(open).at(-1)).toMatch(/Measure those 180 mm/);
    expect(closeUpClaims(on({ ...MACRO, closeUpFocalLengthMm: { value: 300, plusMinus: 15 } })).join(' ')).toMatch(
      /^Farther than about 300 mm(?!.*Measure)/,
    );
    expect(closeUpClaims(on({ ...MACRO, secondPowerDioptre: 2 }))).toEqual([]);
  });

  it('warns of the sun, and of dark corners and odd focal lengths by what is common practice', () => {
    const cautions = (f: number, more: Settings = {}) =>
      tableCautions(on({ ...LENS, cameraFocalLengthMm: f, ...more }), 'closeUp').join(' ');
    expect(cautions(100)).toMatch(/sun/);
    expect(cautions(100)).not.toMatch(/common practice/);
    expect(cautions(24)).toMatch(/darken the corners/);
    expect(cautions(400)).toMatch(/50 to 300 mm/);
    expect(tableCautions(on({ closeUpFocalLengthMm: 300 }), 'closeUp')).toEqual([]);
  });

  it('has no magnification of tubes of no length, nor of lenses that stand farther apart than they see', () => {
    expect(on({ ...LENS, extensionMm: 0 }).answers.ownTubesFarMagnification.state).toBe('none');
    expect(on({ ...LENS, secondPowerDioptre: 5, secondSeparationMm: 310 }).answers.closeUpFarthestMm.state).toBe('none');
    expect(on({ ...LENS, closestFocusMm: 100, cameraLengthMm: 200 }).answers.closeUpNearestMm).toMatchObject({
      state: 'none',
      why: expect.stringContaining('counts from the sensor'),
    });
  });
});
