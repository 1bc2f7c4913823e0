import { describe, expect, it } from 'vitest';
import { readerOf } from '../../../core/choose/at-values.ts';
import { another, VARIABLES } from '../../../core/choose/quantities.ts';
import { metWithin, places } from '../../../core/choose/scan.ts';
import { windowOf } from '../../../core/choose/windows.ts';
import { marginOf, type Want } from '../../../core/choosing.ts';
import type { Pairing } from '../../../core/index.ts';
import { randomPairing } from '../../support/pairings.ts';
import { random } from '../../support/random.ts';
import { fullPairing } from '../support/full-pairing.ts';
import { limitsFor, ofWant, RANGES, RIG } from './windows-support.ts';

/** Every pixel of a published-style check: a sensor whose diagonal is 33 mm. */
const DIAGONAL = Math.hypot(27.5, 18.24);

describe('closed forms', () => {
  it('field number 22 at 200 mm covers a diagonal of 33 mm from 300 mm on', () => {
    expect(DIAGONAL).toBeCloseTo(33, 2);
    const [limit] = ofWant({ minCoveredShare: 1 }).limits;
    expect(limit?.how).toBe('closed form');
    expect(limit?.intervals[0]?.[0]).toBeCloseTo((300 * DIAGONAL) / 33, 9);
    expect(limit?.without).toEqual(['sharp']);
  });

  it('magnification is the ratio of the focal lengths, and the field goes with it', () => {
    const { limits, window } = ofWant({ magnification: [8, 12], fieldWidthMm: [2, 3], samplingRatio: [0.5, 1.5] });
    expect(limits.every(({ how }) => how === 'closed form')).toBe(true);
    const at = Object.fromEntries(limits.map(({ name, intervals }) => [name, intervals[0]]));
    expect(at.magnificationAtLeast).toEqual([expect.closeTo(160, 9), 600]);
    expect(at.magnificationAtMost).toEqual([50, expect.closeTo(240, 9)]);
    expect(at.fieldNoNarrower).toEqual([50, expect.closeTo((27.5 / 2) * 20, 9)]);
    expect(at.fieldNoWider).toEqual([expect.closeTo((27.5 / 3) * 20, 9), 600]);
    // λ N / (2 p), N = f / (2 NA f_o): 1.5 at 4 µm and 550 nm where f = 1.5 · 2 · 4 · 2 · 0.25 · 20 / 0.55.
    expect(at.samplingAtMost?.[1]).toBeCloseTo((1.5 * 2 * 4 * 2 * 0.25 * 20) / 0.55, 9);
    expect(window).toEqual([[expect.closeTo((27.5 / 3) * 20, 9), expect.closeTo((1.5 * 2 * 4 * 2 * 0.25 * 20) / 0.55, 9)]]);
  });

  it('the rig is as long as space, principal plane and focal length; the subject fills what it fills', () => {
    const want: Want = { maxLengthMm: 300, finestDetailUm: 1.5, subject: { widthMm: 1, heightMm: 1.5, shareOfFrame: 0.5 } };
    const { limits } = ofWant(want);
    const at = Object.fromEntries(limits.map(({ name, intervals }) => [name, intervals[0]]));
    expect(limits.every(({ how }) => how === 'closed form')).toBe(true);
    expect(at.length).toEqual([50, expect.closeTo(300 - 60 - 4, 9)]);
    expect(at.subjectFits?.[1]).toBeCloseTo(20 * Math.min(27.5 / 1.5, 18.24 / 1), 9);
    expect(at.subjectFills?.[0]).toBeCloseTo((20 * Math.min(27.5 / 1.5, 18.24 / 1)) / 2, 9);
    // Two pixels of 4 µm for each 1.5 µm: 5.33 times.
    expect(at.finestDetail?.[0]).toBeCloseTo((20 * 8) / 1.5, 9);
    expect(ofWant({ maxLengthMm: 300 }, RIG, '/infinitySpaceMm').limits[0]).toMatchObject({ intervals: [[0, 96]], how: 'closed form' });
  });

  it('agree with roots to 1e-7 on random pairings, circles at the subject and on the sensor among them', () => {
    const r = random(5);
    let compared = 0;
    const seen = new Set<string>();
    for (let run = 0; run < 70; run++) {
      const drawn = r.chance(0.5) ? randomPairing(r) : fullPairing(r);
      const { sensorOffsetMm: _, ...inFocus } = drawn;
      const pairing = { ...inFocus, stops: (drawn.stops ?? []).filter((stop) => stop.fromSensorMm === undefined) };
      const vary = r.chance(0.7) ? '/relay/focalLengthMm' : r.oneOf(VARIABLES);
      const limits = limitsFor(r, pairing, vary, 3);
      const [from, to] = RANGES[vary];
      const answer = windowOf({ pairing, vary, from, to, limits });
      // Where a ring stands in the way there is no rig at all: neither road goes there.
      const [least, most] = answer.stands[0] as [number, number];
      for (const window of answer.limits.filter(({ how }) => how === 'closed form')) {
        const read = readerOf([window.figure]);
        const margin = (x: number): number => {
          const value = read(another(pairing, vary, x))[0];
          return typeof value === 'number' ? marginOf(window, value) : Number.NEGATIVE_INFINITY;
        };
        const roots = metWithin(
          margin,
          places([least, most], 'ratio').map((at) => ({ at, margin: margin(at) })),
        );
        const where = `${run} ${vary} ${window.name} ${window.limit}`;
        expect(window.intervals.length, where).toBe(roots.length);
        for (const [i, span] of window.intervals.entries())
          for (const side of [0, 1] as const) {
            const root = roots[i]?.[side] as number;
            expect(Math.abs(span[side] - root), where).toBeLessThanOrEqual(1e-7 * Math.max(1, root));
            if (root > least && root < most) compared++;
          }
        seen.add(`${vary === '/relay/focalLengthMm' ? 'f' : vary} ${window.figure}`);
      }
    }
    expect(compared).toBeGreaterThan(25);
    for (const figure of ['goodFieldMm', 'coveredShare', 'samplingRatio', 'resolvedDetailUm', 'subjectFill', 'totalLengthMm'])
      expect(seen).toContain(`f ${figure}`);
  });

  it('give way where the narrowest stop changes with the focal length, or the sensor stands off the focus', () => {
    const set = { samplingRatio: [0.2, 3], finestDetailUm: 3 } as Want;
    const lens: Pairing = { ...RIG, relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 30, clearApertureMm: 50 } };
    expect(ofWant(set, lens).limits.map(({ how }) => how)).toEqual(['roots', 'roots', 'roots']);
    const off: Pairing = { ...RIG, sensorOffsetMm: 3 };
    expect(ofWant({ magnification: [8, 12] }, off).limits.map(({ how }) => how)).toEqual(['roots', 'roots']);
    const tube: Pairing = { ...RIG, stops: [{ diameterMm: 30, fromSensorMm: 20 }] };
    expect(ofWant({ ...set, minCoveredShare: 1 }, tube).limits.map(({ name, how }) => [name, how])).toEqual([
      ['frameCovered', 'roots'],
      ['finestDetail', 'closed form'],
      ['samplingAtLeast', 'closed form'],
      ['samplingAtMost', 'closed form'],
    ]);
  });
});
