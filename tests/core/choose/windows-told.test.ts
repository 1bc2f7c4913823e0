import { describe, expect, it } from 'vitest';
import type { Want } from '../../../core/choosing.ts';
import type { Pairing } from '../../../core/index.ts';
import { ofWant, RIG } from './windows-support.ts';

describe('what closes a window', () => {
  it('is told at both ends, by what is lost beyond them', () => {
    const answer = ofWant({ minCoveredShare: 0.75, samplingRatio: [0.5, 1.5] });
    expect(answer.ends).toMatchObject([
      { side: 'below', limits: ['frameCovered'], circle: 'corrected' },
      { side: 'above', limits: ['samplingAtMost'] },
    ]);
    expect(answer.says).toMatch(
      /^Any relay between \d+ and \d+ mm; below it the corrected field runs out, above it your pixels only magnify blur\. How sharp .* not counted\.$/,
    );
    expect(answer.now).toBe(200);
  });

  it("is the mount's throat at its top, where the corners' light goes on longer without it", () => {
    const mount = { ...RIG, sensor: { ...RIG.sensor, registerMm: 20, throatDiameterMm: 32 } };
    const light: Want = { minCornerIllumination: 0.9 };
    const [free, narrow] = [ofWant(light), ofWant(light, mount)];
    expect(free.window[0]?.[1]).toBe(600);
    expect(narrow.window.length).toBe(1);
    expect(narrow.window[0]?.[1]).toBeLessThan(500);
    expect(narrow.ends.at(-1)).toMatchObject({ side: 'above', limits: ['cornerLight'], says: 'the corners go dark' });
    expect(narrow.held).toContain("the mount's throat, 32 mm");
  });

  it('is where no such rig can be built, in the words of what contradicts', () => {
    const tube = { ...RIG, stops: [{ diameterMm: 40, fromSensorMm: 90 }] };
    const answer = ofWant({ magnification: [1, 100] }, tube);
    expect(answer.stands).toEqual([[expect.closeTo(90, 6), 600]]);
    expect(answer.ends).toMatchObject([{ side: 'below', limits: [], says: expect.stringContaining('lies before the relay') }]);
    const none = ofWant({ magnification: [1, 100] }, tube, '/relay/focalLengthMm', { from: 50, to: 80 });
    expect(none).toMatchObject({ window: [], stands: [] });
    expect(none.says).toMatch(/^There is no such rig with any relay from 50 to 80 mm: /);
  });

  it('excludes: no relay does both, and by how much they miss each other', () => {
    const answer = ofWant(
      { subject: { widthMm: 1.5, heightMm: 2.8 }, finestDetailUm: 0.75, minCoveredShare: 0.05 },
      {
        ...RIG,
        subject: { widthMm: 1.5, heightMm: 2.8 },
        objective: { ...RIG.objective, na: 0.5 },
      },
    );
    const [fits, detail] = [(20 * 27.5) / 2.8, (20 * 8) / 0.75];
    expect(answer.window).toEqual([]);
    expect(answer.conflict).toEqual({
      limits: ['subjectFits', 'finestDetail'],
      between: [expect.closeTo(fits, 9), expect.closeTo(detail, 9)],
    });
    expect(answer.says).toContain(
      'No relay does both: the subject fits up to 196 mm, detail of 0.75 µm is recorded from 214 mm up. That is 16.9 mm apart.',
    );
  });

  it('is one limit alone that none meets: how near any comes', () => {
    const answer = ofWant({ finestDetailUm: 0.5 });
    expect(answer.limits[0]).toMatchObject({ intervals: [], nearest: { at: expect.any(Number), value: expect.closeTo(1.342, 3) } });
    expect(answer.says).toBe('No relay from 50 to 600 mm will do: the finest detail is lost with each, 1.34 µm at best.');
    const dark = ofWant({ minCornerIllumination: 0.99 }, { ...RIG, relay: { ...RIG.relay, clearApertureMm: 8 } });
    expect(dark.says).toMatch(/the corners go dark with each, \d+ % at best/);
  });

  it('is not told of what is not known: it names what is missing', () => {
    const { clearApertureMm: _, ...relay } = RIG.relay;
    const answer = ofWant({ minCornerIllumination: 0.5, magnification: [5, 12] }, { ...RIG, relay });
    expect(answer.limits.find(({ name }) => name === 'cornerLight')).toMatchObject({
      how: 'not known',
      intervals: [],
      unknown: ['/relay/clearApertureMm'],
    });
    expect(answer.window).toEqual([[expect.closeTo(100, 9), expect.closeTo(240, 9)]]);
    expect(answer.says).toContain("Whether the corners keep 50 % of the light is not known without the relay's clear opening.");
    expect(ofWant({ minCornerIllumination: 0.5 }, { ...RIG, relay })).toMatchObject({
      window: [],
      says: expect.stringMatching(/^Whether/),
    });
    // Of a covering only the circles that are known count; without the opening the light is one that is not.
    const covered = ofWant({ minCoveredShare: 1 }, { ...RIG, relay });
    expect(covered.limits[0]).toMatchObject({ without: ['lit', 'sharp'], how: 'closed form', intervals: [[expect.closeTo(300, 1), 600]] });
    expect(covered.says).toContain('How far the light reaches and how sharp the relay is off the axis is not known, and not counted.');
  });
});

