import { describe, expect, it } from 'vitest';
import { heldOf } from '../../../core/choose/held.ts';
import { type LimitWindow, limitWindows } from '../../../core/choose/limit-windows.ts';
import type { Limit } from '../../../core/choose/limits.ts';
import { another, QUANTITIES } from '../../../core/choose/quantities.ts';
import type { Span } from '../../../core/choose/spans.ts';
import { type Value, valueBench } from '../../../core/choose/values.ts';
import { windowSays } from '../../../core/choose/window-words.ts';
import { presentOf } from '../../../core/choose/windows.ts';
import { Gap } from '../../../core/figure.ts';
import type { FigureId, Pairing, PairingError } from '../../../core/index.ts';
import { countingWorks, GLASSY } from './small.ts';
import { ofWant, RIG } from './windows-support.ts';

const FOCAL = '/relay/focalLengthMm';
const SPACE = '/infinitySpaceMm';
const OPENING = '/relay/clearApertureMm';

describe('the range that is looked at', () => {
  const range = (given: { from?: number; to?: number }, vary: Parameters<typeof ofWant>[2] = FOCAL): [number, number] => {
    const { from, to } = ofWant({}, RIG, vary, given);
    return [from, to];
  };
  it('is the usual one, of which either end may be told', () => {
    expect(range({})).toEqual([50, 600]);
    expect(range({}, SPACE)).toEqual([0, 300]);
    expect(range({}, OPENING)).toEqual([5, 150]);
    expect(range({ from: 80 })).toEqual([80, 600]);
    expect(range({ to: 400 })).toEqual([50, 400]);
    expect(range({ from: 80, to: 90 })).toEqual([80, 90]);
  });
  it('goes to what is allowed at all where the end that is told lies beyond the usual', () => {
    const { bounds } = QUANTITIES[FOCAL];
    expect(range({ to: 50 })).toEqual([bounds[0], 50]);
    expect(range({ to: 51 })).toEqual([50, 51]);
    expect(range({ from: 600 })).toEqual([600, bounds[1]]);
    expect(range({ from: 599 })).toEqual([599, 600]);
    expect(range({ from: bounds[0], to: bounds[1] })).toEqual(bounds);
  });
  it('is refused where it is none, by the end that is told, with what would do', () => {
    const problems = (given: { from?: number; to?: number }) => {
      try {
        range(given);
      } catch (error) {
        return (error as PairingError).problems.map(({ path, code, given, expected }) => [path, code, given, expected]);
      }
      return [];
    };
    const { bounds } = QUANTITIES[FOCAL];
    expect(problems({ from: 300, to: 200 })).toEqual([['/from', 'contradiction', '300', 'less than 200']]);
    expect(problems({ from: 200, to: 200 })).toEqual([['/from', 'contradiction', '200', 'less than 200']]);
    expect(problems({ to: bounds[0] })).toEqual([['/to', 'contradiction', `${bounds[0]}`, `more than ${bounds[0]}`]]);
    expect(problems({ from: 1, to: 6000 })).toEqual([
      ['/from', 'tooSmall', '1', `at least ${bounds[0]}`],
      ['/to', 'tooBig', '6000', `at most ${bounds[1]}`],
    ]);
    expect(problems({ from: 6000, to: 1 }).map(([path, code]) => [path, code])).toEqual([
      ['/from', 'tooBig'],
      ['/to', 'tooSmall'],
    ]);
  });
});

describe('the window of a pairing', () => {
  it('is wherever there is such a rig where nothing is asked, without a conflict', () => {
    const answer = ofWant({});
    expect([answer.window, answer.ends]).toEqual([[[50, 600]], []]);
    expect(answer).not.toHaveProperty('conflict');
    expect(ofWant({ magnification: [5, 12] })).not.toHaveProperty('conflict');
  });
  it('is told though there is no such rig at the end that is looked at first', () => {
    const tube = { ...RIG, stops: [{ diameterMm: 40, fromSensorMm: 90 }] };
    expect(ofWant({ magnification: [1, 100] }, tube).says).toMatch(/^Any relay from 90 mm up; below it there is no such rig: /);
  });
});

