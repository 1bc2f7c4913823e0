import { describe, expect, it } from 'vitest';
import { quantityIn } from '../../../../core/parts/quantity.ts';
import type { Guess } from '../../../../core/parts/typical.ts';
import { SETTINGS } from '../../../../core/table/close-up/settings.ts';
import * as typical from '../../../../core/table/close-up/typical.ts';

type One = (typeof SETTINGS)[number];
const one = (key: string) => SETTINGS.find((s) => s.key === key) as One;

it.each([
  ['closeUpFocalLengthMm', 5, 5000],
  ['closeUpClearApertureMm', 0.1, 500],
  ['secondPowerDioptre', 0.2, 200],
  ['secondSeparationMm', 0, 500],
  ['cameraFocalLengthMm', 5, 5000],
  ['cameraMagnification', 0.0001, 20],
  ['cameraSubjectDistanceMm', 1, 100_000],
  ['closestFocusMm', 10, 100_000],
  ['cameraLengthMm', 1, 6000],
  ['cameraFNumber', 0.5, 256],
  ['pupilRatio', 0.1, 10],
  ['cameraPrincipalPlaneMm', -6000, 2000],
  ['cameraPupilDepthMm', -500, 2000],
  ['nearFocalLengthMm', 1, 6000],
  ['extensionMm', 0, 2000],
])('%s is taken from %d to %d and not beyond', (key, least, most) => {
  const schema = quantityIn(one(key).bounds);
  expect([least, most].map((x) => schema.safeParse(x).success)).toEqual([true, true]);
  expect([least - 1e-5, most + 1e-4].map((x) => schema.safeParse(x).success)).toEqual([false, false]);
});

it('a second lens is as weak and as strong as the first may be', () => {
  const [short, long] = one('closeUpFocalLengthMm').bounds;
  expect(one('secondPowerDioptre').bounds).toEqual([1000 / long, 1000 / short]);
});

it('the middle of f/8 to f/16 is set where nothing is told', () => expect(one('cameraFNumber').usual).toBe(11));

/** Low and high of a guess where so much is set. */
const ends = (guess: (read: (key: string) => number | undefined) => Guess | undefined, set: Record<string, number>) => {
  const found = guess((key) => set[key]);
  return found && [found.value - found.plusMinus, found.value + found.plusMinus].map((x) => Number(x.toFixed(9)));
};

describe('what is taken of a camera lens of 200 mm', () => {
  const LENS = { cameraFocalLengthMm: 200 };
  it.each([
    ['length', typical.length, [145, 355]],
    ['near focal length', typical.nearFocalLength, [110, 210]],
    ['principal plane', typical.principalPlane, [-140, 140]],
    ['pupil depth', typical.pupilDepth, [5, 165]],
    ['pupil ratio', typical.pupilRatio, [0.5, 1.5]],
  ] as const)('its %s lies so, and is not guessed of a lens that is not told', (_, guess, low) => {
    expect(ends(guess, LENS)).toEqual(low);
    expect(ends(guess, {})).toBeUndefined();
  });
  it('has a plane at its rim and a length of 50 mm more than its own', () => {
    const read = (key: string) => (LENS as Record<string, number>)[key];
    expect([typical.principalPlane(read)?.value, typical.length(read)?.value, typical.pupilDepth(read)?.value]).toEqual([0, 250, 85]);
  });

  it('reaches half to 1.2 times what a thin lens does at its closest focus, or with its subject so far off', () => {
    // 900 mm from sensor to subject: 300 and 600, half as large. With the subject 600 mm off the same.
    expect(ends(typical.magnification, { ...LENS, closestFocusMm: 900 })).toEqual([0.25, 0.6]);
    expect(ends(typical.magnification, { ...LENS, cameraSubjectDistanceMm: 600 })).toEqual([0.25, 0.6]);
    expect(ends(typical.magnification, { ...LENS, closestFocusMm: 900, cameraSubjectDistanceMm: 400 })).toEqual([0.25, 0.6]);
  });
  it('is not guessed where nothing is sharp, or too little is told', () => {
    expect(ends(typical.magnification, { ...LENS, cameraSubjectDistanceMm: 200 })).toBeUndefined();
    expect(ends(typical.magnification, { ...LENS, cameraSubjectDistanceMm: 150 })).toBeUndefined();
    expect(ends(typical.magnification, { ...LENS, closestFocusMm: 799 })).toBeUndefined();
    expect(ends(typical.magnification, LENS)).toBeUndefined();
    expect(ends(typical.magnification, { closestFocusMm: 900 })).toBeUndefined();
  });
});

it('two close-up lenses stand up to 12 mm apart', () => {
  expect(ends(typical.separation, { secondPowerDioptre: 3 })).toEqual([0, 12]);
  expect(ends(typical.separation, {})).toBeUndefined();
});
