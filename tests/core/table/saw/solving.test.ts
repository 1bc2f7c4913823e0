import { describe, expect, test } from 'vitest';
import { glassworks } from '../../../../core/glassworks.ts';
import { evaluate, gap, numberIn, type Pairing, PairingError, thinLens, train } from '../../../../core/index.ts';
import { inverse } from '../../../../core/table/saw/matrix.ts';
import { sawOf, toldBy } from '../../../../core/table/saw/saw.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import { taken } from '../../../../core/table/saw/take.ts';
import { chiSquare95 } from '../../../../core/table/saw/weigh.ts';
import { findingInWords, unsolvedInWords } from '../../../../core/table/saw/words.ts';
import { random } from '../../../support/random.ts';
import { figureOf, q, table } from './simulated.ts';

const NINETY_FIVE_OF_EVEN = 1.959963984540054 / Math.sqrt(3);
const FAR = 1e9;
const bare = (rim = 16): Pairing => ({
  objective: {
    magnification: 10,
    na: 0.25,
    referenceFocalLengthMm: 200,
    exitPupilFromShoulderMm: { value: -15, plusMinus: 25, origin: 'assumed' },
  },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: rim, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 },
  infinitySpaceMm: 60,
});
const ruler = (value: number, plusMinus = 0.01): Sighting => ({ kind: 'ruler', acrossMm: q(value, plusMinus) });
const image = (value: number, plusMinus: number): Sighting => ({ kind: 'far', imageMm: q(value, plusMinus), thingMm: FAR });
const only = (pairing: Pairing, ...sightings: Sighting[]) => {
  const [result] = toldBy(pairing, { sightings }).results;
  if (!result) throw new Error('nothing was found');
  return result;
};