describe('what is held', () => {
  it('is said in words, and a varied focal length is another lens', () => {
    const rated = { ...RIG, relay: { ...RIG.relay, imageCircleMm: 40 } };
    expect(ofWant({}, rated).held).toEqual([
      'the infinity space, 60 mm',
      "the relay's clear opening, 50 mm",
      "the relay's rated circle, 40 mm",
      "the relay's principal plane, 4 mm",
      'the exit pupil, −20 mm from the shoulder',
      'the sensor, 27.5 × 18.2 mm',
    ]);
    expect(ofWant({}, rated, '/infinitySpaceMm').held[0]).toBe("the relay's focal length, 200 mm");
    const byPower: Pairing = { ...RIG, relay: { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 54 } };
    expect(ofWant({}, byPower, '/infinitySpaceMm').held[0]).toBe("the relay's power, 5 D");
    expect(ofWant({}, byPower).held[0]).toBe('the infinity space, 60 mm');
    expect(ofWant({}).says).toBe('Nothing is asked that the relay decides.');
    const lens: Pairing = { ...RIG, relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 } };
    expect(ofWant({}, lens).held).toEqual(
      expect.arrayContaining(["the camera lens's f-number, f/4", "the relay's clear opening, as is typical of each focal length"]),
    );
    const zoom: Pairing = { ...RIG, relay: { ...RIG.relay, focalLengthRangeMm: [150, 300] } };
    expect(ofWant({ magnification: [1, 100] }, zoom).window).toEqual([[50, 600]]);
    const twice: Pairing = {
      ...RIG,
      relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, entrancePupilDiameterMm: 50, clearApertureMm: 52 },
    };
    expect(ofWant({ magnification: [1, 100] }, twice).window).toEqual([[50, 600]]);
  });

  it('refuses a range that is none, by its end', () => {
    for (const [range, path, code] of [
      [{ from: 300, to: 200 }, '/from', 'contradiction'],
      [{ from: 1 }, '/from', 'tooSmall'],
      [{ to: 6000 }, '/to', 'tooBig'],
      [{ from: 200, to: 200 }, '/from', 'contradiction'],
    ] as const) {
      expect(() => ofWant({}, RIG, '/relay/focalLengthMm', range)).toThrow(
        expect.objectContaining({ problems: [expect.objectContaining({ path, code })] }),
      );
    }
    expect(ofWant({}, RIG, '/relay/focalLengthMm', { from: 700 })).toMatchObject({ from: 700, to: 5000 });
  });
});
