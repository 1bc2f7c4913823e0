import { describe, expect, it } from 'vitest';
import { gap, numberIn, type Pairing, pairingSchema, thinLens, train } from '../../../../core/index.ts';
import { evaluateTable, planOf, type Settings, settingsSchema, type TableFigureId } from '../../../../core/table.ts';
import opening from '../../../../data/opening.json';
import { type Random, random } from '../../../support/random.ts';
import { type CameraLens, insideFocusing, movedWhole, sharpThrough } from './camera-lens.ts';

/** The close-up lens on thick camera lenses, focused inside or as a whole, by ray matrices alone. */

const PAIRING: Pairing = pairingSchema.parse(opening.pairing);
const PLAN = planOf('closeUp');

function told(settings: Settings): (id: TableFigureId<'closeUp'>) => number {
  const { answers } = evaluateTable(PAIRING, settingsSchema.parse(settings), undefined, PLAN);
  return (id) => {
    const value = numberIn(answers[id]);
    if (value === undefined) throw new Error(`${id}: ${JSON.stringify(answers[id])}`);
    return value;
  };
}

const near = (a: number, b: number, what = ''): void =>
  expect(Math.abs(a - b), `${what}: ${a}, not ${b}`).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(b)));

/** A lens focused nearer and nearer, as long as the subject stands outside it. */
function settingsOf(lens: CameraLens): number[] {
  const way = lens.focusesInside ? [-12, -9, -6, -3, 3, 6, 9, 12] : [5, 15, 30, 60];
  return way.filter((move) => {
    const { distance } = sharpThrough(lens.at(move), lens.behind(move));
    return lens.behind(move) > 1 && distance > 60 && distance < 5000;
  });
}

const LENSES = 40;
const lenses = (seed: number, make: (r: Random) => CameraLens): CameraLens[] => {
  const r = random(seed);
  return Array.from({ length: LENSES }, () => make(r)).filter(({ focalLengthMm: f }) => f > 40 && f < 400);
};
const all = [...lenses(7_101, insideFocusing), ...lenses(7_102, movedWhole)];

describe('one close-up lens before any camera lens', () => {
  it('is where the figures say at infinity: the farthest subject and its magnification', () => {
    for (const lens of all) {
      const f = 240;
      const { distance, magnification } = sharpThrough(train(thinLens(f), gap(11), lens.at(0)), lens.behind(0));
      const of = told({ closeUpFocalLengthMm: f, cameraFocalLengthMm: lens.focalLengthMm });
      near(of('closeUpFarthestMm'), distance);
      near(of('closeUpFarMagnification'), magnification);
    }
    expect(all.length).toBeGreaterThan(50);
  });

  it('and at every focus setting, of lenses that focus inside as of others: m₀ (1 + X/f) at X f / (X + f)', () => {
    let [checked, inside] = [0, 0];
    for (const lens of all)
      for (const move of settingsOf(lens)) {
        // The close-up lens stands 11 mm before the rim: X counts from there.
        const place = gap(11);
        const alone = sharpThrough(train(place, lens.at(move)), lens.behind(move));
        if (alone.distance < 20) continue;
        const f = 240;
        const both = sharpThrough(train(thinLens(f), place, lens.at(move)), lens.behind(move));
        const of = told({
          closeUpFocalLengthMm: f,
          cameraFocalLengthMm: lens.focalLengthMm,
          cameraMagnification: alone.magnification,
          cameraSubjectDistanceMm: alone.distance,
        });
        near(of('closeUpNearestMm'), both.distance);
        near(of('closeUpNearMagnification'), both.magnification);
        near(of('closeUpGain'), both.magnification / alone.magnification);
        checked++;
        if (lens.focusesInside) inside++;
      }
    expect(checked).toBeGreaterThan(120);
    expect(inside).toBeGreaterThan(50);
  });

  it('and so with a second one before it, apart', () => {
    let checked = 0;
    for (const lens of all)
      for (const move of [0, ...settingsOf(lens)]) {
        const [f, f2, d] = [300, 250, 9];
        const alone = sharpThrough(lens.at(move), lens.behind(move));
        const two = train(thinLens(f2), gap(d), thinLens(f));
        const both = sharpThrough(train(two, lens.at(move)), lens.behind(move));
        const of = told({
          closeUpFocalLengthMm: f,
          secondPowerDioptre: 1000 / f2,
          secondSeparationMm: d,
          cameraFocalLengthMm: lens.focalLengthMm,
          ...(move === 0 ? {} : { cameraMagnification: alone.magnification, cameraSubjectDistanceMm: alone.distance }),
        });
        near(of('closeUpFocalMm'), -1 / two.c);
        // The front principal plane: where the front focus is f before it. The front focus is d/c before the first surface.
        near(of('closeUpPlaneMm'), -1 / two.c + two.d / two.c);
        near(of(move === 0 ? 'closeUpFarthestMm' : 'closeUpNearestMm'), both.distance);
        near(of(move === 0 ? 'closeUpFarMagnification' : 'closeUpNearMagnification'), both.magnification);
        checked++;
      }
    expect(checked).toBeGreaterThan(150);
  });
});