describe('what a quantity is in the pairing itself', () => {
  it('is as given, as its power has it, or not known', () => {
    expect([FOCAL, SPACE, OPENING].map((vary) => presentOf(RIG, vary as typeof FOCAL))).toEqual([200, 60, 50]);
    expect(presentOf({ ...RIG, relay: { kind: 'supplementary', powerDioptre: 5 } }, FOCAL)).toBe(200);
    const { clearApertureMm: _, ...bare } = RIG.relay;
    expect(presentOf({ ...RIG, relay: bare }, OPENING)).toBeUndefined();
    expect(ofWant({}, { ...RIG, relay: bare }, OPENING)).not.toHaveProperty('now');
    expect(presentOf({ ...RIG, relay: { ...RIG.relay, powerDioptre: 10 } }, SPACE)).toBeUndefined();
  });
});

describe('a pairing with another quantity', () => {
  it('keeps all else, and the ± of what is measured', () => {
    expect(another(RIG, SPACE, 80)).toEqual({ ...RIG, infinitySpaceMm: 80 });
    const measured: Pairing = { ...RIG, infinitySpaceMm: { value: 60, plusMinus: 2 } };
    expect(another(measured, SPACE, 80).infinitySpaceMm).toEqual({ value: 80, plusMinus: 2 });
    expect(another(RIG, OPENING, 30)).toEqual({ ...RIG, relay: { ...RIG.relay, clearApertureMm: 30 } });
    const { clearApertureMm: _, ...bare } = RIG.relay;
    expect(another({ ...RIG, relay: bare }, OPENING, 30).relay.clearApertureMm).toBe(30);
    expect(Object.keys(another({ ...RIG, relay: bare }, FOCAL, 240).relay)).not.toContain('clearApertureMm');
  });
  it('of another focal length is another lens: without its range, and without the f-number that its aperture makes', () => {
    const relay = { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, focalLengthRangeMm: [70, 210] } as Pairing['relay'];
    expect(another({ ...RIG, relay }, FOCAL, 240).relay).toEqual({ kind: 'camera-lens', focalLengthMm: 240, fNumber: 4 });
    const both = { ...relay, entrancePupilDiameterMm: 50 };
    expect(another({ ...RIG, relay: both }, FOCAL, 240).relay).toEqual({
      kind: 'camera-lens',
      focalLengthMm: 240,
      entrancePupilDiameterMm: 50,
    });
  });
  it('keeps the opening that its glass left, but for one of its own or a thread that is narrower', () => {
    const { works } = countingWorks();
    const opening = (more: Partial<Pairing['relay']>) => another({ ...RIG, relay: { ...GLASSY, ...more } }, FOCAL, 240, works).relay;
    expect(opening({})).toEqual({ kind: 'tube-lens', focalLengthMm: 240, clearApertureMm: 50 });
    expect(opening({ clearApertureMm: 40 }).clearApertureMm).toBe(40);
    // M42 leaves less than the glass of 50 mm, M62 more.
    expect(opening({ maleThread: 'M42 x 1' })).not.toHaveProperty('clearApertureMm');
    expect(opening({ maleThread: 'M62 x 0.75' }).clearApertureMm).toBe(50);
  });
});