describe('one reading', () => {
  test('a ruler gives f = f_o W / a, its ± the root of squares by hand', () => {
    const r = only(bare(), ruler(2.31, 0.01));
    expect(r.value).toBeCloseTo((20 * 23.5) / 2.31, 7);
    // A relative ± of the ruler is one of the focal length; the ends are those of the interval, a little uneven.
    const half = NINETY_FIVE_OF_EVEN * 0.01;
    expect(r.high).toBeCloseTo((20 * 23.5) / (2.31 - half), 4);
    expect(r.low).toBeCloseTo((20 * 23.5) / (2.31 + half), 4);
    const doubtful = only({ ...bare(), objective: { ...bare().objective, magnification: q(10, 0.02) } }, {
      ...ruler(2.31, 0.01),
      gives: 'relay',
    } as Sighting);
    const relative = NINETY_FIVE_OF_EVEN * Math.hypot(0.01 / 2.31, 0.02 / 10);
    expect(doubtful.plusMinus / doubtful.value).toBeCloseTo(relative, 4);
    expect(doubtful.restsOn[0]?.path).toBe('/objective/magnification');
    // The engraving's ± counts by its greater move, some per mille more than by its slope.
    const share = 0.002 ** 2 / (0.002 ** 2 + (0.01 / 2.31) ** 2);
    expect(Math.abs((doubtful.restsOn[0]?.share ?? 0) / share - 1)).toBeLessThan(0.005);
    expect(r.asTheyStand).toContain('/objective/magnification');
  });

  test('a micrometer over pixels and over the whole width says what a ruler says', () => {
    const m = 10.3;
    const pixels = (100 * 0.01 * m) / 0.0039;
    const byPixels = only(bare(), { kind: 'micrometer', divisions: 100, divisionUm: 10, pixels: q(pixels, 5) });
    const byWidth = only(bare(), { kind: 'micrometer', divisions: q(23.5 / m / 0.01, 0.5), divisionUm: 10 });
    for (const { value } of [byPixels, byWidth]) expect(value).toBeCloseTo(20 * m, 6);
    expect(byPixels.plusMinus / byPixels.value).toBeCloseTo((NINETY_FIVE_OF_EVEN * 5) / pixels, 5);
  });

  test('a far thing by ray matrices: the sharp picture is where b is 0', () => {
    for (const [f, X] of [
      [198, 15_000],
      [50, 600],
      [333, 2000],
    ] as const) {
      const before = train(gap(X), thinLens(f));
      const behind = -before.b / before.d;
      expect(train(gap(X), thinLens(f), gap(behind)).b).toBeCloseTo(0, 6);
      expect(only(bare(), { kind: 'far', imageMm: q(behind, 1), thingMm: X }).value).toBeCloseTo(f, 6);
    }
  });

  test('two extensions by ray matrices of a thick lens: only what is added counts', () => {
    // Two thin lenses apart stand for a thick lens whose principal planes are nowhere near it.
    const lens = [thinLens(120), gap(40), thinLens(-300)] as const;
    const f = -1 / train(...lens).c;
    const magnificationAt = (behind: number): number => {
      // The distance X at which the picture is sharp: b(X) is linear in X.
      const b = (X: number): number => train(gap(X), ...lens, gap(behind)).b;
      const X = -b(0) / (b(1) - b(0));
      return Math.abs(train(gap(X), ...lens, gap(behind)).a);
    };
    const [m1, m2] = [magnificationAt(150), magnificationAt(192)];
    const r = only(bare(), { kind: 'extensions', firstAcrossMm: q(23.5 / m1, 0.1), secondAcrossMm: q(23.5 / m2, 0.1), apartMm: 42 });
    expect(r.value).toBeCloseTo(f, 6);
  });

  test('two rulers at two offsets of the sensor part the relay from the objective: m over m of the other is free of f_o', () => {
    const given: Pairing = {
      ...bare(),
      objective: { ...bare().objective, magnification: q(10, 1), exitPupilFromShoulderMm: -100 },
      infinitySpaceMm: 160,
    };
    const [f, z, fo] = [206, 260, 20.5];
    const across = (s: number): number => (23.5 * fo) / (f * (1 - ((z - f) * s) / f ** 2));
    const at = (s: number): Sighting => ({ ...ruler(across(s), 1e-5), sensorOffsetMm: s, gives: 'relay' }) as Sighting;
    const one = only(given, at(0));
    const two = only(given, at(0), at(150));
    // One alone hangs on the engraving, which is 2.5 % off and known to a tenth.
    expect(Math.abs(one.value - f)).toBeGreaterThan(4);
    expect(two.value).toBeCloseTo(f, 0);
    expect(two.plusMinus).toBeLessThan(one.plusMinus / 20);
  });
});

