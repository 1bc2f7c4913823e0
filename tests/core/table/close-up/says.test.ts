import { describe, expect, it } from 'vitest';
import { closeUpCautions } from '../../../../core/table/close-up/cautions.ts';
import { closeUpClaims } from '../../../../core/table/close-up/claims.ts';
import { closeUpSays } from '../../../../core/table/close-up/sentence.ts';
import type { TableEvaluation } from '../../../../core/table/evaluate.ts';

/** The words of answers made up for the case, each number at a border or just beside. */

const known = (value: number, low = value, high = value) => ({ state: 'known', value, low, high, origin: 'marked' });
const UNKNOWN = { state: 'unknown', missing: [] };
const none = (why: string) => ({ state: 'none', why });
const evaluation = (answers: object, settings: object = {}, sensor: object = {}) =>
  ({ answers, settings, pairing: { sensor } }) as unknown as TableEvaluation;

describe('claims', () => {
  const claims = (focal: object, gain: object = UNKNOWN, settings: object = {}) =>
    closeUpClaims(evaluation({ closeUpFocalMm: focal, closeUpGain: gain }, settings));
  const SURE = { cameraSubjectDistanceMm: 180 };

  it('are of one close-up lens of known focal length', () => {
    expect(claims(UNKNOWN)).toEqual([]);
    expect(claims(none(''))).toEqual([]);
    expect(claims(known(300), UNKNOWN, { secondPowerDioptre: 2 })).toEqual([]);
    expect(claims(known(300)).length).toBe(1);
  });

  it('tell the farthest as about from 1 % of looseness on, in three digits', () => {
    expect(claims(known(200, 199, 201))[0]).toMatch(/^Farther than 200 mm nothing/);
    expect(claims(known(200, 198.99, 201.006))[0]).toMatch(/^Farther than about 200 mm nothing/);
    expect(claims(known(333.3))[0]).toMatch(/^Farther than 333 mm nothing/);
  });

  const gains = (gain: number, settings: object = SURE) => claims(known(300), known(gain), settings)[1] as string;
  it('reckon the gain, and what twice would take where it is neither near that nor far', () => {
    expect(gains(1.6)).toBe(
      'At its nearest it shows things 1 + 180 / 300 = 1.6 times as large as without the close-up lens; twice would take a subject that stood 300 mm off before.',
    );
    expect(gains(1.4115)).toMatch(/1 \+ 123 \/ 300 = 1\.41 times/);
    expect(gains(1.848)).toMatch(/; twice/);
    expect(gains(1.86)).not.toMatch(/; twice/);
    expect(gains(2)).not.toMatch(/; twice/);
    expect(gains(2.2)).toMatch(/; twice/);
    expect(gains(2.99)).toMatch(/; twice/);
    expect(gains(3)).not.toMatch(/; twice/);
    expect(gains(3.5)).not.toMatch(/; twice/);
  });

  it('ask to measure the distance unless it is known to 15 % of the focal length', () => {
    const measure = / Measure those 180 mm, from where/;
    const told = (plusMinus: number) => gains(1.6, { cameraSubjectDistanceMm: { value: 180, plusMinus } });
    expect(gains(1.6, {})).toMatch(measure);
    expect(told(44)).not.toMatch(measure);
    expect(told(45)).toMatch(measure);
    expect(told(60)).toMatch(measure);
    expect(gains(1.4115, {})).toMatch(/ Measure those 123 mm/);
  });
});

describe('cautions of close-up lenses', () => {
  /** A full frame of 43.3 mm, and one of 21 x 28 mm: a diagonal of just 35. */
  const [FULL, JUST, CROP] = [
    { widthMm: 36, heightMm: 24 },
    { widthMm: 28, heightMm: 21 },
    { widthMm: 27.9, heightMm: 21 },
  ];
  const said = (cameraFocalLengthMm: number, sensor: object = FULL, room: object = UNKNOWN): string =>
    closeUpCautions(evaluation({ closeUpFocalMm: known(300), closeUpRoomMm: room }, { cameraFocalLengthMm }, sensor))
      .slice(1)
      .join(' ');

  it('warn of dark corners below 50 mm on a large sensor, below 30 on one of less than 35 mm across', () => {
    expect(said(49.9)).toMatch(/^Below about 50 mm on this sensor/);
    expect(said(50)).toBe('');
    expect(said(49.9, JUST)).toMatch(/^Below about 50 mm/);
    expect(said(29.9, CROP)).toMatch(/^Below about 30 mm/);
    expect(said(30, CROP)).toMatch(/mostly of use on camera lenses of 50 to 300 mm/);
    expect(said(30.5, CROP)).toMatch(/mostly of use/);
    expect(said(35.5, CROP)).toMatch(/mostly of use/);
    // 35.2 mm across counts as large.
    expect(said(40, { widthMm: 28.16, heightMm: 21.12 })).toMatch(/^Below about 50 mm/);
  });

  it('say for which lenses they are of use, where corners are reckoned', () => {
    expect(said(49.9, FULL, known(5))).toMatch(/mostly of use on camera lenses of 50 to 300 mm/);
    expect(said(50, FULL, known(5))).toBe('');
    expect(said(300)).toBe('');
    expect(said(301)).toMatch(/mostly of use/);
    expect(said(50.5)).toBe('');
  });

  it('are none without a camera lens or a close-up lens', () => {
    expect(closeUpCautions(evaluation({ closeUpFocalMm: known(300) }))).toEqual([]);
    expect(closeUpCautions(evaluation({ closeUpFocalMm: UNKNOWN }, { cameraFocalLengthMm: 100 }))).toEqual([]);
  });
});

