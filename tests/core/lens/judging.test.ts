import { describe, expect, it } from 'vitest';
import { evaluate } from '../../../core/index.ts';
import { type Judging, judgingOf, pupilDoubtOf, type SharpOver, settingAt } from '../../../core/lens/judging.ts';
import { BENT } from '../contrast/lenses.ts';
import { pairingWith } from './rigs.ts';

const evaluated = (relay: object = {}, more: object = {}) =>
  evaluate(pairingWith({ glass: undefined, focalLengthMm: 198, ...relay }, more));
const judged = (relay: object = {}, more: object = {}, over?: SharpOver): Judging => judgingOf(evaluated(relay, more), BENT, over);
const objective = (exitPupilFromShoulderMm: object) => ({ objective: { ...pairingWith().objective, exitPupilFromShoulderMm } });

describe('what a lens is judged by', () => {
  it('is the picture, or the subject where its size is told', () => {
    const subject = { subject: { widthMm: 0.6, heightMm: 0.8 } };
    // At 9.9 times: 198 mm for the 20 mm of a 10x for 200 mm.
    expect(judged({}, subject, 'subject')).toMatchObject({ over: 'subject', cornerMm: expect.closeTo(4.95, 9) });
    for (const picture of [judged({}, subject), judged({}, subject, 'picture'), judged({}, {}, 'subject')])
      expect(picture).toMatchObject({ over: 'picture', cornerMm: Math.hypot(36, 24) / 2 });
  });

  it('is how it stands', () => {
    expect(judged().reversed).toBe(false);
    expect(judged({ reversed: true }).reversed).toBe(true);
    expect(judged().ways.map((way) => [way.reversed, way.lens.radiiMm[0]])).toEqual([
      [false, 1000],
      [true, 91],
    ]);
  });

  it('is the contrast and the focus asked for, or four fifths in one frame', () => {
    expect(judged()).toMatchObject({ criterion: 0.8, focus: 'one frame' });
    const sharp = { spectrum: 'one wavelength', relativeContrast: 0.6, focus: 'stack' };
    expect(judged({}, { sharp })).toMatchObject({ criterion: 0.6, focus: 'stack' });
  });

  it('is in pixels, told or counted: 36 mm of 7200 are 5 µm each', () => {
    expect(judged().pixelUm).toBe(4);
    expect(judged({}, { sensor: { widthMm: 36, heightMm: 24, columns: 7200, rows: 4800 } }).pixelUm).toBeCloseTo(5, 12);
  });

  it('is as doubtful as the place of the exit pupil', () => {
    const doubt = (of: object): number => pupilDoubtOf(evaluated({}, objective(of)));
    expect(doubt({ value: -20, plusMinus: 7, origin: 'measured' })).toBe(7);
    expect(doubt({ value: -20, origin: 'measured' })).toBe(0);
    expect(judged({}, objective({ value: -20, plusMinus: 7 })).pupilDoubtMm).toBe(7);
  });
});

it('a lens that stands so far from the shoulder is farther from a pupil behind that', () => {
  const judging = judged({}, objective({ value: -20 }));
  expect(settingAt(judging, judging.ways[0], 85).pupilDistanceMm).toBe(105);
  expect(settingAt(judging, judging.ways[1], 60).pupilDistanceMm).toBe(80);
});
