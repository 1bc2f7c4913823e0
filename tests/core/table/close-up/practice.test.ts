import { describe, expect, it } from 'vitest';
import { interval, numberIn, type Pairing, pairingSchema } from '../../../../core/index.ts';
import { thinMagnification } from '../../../../core/table/close-up/typical.ts';
import { evaluateTable, planOf, type Settings, type TableFigureId } from '../../../../core/table.ts';
import opening from '../../../../data/opening.json';

/** What is said in the trade, without a source, with the spread that it deserves. */

const OPENING: Pairing = pairingSchema.parse(opening.pairing);
const FULL_FRAME = { widthMm: 36, heightMm: 24 };
const CROP = { widthMm: 23.5, heightMm: 15.6 };

type Id = TableFigureId<'closeUp'>;
const answers = (settings: Settings, sensor: Partial<Pairing['sensor']> = {}) =>
  evaluateTable({ ...OPENING, sensor: { ...FULL_FRAME, pixelPitchUm: 6, ...sensor } }, settings, undefined, planOf('closeUp')).answers;
const told = (settings: Settings, id: Id, sensor?: Partial<Pairing['sensor']>): number => numberIn(answers(settings, sensor)[id]) as number;
const range = (settings: Settings, id: Id, sensor?: Partial<Pairing['sensor']>) =>
  interval(answers(settings, sensor)[id]) as readonly [number, number, number];

describe('said in the trade', () => {
  it('5 dioptres are 200 mm, 3.33 are 300 mm', () => {
    expect(told({ closeUpFocalLengthMm: 200 }, 'closeUpPowerDioptre')).toBe(5);
    expect(told({ closeUpFocalLengthMm: 300 }, 'closeUpPowerDioptre').toFixed(2)).toBe('3.33');
  });

  it('300 mm focuses between about 22 and 30 cm on ordinary lenses: those that come to 0.7 to 1.1 m from their rim', () => {
    const at = (X: number) => told({ closeUpFocalLengthMm: 300, cameraSubjectDistanceMm: X }, 'closeUpNearestMm');
    expect(at(700)).toBeCloseTo(210, 9);
    expect(at(825)).toBeCloseTo(220, 9);
    expect(at(1100)).toBeCloseTo(235.71, 2);
    expect(told({ closeUpFocalLengthMm: 300 }, 'closeUpFarthestMm')).toBe(300);
  });

  describe('a 200 mm telephoto with closest focus at 0.95 m reaches about 1:1 with it', () => {
    const lens: Settings = { closeUpFocalLengthMm: 300, cameraFocalLengthMm: 200 };
    it('as measured: 0.31 with the subject 650 mm off gives 0.98', () => {
      const measured = { ...lens, cameraMagnification: 0.31, cameraSubjectDistanceMm: 650 };
      expect(told(measured, 'closeUpNearMagnification')).toBeCloseTo(0.982, 3);
    });
    it('as an ideal thin lens it would be 1.4', () => {
      const thin = thinMagnification(200, 950) as number;
      expect(200 * (2 + thin + 1 / thin)).toBeCloseTo(950, 9);
      const ideal = { ...lens, cameraMagnification: thin, cameraSubjectDistanceMm: 200 * (1 + 1 / thin) };
      expect(told(ideal, 'closeUpNearMagnification').toFixed(1)).toBe('1.4');
    });
    it('guessed from focal length and closest focus alone, the interval holds both, and says that it is assumed', () => {
      const guessed = { ...lens, closestFocusMm: 950 };
      const [low, , high] = range(guessed, 'closeUpNearMagnification');
      expect(low).toBeLessThan(0.98);
      expect(high).toBeGreaterThan(1.386);
      expect(answers(guessed).closeUpNearMagnification).toMatchObject({ origin: 'assumed' });
      const [nearest, , farther] = range(guessed, 'closeUpNearestMm');
      expect(nearest).toBeLessThan((650 * 300) / 950);
      expect(farther).toBeGreaterThan((650 * 300) / 950);
    });
    it('closer than four focal lengths no thin lens is sharp: nothing is guessed, a measurement is asked for', () => {
      expect(thinMagnification(100, 300)).toBeUndefined();
      expect(thinMagnification(100, 400)).toBe(1);
      const macro = answers({ closeUpFocalLengthMm: 300, cameraFocalLengthMm: 100, closestFocusMm: 300 });
      expect(macro.closeUpNearMagnification).toMatchObject({ state: 'unknown', missing: ['/cameraMagnification'] });
      expect(macro.closeUpGain.state).toBe('known');
    });
  });

  it('a macro lens at 1:1, 180 mm off, gains 1.6 with 300 mm and 1.9 with 200 mm; nearly 2 with 300 mm would want 300 mm', () => {
    const gain = (f: number, X: number) =>
      told({ closeUpFocalLengthMm: f, cameraMagnification: 1, cameraSubjectDistanceMm: X }, 'closeUpNearMagnification');
    expect(gain(300, 180)).toBeCloseTo(1.6, 12);
    expect(gain(200, 180)).toBeCloseTo(1.9, 12);
    expect(gain(300, 300)).toBeCloseTo(2, 12);
  });

  it('22 cm as the farthest for 200 mm is more than its focal length: it was measured from another plane', () => {
    const own = { closeUpFocalLengthMm: { value: 200, plusMinus: 0 } };
    for (const X of [100, 1_000, 100_000]) expect(told({ ...own, cameraSubjectDistanceMm: X }, 'closeUpNearestMm')).toBeLessThan(200);
    expect(told(own, 'closeUpFarthestMm')).toBe(200);
  });

  it('they darken the corners below about 50 mm on full frame and 30 mm on a crop sensor: a 58 mm thread on a lens as deep as is usual', () => {
    const of = (f: number): Settings => ({ closeUpFocalLengthMm: 200, closeUpClearApertureMm: 54, cameraFocalLengthMm: f });
    const [wide, , full] = range(of(50), 'closeUpShortestCameraMm', FULL_FRAME);
    expect([wide < 50, full > 50]).toEqual([true, true]);
    const [low, , high] = range(of(30), 'closeUpShortestCameraMm', CROP);
    expect([low < 30, high > 30]).toEqual([true, true]);
    // Where one holds exactly the other follows from the diagonals: 50 mm on full frame is 32.6 mm on the crop sensor.
    const deep = { ...of(50), cameraPupilDepthMm: (50 * 54) / Math.hypot(36, 24) };
    expect(told(deep, 'closeUpShortestCameraMm', FULL_FRAME)).toBeCloseTo(50, 9);
    expect(told(deep, 'closeUpShortestCameraMm', CROP)).toBeCloseTo(32.6, 1);
  });

  it('f/8 to f/16 is the range, diffraction takes over near f/20 to f/22: so with pixels of 6 µm, sooner with finer ones', () => {
    const at = (pixelPitchUm: number) => told({ closeUpFocalLengthMm: 200 }, 'closeUpDiffractionFNumber', { pixelPitchUm });
    expect(at(6)).toBeCloseTo(21.8, 1);
    expect(at(5.5)).toBeCloseTo(20, 9);
    expect(at(4.4)).toBeCloseTo(16, 9);
    expect(at(2.2)).toBeCloseTo(8, 9);
  });
});