describe('what the close-up lens does in words', () => {
  const ANSWERS = {
    closeUpFocalMm: known(250),
    closeUpFarthestMm: known(250),
    closeUpFarMagnification: known(0.4),
    closeUpNearestMm: known(180),
    closeUpNearMagnification: known(0.7),
    tubesFarExtensionMm: known(40),
    tubesFarCostEv: known(0.97),
    tubesFarDistanceMm: known(300),
    closeUpRoomMm: UNKNOWN,
  };
  const LENS = { cameraFocalLengthMm: 100, cameraMagnification: 0.2, cameraSubjectDistanceMm: 640 };
  const says = (answers: object = {}, settings: object = LENS) => closeUpSays(evaluation({ ...ANSWERS, ...answers }, settings));

  it('is asked for, or told why there is none', () => {
    expect(says({ closeUpFocalMm: none('no close-up lens') })).toEqual(['No close-up lens.']);
    expect(says({ closeUpFocalMm: UNKNOWN })).toEqual([
      'The focal length of the close-up lens is not known: tell it, or its power in dioptres.',
    ]);
    expect(says({ closeUpFarMagnification: UNKNOWN })).toEqual([
      'On any camera lens set to infinity the close-up lens is sharp at 250 mm; a lens of 200 mm shows that at 0.8×. Tell which lens it goes on.',
    ]);
    expect(says({ closeUpFocalMm: known(180), closeUpFarMagnification: UNKNOWN })[0]).toContain('of 200 mm shows that at 1.1×');
  });

  it('is where it is sharp and how large', () => {
    expect(says()).toEqual([
      'A 100 mm lens with the close-up lens is sharp from 180 mm at 0.7× to 250 mm at 0.4×.',
      'Tubes for the same 0.4× are 40 mm long, leave 300 mm free and cost 0.97 stops; the close-up lens costs none.',
    ]);
    expect(says({}, { ...LENS, secondPowerDioptre: 3 })[0]).toMatch(/with the pair of close-up lenses is sharp/);
    expect(says({}, { ...LENS, cameraFocalLengthMm: 85.25 })[0]).toMatch(/^An 85\.3 mm lens/);
    expect(says({ tubesFarDistanceMm: none('') })[1]).toContain('are 40 mm long and cost 0.97 stops');
  });

  it('is told without a near end where there is none, and asks for what would tell it', () => {
    expect(says({ closeUpNearestMm: UNKNOWN })[0]).toMatch(/sharp at no more than 250 mm at 0\.4×\. How near it comes hangs on/);
    expect(says({ closeUpNearestMm: none('') })[0]).toMatch(/sharp at no more than 250 mm at 0\.4×\.$/);
    expect(says({ closeUpNearMagnification: UNKNOWN })[0]).toMatch(
      /from 180 mm to 250 mm at 0\.4×\. How large it shows that, a ruler photographed at its nearest focus tells\.$/,
    );
    const { cameraMagnification: _m, ...unruled } = LENS;
    expect(says({}, unruled)[0]).toMatch(
      /0\.4×\. Its nearest focus is partly guessed: photograph a ruler there without the close-up lens\.$/,
    );
    const { cameraSubjectDistanceMm: _d, ...unmeasured } = LENS;
    expect(says({}, unmeasured)[0]).toMatch(/partly guessed: measure how far the subject stands from the lens's rim\.$/);
  });

  it('is that the corners grow dark, where that is sure', () => {
    const room = (closeUpRoomMm: object) => says({ closeUpRoomMm })[2];
    expect(room(known(-3.25, -4, -2))).toBe('The rim of the close-up lens is 3.3 mm too narrow for the corners: they grow dark.');
    expect(room(known(-0.5, -0.9, -0.1))).toMatch(/is 0\.5 mm too narrow/);
    expect(room(known(-3, -4, 0))).toBeUndefined();
    expect(room(known(-3, -4, 0.5))).toBeUndefined();
    expect(room({ state: 'known', value: -3, low: -4, origin: 'marked' })).toBeUndefined();
    expect(room(none(''))).toBeUndefined();
  });
});
