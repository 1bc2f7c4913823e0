import { describe, expect, it } from 'vitest';
import { gap, numberIn, type Pairing, type Report, report, thinLens, train } from '../../../core/index.ts';
import { random } from '../../support/random.ts';
import { naOf, pairingOf } from '../support/as-core.ts';
import { randomOffset, randomTrain } from '../support/random-train.ts';
import { placesOf, planeOf, sensorOf, type Train } from '../support/train.ts';

/**
 * The first-order figures once more, read off the elements of ray matrices between the subject, the
 * stops and the sensor. The objective is a thin lens of the focal length that gives the marked
 * magnification with the reference tube lens. An aplanatic objective's slopes in front stand for sines.
 */

const DIAGONAL = 30;
type FigureId = keyof Report['figures'];

/** From the objective's lens to a stop or to the sensor; the pupil is a focal length behind the lens. */
function fromLens(t: Train, fo: number, place: { z?: number; l?: number }) {
  const toPupil = [thinLens(fo), gap(fo)];
  if (place.z !== undefined) return train(...toPupil, gap(place.z));
  return train(...toPupil, gap(planeOf(t)), thinLens(t.focalLength), gap(sensorOf(t) - (place.l as number)));
}

/** The objective's focal length from its engraving: the one whose image through the reference lens is M as large. */
function objectiveOf(pairing: Pairing): number {
  const M = pairing.objective.magnification as number;
  const reference = pairing.objective.referenceFocalLengthMm as number;
  const marked = (f: number): number => Math.abs(train(gap(f), thinLens(f), gap(123), thinLens(reference), gap(reference)).a);
  let [low, high] = [0.1, 1000];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (marked(middle) > M) low = middle;
    else high = middle;
  }
  return low;
}

function secondRoute(t: Train, pairing: Pairing): Partial<Record<FigureId, number>> {
  const fo = objectiveOf(pairing);
  const toSensor = fromLens(t, fo, { l: 0 });
  // The subject is where the element b of the whole vanishes; there a is the magnification.
  const distance = -toSensor.b / toSensor.a;
  const whole = train(gap(distance), toSensor);
  const m = Math.abs(whole.a);
  // A ray from the middle of the subject of slope 1 meets each stop at the height b.
  const stops = placesOf(t).map((place) => ({ radius: place.radius, matrix: train(gap(distance), fromLens(t, fo, place)) }));
  const limiting = stops.reduce((x, y) => (y.radius / Math.abs(y.matrix.b) < x.radius / Math.abs(x.matrix.b) ? y : x));
  const na = limiting.radius / Math.abs(limiting.matrix.b);
  const pupilToSensor = train(gap(planeOf(t)), thinLens(t.focalLength), gap(sensorOf(t)));
  return {
    objectiveFocalLengthMm: fo,
    relayFocalLengthMm: t.focalLength,
    systemMagnification: m,
    objectFieldWidthMm: (0.8 * DIAGONAL) / m,
    objectFieldHeightMm: (0.6 * DIAGONAL) / m,
    objectFieldDiagonalMm: DIAGONAL / m,
    // A ray of the marked aperture from the middle of the subject, where it is in the back focal plane.
    pupilDiameterMm: 2 * naOf(t) * Math.abs(train(gap(distance), thinLens(fo), gap(fo)).b),
    systemNa: na,
    workingFNumber: 1 / (2 * Math.abs(whole.d * na)),
    // Through the middle of the pupil to the corner: height b, slope d.
    cornerChiefRayDeg: (Math.atan((DIAGONAL / 2) * (pupilToSensor.d / pupilToSensor.b)) * 180) / Math.PI,
    magnificationChangePerMm: growthPerMm(limiting.matrix),
  };
}

/**
 * How much larger a thing looks per mm that it is farther away. The ray through the middle of the
 * limiting stop, `a h + b u = 0`, says where a point out of focus appears: at the height `h` at which
 * its ray crosses the plane in focus. A point of height 1, farther by δ, sends it with a slope `u` such
 * that `h = 1 + δ u`; so `h = 1 / (1 + δ a/b)`, and the rate at δ = 0 is `-a/b`.
 */
const growthPerMm = ({ a, b }: { a: number; b: number }): number => -a / b;

/** 1e-10 of the value; of nothing, 1e-13. */
function expectSame(told: number | undefined, again: number, what: string): void {
  expect(Math.abs((told ?? Number.NaN) - again), `${what}: ${told} and ${again}`).toBeLessThanOrEqual(
    Math.max(1e-13, 1e-10 * Math.abs(again)),
  );
}

describe('first-order figures read off ray matrices', () => {
  it.each([
    ['with the sensor at the focus', 71_001, 0],
    ['with the sensor off the focus', 71_002, 1],
  ] as const)('agree in 100 random pairings %s', (_, seed, off) => {
    const draw = random(seed);
    const limited = { pupil: 0, other: 0 };
    for (let k = 0; k < 100; k++) {
      const t = randomTrain(draw, off ? randomOffset(draw) : 0, 2 + (k % 7));
      const pairing = pairingOf(t, DIAGONAL);
      const { figures } = report(pairing);
      const again = secondRoute(t, pairing);
      for (const [id, value] of Object.entries(again)) expectSame(numberIn(figures[id as FigureId]), value, `${id} ${JSON.stringify(t)}`);
      limited[Math.abs(again.magnificationChangePerMm ?? 0) < 1e-12 ? 'pupil' : 'other']++;
    }
    expect(limited.pupil).toBeGreaterThan(10);
    expect(limited.other).toBeGreaterThan(10);
  });

  it("count a camera lens's f-number as its focal length over its aperture", () => {
    const draw = random(71_004);
    for (let k = 0; k < 20; k++) {
      const t: Train = { ...randomTrain(draw, 0, 2), entrancePupil: { radius: draw.between(1, 4), depth: 30 } };
      const byDiameter = pairingOf(t, DIAGONAL);
      const { entrancePupilDiameterMm, ...relay } = byDiameter.relay;
      const byNumber = { ...byDiameter, relay: { ...relay, fNumber: t.focalLength / (entrancePupilDiameterMm as number) } };
      for (const id of ['systemNa', 'workingFNumber', 'litCircleMm'] as const)
        expectSame(numberIn(report(byNumber).figures[id]), numberIn(report(byDiameter).figures[id]) ?? 0, id);
    }
  });

  it('farther parts look larger when a ring between pupil and relay limits the beam, and smaller when it is before the pupil', () => {
    const draw = random(71_003);
    for (const [at, sign] of [
      [60, 1],
      [0, -1],
    ] as const) {
      const t: Train = {
        ...randomTrain(draw, 0, 2),
        exitPupil: 30,
        space: 90,
        rimRadius: 20,
        pupilRadius: 5,
        rings: [{ radius: 3, from: 'shoulder', at }],
      };
      expect(Math.sign(numberIn(report(pairingOf(t)).figures.magnificationChangePerMm) ?? 0)).toBe(sign);
    }
  });
});