describe('tubes behind any camera lens', () => {
  it('at infinity: extension, distance from the rim and the cone of light, with the pupils where a stop puts them', () => {
    for (const lens of all) {
      const m = 0.8;
      const f = lens.focalLengthMm;
      const body = lens.at(0);
      const e = told({ closeUpFocalLengthMm: f / m, cameraFocalLengthMm: f })('tubesFarExtensionMm');
      const { distance, magnification } = sharpThrough(body, lens.behind(0) + e);
      // A stop 10 mm behind the last surface: the exit pupil itself, and the entrance pupil its image through the lens.
      const stop = train(body, gap(10));
      const enters = -stop.b / stop.a;
      const P = Math.abs(stop.a);
      const N = 8;
      const entrance = f / N;
      // The marginal ray from the subject by the edge of the entrance pupil: its slope on the sensor's side.
      const slope = entrance / 2 / (distance - enters);
      const out = body.c * (slope * distance) + body.d * slope;
      const of = told({
        closeUpFocalLengthMm: f / m,
        cameraFocalLengthMm: f,
        cameraFNumber: N,
        pupilRatio: P,
        cameraPrincipalPlaneMm: f - -body.d / body.c,
      });
      near(magnification, m);
      if (distance > 0) near(of('tubesFarDistanceMm'), distance);
      near(of('tubesFarFNumber'), 1 / (2 * Math.abs(out)), 'working f-number');
      near(of('tubesFarCostEv'), Math.log2((1 / (2 * Math.abs(out)) / N) ** 2));
    }
  });

  it('at nearest focus, with the focal length that the lens works with there', () => {
    let checked = 0;
    for (const lens of all)
      for (const move of settingsOf(lens)) {
        const body = lens.at(move);
        const alone = sharpThrough(body, lens.behind(move));
        const e = 7;
        const drawn = sharpThrough(body, lens.behind(move) + e);
        if (drawn.distance < 1 || drawn.magnification < alone.magnification) continue;
        const of = told({
          closeUpFocalLengthMm: 200,
          cameraFocalLengthMm: lens.focalLengthMm,
          cameraMagnification: alone.magnification,
          cameraSubjectDistanceMm: alone.distance,
          nearFocalLengthMm: -1 / body.c,
          extensionMm: e,
        });
        near(of('ownTubesNearMagnification'), drawn.magnification);
        near(of('ownTubesNearDistanceMm'), drawn.distance);
        checked++;
      }
    expect(checked).toBeGreaterThan(100);
  });
});

describe('light with the close-up lens on', () => {
  it('is what the camera lens has without it: the cone on the sensor stays, at infinity that of the f-number set', () => {
    for (const lens of all)
      for (const move of [0, ...settingsOf(lens)]) {
        const body = lens.at(move);
        const cone = (whole: typeof body): number => {
          // From the middle of the sharp subject to the edge of a stop of radius 5 right behind the lens.
          const { distance } = sharpThrough(whole, lens.behind(move));
          const through = train(gap(distance), whole);
          return Math.abs((through.d * 5) / through.b);
        };
        const alone = Number.isFinite(sharpThrough(body, lens.behind(move)).distance) && move !== 0 ? cone(body) : 5 / lens.behind(move);
        near(cone(train(thinLens(180), gap(6), body)), alone);
      }
    const unit = movedWhole(random(7_103));
    const [body, f, m0] = [unit.at(0), unit.focalLengthMm, 0.5];
    const { distance } = sharpThrough(body, unit.behind(m0 * f));
    const P = Math.abs(body.a);
    const slope = f / 8 / 2 / (distance + body.b / body.a);
    const out = Math.abs(body.c * slope * distance + body.d * slope);
    const of = told({ closeUpFocalLengthMm: 180, cameraFocalLengthMm: f, cameraMagnification: m0, cameraFNumber: 8, pupilRatio: P });
    near(of('closeUpNearFNumber'), 1 / (2 * out));
  });
});

/** Share of a beam of radius `a` that is inside a rim of radius `R`, `off` to the side: points in rings. */
function shareInside(a: number, R: number, off: number): number {
  let [inside, all] = [0, 0];
  const RINGS = 200;
  for (let i = 0; i < RINGS; i++)
    for (let j = 0; j < 4 * RINGS; j++) {
      const r = a * Math.sqrt((i + 0.5) / RINGS);
      const angle = (2 * Math.PI * (j + 0.5)) / (4 * RINGS);
      all++;
      if (Math.hypot(off + r * Math.cos(angle), r * Math.sin(angle)) <= R) inside++;
    }
  return inside / all;
}

describe("the close-up lens's rim", () => {
  const [f, N, depth, diagonal] = [80, 11, 60, Math.hypot(PAIRING.sensor.widthMm as number, PAIRING.sensor.heightMm as number)];
  const slant = (depth * diagonal) / (2 * f);
  const pupil = f / N / 2;
  const of = (clear: number) =>
    told({ closeUpFocalLengthMm: 200, cameraFocalLengthMm: f, cameraFNumber: N, cameraPupilDepthMm: depth, closeUpClearApertureMm: clear });

  it('cuts nothing of the corner while there is room, and something as soon as there is none', () => {
    const room = of(50)('closeUpRoomMm');
    const just = 50 - room;
    expect(shareInside(pupil, just / 2 + 1e-6, slant)).toBe(1);
    expect(shareInside(pupil, just / 2 - 0.2, slant)).toBeLessThan(1);
  });

  it('leaves the corner about half its light at the shortest camera lens, for a rim much wider than the beam', () => {
    expect(of(2 * slant)('closeUpShortestCameraMm')).toBeCloseTo(f, 9);
    const share = shareInside(pupil, slant, slant);
    expect(share).toBeGreaterThan(0.4);
    expect(share).toBeLessThanOrEqual(0.5);
  });
});
