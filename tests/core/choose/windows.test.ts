import { describe, expect, it } from 'vitest';
import { readerOf } from '../../../core/choose/at-values.ts';
import { another, VARIABLES, type Variable } from '../../../core/choose/quantities.ts';
import { metWithin, places } from '../../../core/choose/scan.ts';
import { windowOf } from '../../../core/choose/windows.ts';
import { type Limit, limitsOf, marginOf, meets, type Want, wantSchema } from '../../../core/choosing.ts';
import { contradictions, numberIn, type Pairing, report, withValue } from '../../../core/index.ts';
import { inputsOf } from '../../../core/pairing/inputs.ts';
import { figureById, planFor } from '../../../core/pairing/registry.ts';
import { randomPairing } from '../../support/pairings.ts';
import { type Random, random } from '../../support/random.ts';
import { fullPairing } from '../support/full-pairing.ts';

/** A wish that sets every limit, for the figures and senses of each. */
const EVERY = [
  ...limitsOf(
    wantSchema.parse({
      subject: { widthMm: 1, shareOfFrame: 0.5 },
      fieldWidthMm: [1, 3],
      magnification: [5, 12],
      finestDetailUm: 2,
      minWorkingDistanceMm: 10,
      lightingClearance: { depthMm: 12, minConeDeg: 30 },
      minCornerIllumination: 0.5,
      samplingRatio: [1, 2.5],
      maxLengthMm: 400,
    }),
  ),
  ...limitsOf({ minCoveredShare: 0.9 }),
];

/** Where each quantity is looked for in these tests; wider than where most windows end. */
const RANGES: Readonly<Record<Variable, readonly [number, number]>> = {
  '/relay/focalLengthMm': [40, 700],
  '/infinitySpaceMm': [0, 400],
  '/relay/clearApertureMm': [2, 150],
};

/** Two numbers with glass of its own besides. */
const anyPairing = (r: Random): Pairing => {
  const pairing = r.chance(0.5) ? randomPairing(r) : fullPairing(r);
  return r.chance(0.25) ? { ...pairing, sensor: { ...pairing.sensor, registerMm: 20, throatDiameterMm: r.between(25, 45) } } : pairing;
};

/** A figure over the quantity, undefined where there is no such rig: its value alone, and of the whole pairing's report. */
function figureOver(pairing: Pairing, vary: Variable, { figure }: Limit) {
  const { graph } = planFor([figure]);
  const place = graph.place.get(figureById(figure)) as number;
  const there = (x: number): Pairing | undefined => {
    const changed = withValue(pairing, vary, x);
    return contradictions(changed).length > 0 ? undefined : changed;
  };
  return {
    alone: (x: number): number | undefined => {
      const changed = there(x);
      const value = changed && graph.fill(inputsOf(changed).values)[place];
      return typeof value === 'number' ? value : undefined;
    },
    reported: (x: number): number | undefined => {
      const changed = there(x);
      return changed && numberIn(report(changed).figures[figure]);
    },
  };
}

/** Limits that a rig somewhere in the range just about meets, so that windows end inside it; full coverage now and then. */
function limitsFor(r: Random, pairing: Pairing, vary: Variable, count: number): Limit[] {
  const [from, to] = RANGES[vary];
  return Array.from({ length: count }, () => r.oneOf(EVERY))
    .filter((limit, i, all) => all.findIndex(({ name }) => name === limit.name) === i)
    .map((limit) => {
      if (limit.name === 'frameCovered' && r.chance(0.4)) return { ...limit, limit: 1 };
      const there = figureOver(pairing, vary, limit).alone(r.between(from, to)) ?? 0;
      return Number.isFinite(there) && there > 0 ? { ...limit, limit: there * r.between(0.9, 1.1) } : limit;
    });
}