describe('what light shows', () => {
  const loss = (pairing: Pairing): number => figureOf(pairing, 'cornerLossEv');
  const at = (e: number, rim = 16): Pairing => ({ ...bare(rim), objective: { ...bare().objective, exitPupilFromShoulderMm: e } });

  test.each(['cornerLossEv', 'cornerIllumination', 'halfRadiusMm', 'onsetRadiusMm'] as const)('%s leads back to the exit pupil', (id) => {
    for (const e of [-38, -12, 4]) {
      const far = { ...at(e), infinitySpaceMm: 140 };
      const name = id === 'cornerIllumination' ? 'cornerShare' : id;
      const r = only(bare(), { kind: 'wall', [name]: q(figureOf(far, id), 1e-4), infinitySpaceMm: 140 } as Sighting);
      expect(r.value).toBeCloseTo(e, 5);
    }
  });

  test('the ± of one radius is that of 1/r, in proportion to which the distance from pupil to rim is', () => {
    const r = figureOf({ ...at(-20), infinitySpaceMm: 140 }, 'halfRadiusMm');
    const found = only(bare(), { kind: 'wall', halfRadiusMm: q(r, 0.1), infinitySpaceMm: 140 });
    // The relay's way of mapping angles does not move a radius of half the shared area.
    const half = (160 * NINETY_FIVE_OF_EVEN * 0.1) / r;
    expect(found.value - found.low).toBeCloseTo(half, 6);
    expect(found.high - found.value).toBeCloseTo(half, 6);
  });

  test('the ± of two radii by the formula of errors: 1/r = (S - e) / k for any k that the openings make', () => {
    const [S1, S2, d] = [140, 240, 0.001];
    const radius = (infinitySpaceMm: number): number => figureOf({ ...at(-20), infinitySpaceMm }, 'halfRadiusMm');
    const [y1, y2] = [1 / radius(S1), 1 / radius(S2)];
    const wall = (S: number): Sighting => ({ kind: 'wall', halfRadiusMm: q(radius(S), d), infinitySpaceMm: S });
    const found = toldBy(bare(), { sightings: [wall(S1), wall(S2)], opening: '/relay/clearApertureMm' }).results[0];
    // e = (S1 y2 - S2 y1) / (y2 - y1), and a half-width of y is d y².
    const rise = (y: number, S: number): number => (((S1 - S2) * y) / (y2 - y1) ** 2) * d * (S === S1 ? y1 : y2) ** 2;
    const half = NINETY_FIVE_OF_EVEN * Math.hypot(rise(y2, S1), rise(y1, S2));
    expect((found?.plusMinus as number) / half).toBeCloseTo(1, 3);
  });

  test('two radii at two spacings lead back to the pupil and to a rim that is told wrong', () => {
    const truth = at(-27, 15.2);
    const wall = (infinitySpaceMm: number): Sighting => ({
      kind: 'wall',
      halfRadiusMm: q(figureOf({ ...truth, infinitySpaceMm }, 'halfRadiusMm'), 0.01),
      infinitySpaceMm,
    });
    const { results } = toldBy(bare(17), { sightings: [wall(140), wall(240)], opening: '/relay/clearApertureMm' });
    expect(results.map(({ path }) => path)).toEqual(['/objective/exitPupilFromShoulderMm', '/relay/clearApertureMm']);
    expect(results[0]?.value).toBeCloseTo(-27, 4);
    expect(results[1]?.value).toBeCloseTo(15.2, 5);
  });

  const ringed = (pairing: Pairing, diameterMm: number | { value: number; plusMinus: number }): Pairing => ({
    ...pairing,
    sensor: { ...pairing.sensor, widthMm: 60, heightMm: 40 },
    stops: [{ label: 'a tube', diameterMm, fromShoulderMm: 55 }],
  });
  const ofRing = ['halfRadiusMm', 'onsetRadiusMm'].map(
    (name) => ({ kind: 'wall', [name]: q(figureOf(ringed(at(-20, 60), 13.7), name as 'halfRadiusMm'), 0.01) }) as Sighting,
  );

  test('two readings at one spacing lead back to the pupil and to a ring', () => {
    const { results } = toldBy(ringed(bare(60), q(15, 2)), { sightings: ofRing, opening: '/stops/0/diameterMm' });
    expect(results.map(({ path }) => path)).toEqual(['/objective/exitPupilFromShoulderMm', '/stops/0/diameterMm']);
    expect(results[0]?.value).toBeCloseTo(-20, 0);
    expect(results[1]?.value).toBeCloseTo(13.7, 2);
  });

  test('without a hint of its width a ring as much narrower than the pupil would darken alike: both are told', () => {
    // Two discs whose radii change places share as much, in units of the smaller: b' = a²/b, and z' = z a/b.
    const { results } = toldBy(ringed(bare(60), 15), { sightings: ofRing, opening: '/stops/0/diameterMm' });
    const narrow = 100 / 13.7;
    const [pupils, rings] = results.map(({ also }) => also.map(({ value }) => value).toSorted((a, b) => a - b));
    expect(pupils).toEqual([expect.closeTo(-20, 3), expect.closeTo(55 - (75 * 10) / 13.7, 3)]);
    expect(rings).toEqual([expect.closeTo(narrow, 4), expect.closeTo(13.7, 4)]);
  });

  test('light that no place of the pupil leaves is told with what this pairing can show', () => {
    const sighting: Sighting = { kind: 'wall', cornerLossEv: q(0.8, 0.05) };
    const { results, unsolved } = toldBy(bare(54), { sightings: [sighting] });
    expect(results).toEqual([]);
    expect(unsolved[0]?.why).toBe('unmet');
    expect(unsolved[0]?.spans).toEqual([{ place: 0, least: 0, greatest: 0 }]);
    expect(unsolvedInWords(unsolved[0] as never, [sighting])).toContain("the corner's loss can be 0 stops to 0 stops");
  });

  test('light that hardly changes teaches nothing, and says so', () => {
    const { results, unsolved } = toldBy(bare(54), { sightings: [{ kind: 'wall', cornerLossEv: q(0, 0.05) }] });
    expect(results).toEqual([]);
    expect(unsolved.map(({ why }) => why)).toEqual(['nothing learnt']);
  });

  test('a reading near the beginning of the fall leaves one end to the guess', () => {
    const r = only(bare(20), { kind: 'wall', cornerLossEv: q(0, 0.02) });
    expect(r.cut).toBe(true);
    expect(r.high).toBe(10);
    // The corner is clear from where the pupil's beam just passes the rim.
    expect(loss(at(r.low, 20))).toBeGreaterThan(0);
    expect(loss(at(r.low, 20))).toBeLessThan(0.03);
  });

  test('two places that show the same are both told, and taken as one interval where both are possible', () => {
    // A ring midway darkens alike for a pupil before and behind it.
    const ringed = (guess: Pairing['objective']['exitPupilFromShoulderMm']): Pairing => ({
      ...bare(80),
      infinitySpaceMm: 100,
      objective: { ...bare().objective, ...(guess === undefined ? {} : { exitPupilFromShoulderMm: guess }) },
      stops: [{ diameterMm: 10.4, fromShoulderMm: 50 }],
    });
    const [near, far] = [50 - 20, 50 + 20];
    const seen = figureOf(ringed(near), 'cornerLossEv');
    expect(figureOf(ringed(far), 'cornerLossEv')).toBeCloseTo(seen, 9);
    const sighting: Sighting = { kind: 'wall', cornerLossEv: q(seen, 0.02) };
    const one = only(ringed({ value: 20, plusMinus: 20, origin: 'assumed' }), sighting);
    expect(one.value).toBeCloseTo(near, 6);
    expect(one.also.map(({ value }) => value)).toEqual([expect.closeTo(far, 6)]);
    const both = only(ringed({ value: 40, plusMinus: 60, origin: 'assumed' }), sighting);
    expect(both.value).toBeCloseTo(50, 0);
    expect(both.low).toBeLessThan(near);
    expect(both.high).toBeGreaterThan(far);
    expect(both.also).toHaveLength(2);
  });
});