describe('what is held', () => {
  const held = (more: Partial<Pairing>, vary: typeof FOCAL | typeof SPACE = FOCAL): string[] => heldOf({ ...RIG, ...more }, vary);
  it('is each number but the one that varies, the power with the focal length', () => {
    expect(held({}, SPACE)).toEqual([
      "the relay's focal length, 200 mm",
      "the relay's clear opening, 50 mm",
      "the relay's principal plane, 4 mm",
      'the exit pupil, −20 mm from the shoulder',
      'the sensor, 27.5 × 18.2 mm',
    ]);
    const power: Pairing['relay'] = { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 54 };
    expect(held({ relay: power }).join()).not.toMatch(/power|focal length/);
    expect(held({ relay: power }, SPACE)).toContain("the relay's power, 5 D");
  });
  it('says where the sensor is out of the focus, and nothing where it is in it', () => {
    expect(held({ sensorOffsetMm: 2 })).toEqual(expect.arrayContaining([expect.stringMatching(/, 2 mm$/)]));
    expect(held({ sensorOffsetMm: 2 })).toHaveLength(held({}).length + 1);
    expect(held({ sensorOffsetMm: 0 })).toEqual(held({}));
    // What is given as nothing is told, what is taken as nothing is not.
    const plane = (frontPrincipalPlaneFromRimMm?: number): string[] => {
      const { frontPrincipalPlaneFromRimMm: _, ...relay } = RIG.relay;
      return held({ relay: frontPrincipalPlaneFromRimMm === undefined ? relay : { ...relay, frontPrincipalPlaneFromRimMm } });
    };
    expect(plane(0)).toContain("the relay's principal plane, 0 mm");
    expect(held({ infinitySpaceMm: 0 })).toContain('the infinity space, 0 mm');
    expect(held({ infinitySpaceMm: 0.5 })).toContain('the infinity space, 0.5 mm');
  });
  it('says which are taken as typical, and which change with the focal length', () => {
    const lens: Pairing['relay'] = { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 };
    const varied = held({ relay: lens });
    const kept = held({ relay: lens }, SPACE);
    expect(varied).toContain("the depth of the camera lens's aperture, as is typical of each focal length");
    expect(kept).toEqual(
      expect.arrayContaining([expect.stringMatching(/^the depth of the camera lens's aperture, \d+ mm, taken as typical$/)]),
    );
    expect(kept.join()).not.toContain('as is typical of each');
    const given = held({ relay: { ...lens, clearApertureMm: 62, entrancePupilDepthMm: 40, rimToSensorMm: 190 } });
    expect(given.join()).not.toContain('as is typical of each');
    expect(given).toEqual(expect.arrayContaining(["the relay's clear opening, 62 mm", "the depth of the camera lens's aperture, 40 mm"]));
    // Another guess is taken as typical and held.
    const { exitPupilFromShoulderMm: _, ...objective } = RIG.objective;
    const guessed = held({ objective, relay: lens });
    expect(guessed).toEqual(expect.arrayContaining([expect.stringMatching(/^the exit pupil, .* from the shoulder, taken as typical$/)]));
    // A tube lens has no class that guesses it anew.
    const tube: Pairing['relay'] = { kind: 'tube-lens', focalLengthMm: 200, maleThread: 'M52 x 0.75' };
    expect(held({ relay: tube }).join()).not.toContain('as is typical of each');
  });
  it('counts the rings, and says that glass does not vary', () => {
    const ring = { diameterMm: 40, fromShoulderMm: 30 };
    expect(held({ stops: [] })).toEqual(held({}));
    expect(held({ stops: [ring] }).at(-1)).toBe('the ring in the way');
    expect(held({ stops: [ring, { ...ring, fromShoulderMm: 40 }] }).at(-1)).toBe('the 2 rings in the way');
    const { works } = countingWorks();
    const glassy = { ...RIG, relay: GLASSY };
    expect(heldOf(glassy, SPACE, works).at(-1)).toBe("the relay's glass");
    expect(heldOf(glassy, FOCAL, works).at(-1)).toBe('but not its glass: another focal length is another lens');
    expect(heldOf(glassy, FOCAL, works)).not.toContain("the relay's glass");
    for (const list of [held({}), held({}, SPACE)]) expect(list.join()).not.toContain('glass');
  });
});

describe('the windows of limits', () => {
  const limit = (name: Limit['name'], figure: FigureId, sense: Limit['sense'], x: number): Limit => ({ name, figure, sense, limit: x });
  /** Of the space, from 0 to 300 mm, by figures that are made up. */
  const windows = (limits: Limit[], of: Partial<Record<FigureId, (x: number) => Value>>, stands: Span[] = [[0, 300]]): LimitWindow[] => {
    const unknown = Gap.unknown('/relay/imageCircleMm');
    const search = limitWindows(RIG, SPACE, limits, stands, (ids) => (x) => ids.map((id) => of[id]?.(x) ?? unknown));
    for (;;) {
      const { done, value } = search.next();
      if (done) return value;
    }
  };
  it('are looked for by roots where there is no law, and told where it comes nearest', () => {
    const light = limit('cornerLight', 'cornerIllumination', 'least', 0.5);
    const falling = { cornerIllumination: (x: number) => 1 - x / 200 };
    expect(windows([light], falling)).toEqual([{ ...light, intervals: [[0, expect.closeTo(100, 9)]], how: 'roots' }]);
    const dark = { cornerIllumination: (x: number) => 0.3 - Math.abs(x - 150) / 1000 };
    expect(windows([light], dark)).toEqual([{ ...light, intervals: [], how: 'roots', nearest: { at: 150, value: 0.3 } }]);
    // Of equal ones the first.
    expect(windows([light], { cornerIllumination: () => 0.3 })[0]?.nearest).toEqual({ at: 0, value: 0.3 });
    expect(
      windows([light], { cornerIllumination: () => 0.3 }, [
        [10, 20],
        [30, 40],
      ])[0]?.nearest,
    ).toEqual({ at: 10, value: 0.3 });
    const later = windows([light], { cornerIllumination: (x) => (x > 25 ? 0.4 : 0.3) }, [
      [10, 20],
      [30, 40],
    ]);
    expect(later[0]?.nearest).toEqual({ at: 30, value: 0.4 });
  });
  it('are where there is such a rig, in each stretch of it', () => {
    const light = limit('cornerLight', 'cornerIllumination', 'least', 0.5);
    const falling = { cornerIllumination: (x: number) => 1 - x / 200 };
    expect(
      windows([light], falling, [
        [10, 20],
        [80, 200],
      ])[0]?.intervals,
    ).toEqual([
      [10, 20],
      [80, expect.closeTo(100, 9)],
    ]);
    expect(windows([light], falling, [])).toEqual([{ ...light, intervals: [], how: 'roots' }]);
    const length = limit('length', 'totalLengthMm', 'most', 270);
    expect(
      windows([length], { totalLengthMm: (x) => 200 + x }, [
        [10, 20],
        [60, 90],
      ]),
    ).toEqual([
      {
        ...length,
        intervals: [
          [10, 20],
          [60, 70],
        ],
        how: 'closed form',
      },
    ]);
  });
  it('of what follows a law are nearest at one of its ends', () => {
    const length = limit('length', 'totalLengthMm', 'most', 150);
    expect(windows([length], { totalLengthMm: (x) => 200 + x })[0]).toMatchObject({ how: 'closed form', nearest: { at: 0, value: 200 } });
    const long = limit('length', 'totalLengthMm', 'least', 700);
    expect(windows([long], { totalLengthMm: (x) => 200 + x })[0]).toMatchObject({ nearest: { at: 300, value: 500 } });
    expect(windows([length], { totalLengthMm: (x) => 100 + x })[0]).not.toHaveProperty('nearest');
  });
  it('are not known where the figure is not, and met nowhere where there is none', () => {
    const light = limit('cornerLight', 'cornerIllumination', 'least', 0.5);
    expect(windows([light], {})).toEqual([{ ...light, intervals: [], how: 'not known', unknown: ['/relay/imageCircleMm'] }]);
    const none = windows([light], { cornerIllumination: () => Gap.none('there is none') });
    expect(none).toEqual([{ ...light, intervals: [], how: 'roots' }]);
    expect(none[0]).not.toHaveProperty('nearest');
    const partly = windows([light], { cornerIllumination: (x) => (x < 100 ? Gap.none('there is none') : 1) });
    expect(partly[0]?.intervals).toEqual([[expect.closeTo(100, 6), 300]]);
    const distance = limit('workingDistance', 'clearWorkingDistanceMm', 'least', 5);
    expect(windows([distance], { clearWorkingDistanceMm: () => Gap.none('there is none') })[0]).not.toHaveProperty('nearest');
  });
  it('on covering name the circles that are not known, not those that there are not', () => {
    const covered = limit('frameCovered', 'coveredShare', 'least', 0.5);
    const share = { coveredShare: (x: number) => 1 - x / 200, correctedCircleMm: () => 30 };
    expect(windows([covered], share)[0]?.without).toEqual(['lit', 'sharp']);
    expect(windows([covered], { ...share, litCircleMm: () => Gap.none('there is none') })[0]?.without).toEqual(['sharp']);
    expect(windows([covered], { ...share, litCircleMm: () => 30, sharpCircleMm: () => 30 })[0]).not.toHaveProperty('without');
    const light = limit('cornerLight', 'cornerIllumination', 'least', 0.5);
    expect(windows([light], { cornerIllumination: () => 1 })[0]).not.toHaveProperty('without');
    // Told from the middle of where there is such a rig.
    const sides = { ...share, litCircleMm: (x: number) => (x === 150 ? 30 : Gap.unknown('/a')), sharpCircleMm: () => 30 };
    expect(windows([covered], sides)[0]).not.toHaveProperty('without');
    const early = { ...share, litCircleMm: (x: number) => (x === 15 ? 30 : Gap.unknown('/a')), sharpCircleMm: () => 30 };
    expect(
      windows([covered], early, [
        [10, 20],
        [30, 40],
      ])[0],
    ).not.toHaveProperty('without');
  });
});

describe('a window in words', () => {
  const length: LimitWindow = { name: 'length', figure: 'totalLengthMm', sense: 'most', limit: 300, intervals: [[50, 240]], how: 'roots' };
  const base = {
    vary: FOCAL,
    from: 50,
    to: 600,
    limits: [length],
    window: [] as Span[],
    ends: [],
    stands: [[50, 600] as Span],
    held: [],
  } as const;
  const says = (more: Partial<Parameters<typeof windowSays>[0]>, read = () => () => [30, 20, 40]): string =>
    windowSays({ ...base, ...more } as Parameters<typeof windowSays>[0], read, undefined);
  it('says that any will do, or which', () => {
    expect(says({ window: [[50, 600]] })).toBe('Any relay from 50 to 600 mm will do.');
    expect(says({ window: [[50, 240]] })).toBe('Any relay up to 240 mm.');
    expect(says({ window: [[173, 600]] })).toBe('Any relay from 173 mm up.');
    expect(
      says({
        window: [
          [50, 100],
          [200, 600],
        ],
      }),
    ).toBe('Any relay up to 100 mm or from 200 mm up.');
    const ends = [{ side: 'above', at: 240, limits: ['length'], says: 'the rig grows too long' }] as const;
    expect(says({ window: [[50, 240]], ends: ends as never })).toBe('Any relay up to 240 mm; above it the rig grows too long.');
  });
  it('says what none does, by the circle that ends where it is one, and how near any comes', () => {
    const never = { ...length, intervals: [] };
    expect(says({ limits: [never] })).toBe('No relay from 50 to 600 mm will do: the rig grows too long with each.');
    const covered: LimitWindow = { ...never, name: 'frameCovered', figure: 'coveredShare', limit: 1 };
    expect(says({ limits: [covered] })).toBe('No relay from 50 to 600 mm will do: too little of the frame is covered with each.');
    expect(says({ limits: [{ ...covered, nearest: { at: 100, value: 0.8 } }] })).toBe(
      'No relay from 50 to 600 mm will do: the light runs out with each, 80 % at best.',
    );
    expect(says({ limits: [{ ...never, nearest: { at: 50, value: 310 } }] })).toBe(
      'No relay from 50 to 600 mm will do: the rig grows too long with each, 310 mm at best.',
    );
  });
  it('says which do not go together: two that are apart, or three of which each two do', () => {
    const detail: LimitWindow = { ...length, name: 'cornerLight', figure: 'cornerIllumination', limit: 0.5, intervals: [[300, 600]] };
    const conflict = { limits: ['length', 'cornerLight'], between: [240, 300] } as never;
    expect(says({ limits: [length, detail], conflict })).toBe(
      'No relay does both: the rig stays within 300 mm up to 240 mm, the corners keep 50 % of the light from 300 mm up. That is 60 mm apart.',
    );
    expect(says({ limits: [length, detail] })).toBe(
      'No relay does all of it: the rig stays within 300 mm up to 240 mm; the corners keep 50 % of the light from 300 mm up.',
    );
  });
});

describe('values on the bench', () => {
  it('are of what was put last, part by part, and of nothing where it contradicts itself or nothing was put', () => {
    const bench = valueBench(['systemMagnification', 'totalLengthMm', 'correctedCircleMm']);
    expect(bench.read()).toBeUndefined();
    const read = (pairing: Pairing) => {
      bench.put(pairing);
      return bench.read();
    };
    expect(read(RIG)).toEqual([10, 264, 22]);
    expect(read({ ...RIG, infinitySpaceMm: 80 })).toEqual([10, 284, 22]);
    const twenty = { ...RIG.objective, magnification: 20 };
    expect(read({ ...RIG, objective: twenty })).toEqual([20, 264, 22]);
    const long = { ...RIG.relay, focalLengthMm: 300 };
    expect(read({ ...RIG, objective: twenty, relay: long })).toEqual([30, 364, 33]);
    expect(read({ ...RIG, relay: { ...long, powerDioptre: 10 } })).toBeUndefined();
    expect(read(RIG)).toEqual([10, 264, 22]);
  });
  it('read of what was asked for alone', () => {
    const bench = valueBench(['correctedCircleMm']);
    bench.put(RIG);
    bench.put({ ...RIG, infinitySpaceMm: 90, objective: { ...RIG.objective, fieldNumberMm: 26 } });
    expect(bench.read()).toEqual([26]);
  });
});