describe('a window', () => {
  it('ends where the whole pairing stops meeting the limit, just inside and just outside', () => {
    const r = random(Number(process.env.SEED ?? 11));
    const checked = { ends: 0, inside: 0, outside: 0, unknown: 0, law: 0, roots: 0, reported: 0, alone: 0 };
    for (let run = 0; run < 48; run++) {
      const pairing = anyPairing(r);
      const vary = r.oneOf([...VARIABLES, '/relay/focalLengthMm', '/relay/focalLengthMm'] as const);
      const limits = limitsFor(r, pairing, vary, 4);
      const [from, to] = RANGES[vary];
      const answer = windowOf({ pairing, vary, from, to, limits });
      for (const [i, window] of answer.limits.entries()) {
        const limit = limits[i] as Limit;
        const over = figureOver(pairing, vary, limit);
        const holds = (x: number, by: keyof typeof over): boolean => {
          const value = over[by](x);
          return value !== undefined && meets(limit, value);
        };
        const where = `run ${run} ${vary} ${limit.name} ${limit.limit} ${JSON.stringify(window.intervals)} ${window.how}`;
        if (window.how === 'not known') {
          expect(window.intervals).toEqual([]);
          expect(report(pairing).figures[limit.figure], where).toMatchObject({ state: 'unknown', missing: window.unknown });
          checked.unknown++;
          continue;
        }
        checked[window.how === 'roots' ? 'roots' : 'law']++;
        // A report takes many times as long as its values alone, which are the same: not every end is asked of it.
        const by = run % 3 === 0 ? 'reported' : 'alone';
        for (const [low, high] of window.intervals) {
          const step = 1e-6 * Math.max(1, high);
          if (low > from) {
            expect([holds(low - step, by), high - low < step || holds(low + step, by)], `${where} at ${low}`).toEqual([false, true]);
            checked.ends++;
            checked[by]++;
          }
          if (high < to) {
            expect([high - low < step || holds(high - step, by), holds(high + step, by)], `${where} at ${high}`).toEqual([true, false]);
            checked.ends++;
            checked[by]++;
          }
        }
        for (let point = 0; point < 5; point++) {
          const x = r.between(from, to);
          if (window.intervals.flat().some((end) => Math.abs(end - x) < 1e-6 * x)) continue;
          const inside = window.intervals.some(([low, high]) => x >= low && x <= high);
          expect(holds(x, 'alone'), `${where} at the point ${x}`).toBe(inside);
          checked[inside ? 'inside' : 'outside']++;
        }
      }
      const x = r.between(from, to);
      const all = answer.limits.filter(({ how }) => how !== 'not known');
      const inAll = all.every(({ intervals }) => intervals.some(([low, high]) => x >= low && x <= high));
      if (all.length > 0)
        expect(
          answer.window.some(([low, high]) => x >= low && x <= high),
          `run ${run} all`,
        ).toBe(inAll);
    }
    expect(checked.ends).toBeGreaterThan(60);
    expect(checked.reported).toBeGreaterThan(15);
    expect(checked.inside).toBeGreaterThan(150);
    expect(checked.outside).toBeGreaterThan(150);
    expect(checked.law).toBeGreaterThan(40);
    expect(checked.roots).toBeGreaterThan(40);
    expect(checked.unknown).toBeGreaterThan(2);
  });
});

const RIG: Pairing = {
  objective: {
    magnification: 10,
    na: 0.25,
    referenceFocalLengthMm: 200,
    fieldNumberMm: 22,
    workingDistanceMm: 10,
    parfocalDistanceMm: 60,
    noseDiameterMm: 24,
    exitPupilFromShoulderMm: { value: -20, plusMinus: 0 },
  },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 50, frontPrincipalPlaneFromRimMm: 4 },
  sensor: { widthMm: 27.5, heightMm: 18.24, pixelPitchUm: 4 },
  infinitySpaceMm: 60,
  subject: { widthMm: 1, heightMm: 1.5 },
};
const ofWant = (want: Want, pairing = RIG, vary: Variable = '/relay/focalLengthMm', range: { from?: number; to?: number } = {}) =>
  windowOf({ pairing, vary, limits: limitsOf(wantSchema.parse(want)), ...range });

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

describe('several windows', () => {
  it('are found where a limit is met, lost and met again, also between two places that are tried', () => {
    const waves = (x: number): number => Math.sin(x) - 0.5;
    const at = places([0, 19], 'length').map((x) => ({ at: x, margin: waves(x) }));
    const spans = metWithin(waves, at);
    expect(spans.length).toBe(3);
    for (const [i, [low, high]] of spans.entries()) {
      expect(low).toBeCloseTo(Math.PI / 6 + 2 * Math.PI * i, 9);
      expect(high).toBeCloseTo((5 * Math.PI) / 6 + 2 * Math.PI * i, 9);
    }
    // A peak and a hollow that no place of the scan touches.
    for (const sign of [1, -1]) {
      const peak = (x: number): number => sign * (1e-4 - Math.abs(x - 10.13));
      const found = metWithin(
        peak,
        places([0, 20], 'length').map((x) => ({ at: x, margin: peak(x) })),
      );
      expect(found.length).toBe(sign > 0 ? 1 : 2);
      expect(found.flat().some((x) => Math.abs(x - 10.1299) < 1e-9)).toBe(true);
    }
  });
  it('a place tried is never farther from the next than a fortieth of it', () => {
    const tried = places([50, 600], 'ratio');
    expect([tried[0], tried.at(-1)]).toEqual([50, 600]);
    for (const [i, x] of tried.entries()) if (i > 0) expect(x / (tried[i - 1] as number)).toBeLessThanOrEqual(1.025 + 1e-12);
  });
});