describe('several sightings of the same thing', () => {
  test('weigh as by hand, and say who does not agree', () => {
    // u = 0.5, 0.5, 1: weights 4, 4, 1; mean 1807/9; χ² = 4 (7/9)² + 4 (2/9)² + (20/9)² = 612/81.
    const u = (x: number): number => x * Math.sqrt(3);
    const sightings = [image(200, u(0.5)), image(201, u(0.5)), image(203, u(1))];
    const { results, inconsistent } = toldBy(bare(), { sightings });
    const r = results[0];
    expect(r?.value).toBeCloseTo(1807 / 9, 3);
    expect(r?.fit?.chiSquare).toBeCloseTo(612 / 81, 3);
    expect(r?.fit?.freedom).toBe(2);
    // Birge, Phys. Rev. 40, 207 (1932), and the scale factor of the Particle Data Group, both from memory: √(χ²/(n - 1)).
    const birge = Math.sqrt(612 / 162);
    expect(r?.fit?.birge).toBeCloseTo(birge, 4);
    expect(r?.plusMinus).toBeCloseTo((1.959964 / 3) * birge, 3);
    // Each against the mean of the other two: 203 - 200.5 over √(1 + 1/8), 200 - 201.4 over √(1/4 + 1/5).
    expect(inconsistent.map(({ sighting }) => sighting)).toEqual([2, 0]);
    expect(inconsistent[0]).toMatchObject({
      reads: 203,
      expected: expect.closeTo(200.5, 2),
      off: expect.closeTo(2.5 / Math.sqrt(1.125), 3),
    });
    expect(inconsistent[1]).toMatchObject({
      reads: 200,
      expected: expect.closeTo(201.4, 2),
      off: expect.closeTo(1.4 / Math.sqrt(0.45), 3),
    });
  });

  test('that agree within chance are not widened', () => {
    const { results, inconsistent } = toldBy(bare(), { sightings: [image(200, 1), image(200.6, 1)] });
    expect(inconsistent).toEqual([]);
    expect(results[0]?.value).toBeCloseTo(200.3, 4);
    expect(results[0]?.plusMinus).toBeCloseTo(NINETY_FIVE_OF_EVEN / Math.SQRT2, 3);
  });

  test('share what they share: a second ruler does not halve the doubt of the engraving', () => {
    const given = table({ f: q(200, 30), e: -15, rim: 16, M: q(10, 0.1) });
    const rulers = (n: number): Sighting[] => Array.from({ length: n }, () => ({ ...ruler(2.35, 1e-4), gives: 'relay' }) as Sighting);
    const [one, many] = [only(given, ...rulers(1)), only(given, ...rulers(8))];
    expect(many.plusMinus / one.plusMinus).toBeGreaterThan(0.999);
    // With a coarse ruler the doubt of the readings does shrink.
    const coarse = (n: number): Sighting[] => Array.from({ length: n }, () => ruler(2.35, 0.05));
    expect(only(bare(), ...coarse(9)).plusMinus).toBeCloseTo(only(bare(), ...coarse(1)).plusMinus / 3, 1);
  });

  test('the points of χ² hold 95 % of its density', () => {
    const gamma = (half: number): number => (half === 1 ? 1 : half === 0.5 ? Math.sqrt(Math.PI) : (half - 1) * gamma(half - 1));
    for (let k = 1; k <= 11; k++) {
      // ∫ of x^(k/2-1) e^(-x/2), with x = v² so that it has no peak at 0; by Simpson.
      const f = (v: number): number => 2 * v ** (k - 1) * Math.exp((-v * v) / 2);
      const [n, to] = [2000, Math.sqrt(chiSquare95(k))];
      let sum = f(0) + f(to);
      for (let i = 1; i < n; i++) sum += (i % 2 ? 4 : 2) * f((i * to) / n);
      expect((sum * to) / (3 * n) / (2 ** (k / 2) * gamma(k / 2))).toBeCloseTo(0.95, 4);
    }
  });

  test('matrices of any scale are inverted', () => {
    const draw = random(9);
    for (let run = 0; run < 50; run++) {
      const n = draw.integer(1, 6);
      const half = Array.from({ length: n }, () => Array.from({ length: n }, () => draw.between(-1, 1)));
      const scale = half.map(() => 10 ** draw.between(-8, 8));
      const a = half.map((r, i) =>
        half.map(
          (s, j) =>
            (r.reduce((sum, x, k) => sum + x * (s[k] as number), 0) + (i === j ? 0.5 : 0)) * (scale[i] as number) * (scale[j] as number),
        ),
      );
      const back = inverse(a) as number[][];
      a.forEach((row, i) => {
        row.forEach((_, j) => {
          const x = row.reduce((sum, v, k) => sum + v * (back[k]?.[j] as number), 0) * ((scale[j] as number) / (scale[i] as number));
          expect(x).toBeCloseTo(i === j ? 1 : 0, 8);
        });
      });
    }
    expect(
      inverse([
        [1, 1],
        [1, 1],
      ]),
    ).toBeUndefined();
  });
});

describe('what is found is taken', () => {
  const powered: Pairing = { ...bare(), relay: { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 54 } };

  test('as measured, with its 95 % as ±, the engraving kept, and the magnification is the one that was seen', () => {
    const saw = sawOf(powered, { sightings: [ruler(2.31)] });
    expect(saw.pairing.relay).toEqual({ ...powered.relay, focalLengthMm: { value: 203.463, plusMinus: 1, origin: 'measured' } });
    const m = evaluate(saw.pairing).answers.systemMagnification;
    expect(numberIn(m)).toBeCloseTo(23.5 / 2.31, 4);
    expect(saw.magnification?.value).toBeCloseTo(23.5 / 2.31, 8);
    expect(saw.magnification?.high).toBeCloseTo(23.5 / (2.31 - NINETY_FIVE_OF_EVEN * 0.01), 6);
    const figure = saw.figures.find(({ id }) => id === 'systemMagnification');
    const width = (a: unknown): number => (a as { high: number }).high - (a as { low: number }).low;
    expect(width(figure?.after) / width(figure?.before)).toBeLessThan(0.11);
    const marked = taken(bare(), saw.results);
    expect(marked.relay.focalLengthMm).toEqual({ value: 203.463, plusMinus: 1, origin: 'measured', marked: 200 });
    // Taken once more it is the same, engraving and all.
    expect(taken(marked, saw.results)).toEqual(marked);
  });

  test('what lies outside the guess that it replaces is told to, in dioptres or mm', () => {
    // 5 dioptres are good to a quarter: 190.5 to 210.5 mm.
    for (const [f, beyond] of [
      [191, false],
      [210, false],
      [189.5, true],
      [211.5, true],
    ] as const)
      expect(only(powered, ruler((20 * 23.5) / f, 0.001)).beyond).toBe(beyond);
  });

  test('what stood there as exact and is far from it is told, by the glass too', () => {
    expect(only(bare(), ruler((20 * 23.5) / 208)).clash).toBeUndefined();
    const far = only(bare(), ruler((20 * 23.5) / 240));
    expect(far.clash).toEqual({ value: 200, path: '/relay/focalLengthMm' });
    expect(findingInWords(far)).toContain('200 stood here as exact');
    const glass = { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] };
    const pairing: Pairing = { ...bare(), relay: { kind: 'supplementary', clearApertureMm: 40, glass } };
    const [traced] = toldBy(pairing, { sightings: [ruler(1.9)] }, glassworks()).results;
    expect(traced?.clash?.path).toBe('/relay/glass');
    expect(findingInWords(traced as never)).toContain('By its glass it would be');
  });

  test('sightings that are worlds apart give nothing to take', () => {
    const { results, unsolved, inconsistent } = toldBy(bare(), { sightings: [ruler(2.4), ruler(1.2)] });
    expect(results).toEqual([]);
    expect(unsolved[0]).toMatchObject({ path: '/relay/focalLengthMm', why: 'contradicts' });
    expect(inconsistent.length).toBeGreaterThan(0);
  });

  test('the number that is known less well is the one that a ruler tells', () => {
    const loose = {
      ...bare(),
      objective: { ...bare().objective, magnification: q(10, 0.4) },
      relay: { ...bare().relay, focalLengthMm: q(200, 1) },
    };
    const { results, pairing } = toldBy(loose, { sightings: [ruler(2.31)] });
    expect(results[0]?.path).toBe('/objective/magnification');
    expect(results[0]?.value).toBeCloseTo(23.5 / 2.31, 6);
    expect(pairing.objective.magnification).toMatchObject({ origin: 'measured', marked: 10 });
  });

  test('unless the pairing speaks against it', () => {
    const zoom: Pairing = { ...bare(), relay: { kind: 'camera-lens', focalLengthMm: 200, focalLengthRangeMm: [70, 200], fNumber: 4 } };
    const { results, unsolved, pairing } = toldBy(zoom, { sightings: [ruler(2.31)] });
    expect(results).toEqual([]);
    expect(unsolved[0]?.why).toBe('contradicts');
    expect(pairing).toEqual(zoom);
  });

  test('and what is needed first is named', () => {
    const { clearApertureMm: _, ...relay } = bare().relay;
    const { unsolved } = toldBy({ ...bare(), relay }, { sightings: [{ kind: 'wall', cornerLossEv: q(1, 0.1) }] });
    expect(unsolved[0]).toMatchObject({ why: 'missing', missing: ['/relay/clearApertureMm'] });
    expect(() => toldBy({ ...bare(), relay: { kind: 'tube-lens' } }, { sightings: [ruler(2)] })).toThrow(PairingError);
  });
});
