import { describe, expect, it } from 'vitest';
import { type Answer, differing, evaluate, type FigureId, type Pairing } from '../../../core/index.ts';
import { evaluatePart } from '../../../core/pairing/evaluate.ts';
import type { GlassRelay, Glassworks } from '../../../core/pairing/glassworks.ts';
import { planFor } from '../../../core/pairing/registry.ts';
import { random } from '../../support/random.ts';
import { fullPairing } from '../support/full-pairing.ts';

/** What two pairings share, and what a difference rests on; quick enough for each figure by itself. */

const exact = (value: number) => ({ value, plusMinus: 0 });
const BASE = {
  objective: { magnification: exact(10), na: exact(0.25), referenceFocalLengthMm: 200, exitPupilFromShoulderMm: exact(0) },
  relay: {
    kind: 'tube-lens',
    focalLengthMm: exact(200),
    clearApertureMm: exact(400),
    frontPrincipalPlaneFromRimMm: exact(0),
  },
  sensor: { widthMm: 32, heightMm: 24, pixelPitchUm: 4 },
  infinitySpaceMm: exact(100),
} as const satisfies Pairing;
/** Glass that takes from the corner's light, or gives to it, by how far the pupil is. */
const works = (by: (distance: number) => number): Glassworks => ({
  relay: () =>
    ({
      focalLengthMm: 200,
      backFocalLengthMm: 190,
      thicknessMm: 10,
      frontPrincipalPlaneMm: 0,
      clearDiameterMm: 400,
      mappingFactor: (distance: number) => by(distance),
      sharpRadiusMm: () => 20,
      focusSpreadMm: () => 0,
    }) satisfies GlassRelay,
});
/** Of such a relay nothing is in doubt. */
const GLASS = { ...BASE.relay, kind: 'supplementary', glass: { class: 'singlet' } };
const PLAIN = works(() => 1);
type Known = Extract<Answer, { state: 'known' }>;

function difference<Id extends FigureId>(id: Id, from: object, of: object, works?: Glassworks): Answer {
  const [a, b] = [from, of].map((change) => evaluate({ ...BASE, ...change } as Pairing, works));
  return differing([id])(a as ReturnType<typeof evaluate>, b as ReturnType<typeof evaluate>)[id];
}

describe('the difference of two pairings', () => {
  it('is the opposite the other way round, each input moved as before', () => {
    const r = random(5);
    const ids = ['cornerIllumination', 'litCircleMm', 'clearWorkingDistanceMm', 'coveredShare'] as const;
    const differ = differing(ids);
    let doubtful = 0;
    for (let k = 0; k < 8; k++) {
      const a = fullPairing(r);
      const b = { ...fullPairing(r), sensor: a.sensor };
      const [one, other] = [evaluate(a), evaluate(b)];
      const [there, back] = [differ(one, other), differ(other, one)];
      for (const id of ids) {
        const [x, y] = [there[id], back[id]] as [Known, Known];
        expect(y.state).toBe(x.state);
        if (x.state !== 'known' || x.low === undefined || x.high === undefined) continue;
        expect([y.value, y.low, y.high]).toEqual([0 - x.value, 0 - x.high, 0 - x.low]);
        if (x.high > x.low) doubtful++;
      }
    }
    expect(doubtful).toBeGreaterThan(10);
  });

  it('moves what a part says once where both have that part, and twice where one of its other numbers is another', () => {
    // NA 0.25 ± 0.02 at 10 and at 5 times on the sensor: the f-numbers m / 2 NA are 20 and 10.
    const objective = { ...BASE.objective, na: { value: 0.25, plusMinus: 0.02 } };
    const half = { ...BASE.relay, focalLengthMm: exact(100) };
    const shared = difference('workingFNumber', { objective }, { objective, relay: half }) as Known;
    const ends = [0.23, 0.27].map((na) => 2.5 / na - 5 / na);
    expect(shared.value).toBeCloseTo(-10, 2);
    expect((shared.high as number) - (shared.low as number)).toBeCloseTo(Math.abs((ends[1] as number) - (ends[0] as number)), 1);
    const other = { ...objective, name: 'another of the kind' };
    const apart = difference('workingFNumber', { objective }, { objective: other, relay: half }) as Known;
    const width = (apart.high as number) - (apart.low as number);
    // 20 moves from 18.5 to 21.7, 10 from 9.3 to 10.9: as squares 3.6, where together it is 1.6.
    expect(width).toBeGreaterThan(3.3);
  });

  it('with one input doubtful in one pairing alone is that input moved there', () => {
    const relay = { ...BASE.relay, focalLengthMm: { value: 200, plusMinus: 10 } };
    for (const [from, of, low, high] of [
      [{}, { relay }, -0.5, 0.5],
      [{ relay: { ...BASE.relay, focalLengthMm: exact(100) } }, { relay }, 4.5, 5.5],
    ] as const) {
      const told = difference('systemMagnification', from, of) as Known;
      expect(told.low).toBeCloseTo(low, 9);
      expect(told.high).toBeCloseTo(high, 9);
    }
  });

  it('is looked at between the ends of what is in doubt', () => {
    // The ring 100 mm behind the shoulder with the relay's focal point: its light is most where the pupil stands in it.
    const shaded = (plusMinus: number) => ({
      relay: { ...GLASS, clearApertureMm: exact(12) },
      infinitySpaceMm: exact(100),
      objective: { ...BASE.objective, exitPupilFromShoulderMm: { value: 70, plusMinus } },
    });
    const light = (exitPupil: number): number =>
      (
        evaluate({ ...BASE, ...shaded(0), objective: { ...BASE.objective, exitPupilFromShoulderMm: exact(exitPupil) } } as Pairing, PLAIN)
          .answers.cornerIllumination as Known
      ).value;
    // At 70 the pupil is 30 mm before the relay, at 100 in it, at 130 as far behind.
    expect(light(130)).toBeCloseTo(light(70), 9);
    expect(light(100)).toBeCloseTo(1, 9);
    const told = difference('cornerIllumination', shaded(0), shaded(60), PLAIN) as Known;
    expect(told.high).toBeCloseTo(1 - light(70), 4);
    expect(told.low).toBeCloseTo(light(10) - light(70), 4);
    const back = difference('cornerIllumination', shaded(60), shaded(0), PLAIN) as Known;
    expect(back.low).toBeCloseTo(light(70) - 1, 4);
  });

  it('is looked at with all moved at once, where none does anything alone', () => {
    // The beam walks 10 mm at the relay, 11 at the most, in a rim that leaves it 11, or 10 at the least.
    const relay = { ...GLASS, clearApertureMm: { value: 32, plusMinus: 2 } };
    const doubtful = { relay, infinitySpaceMm: { value: 100, plusMinus: 10 } };
    const still = { relay: GLASS };
    // 10.4 for 11 with one of them at its end, the other six tenths of the way: a sliver of the beam is lost.
    const there = difference('cornerIllumination', still, doubtful, PLAIN) as Known;
    expect([there.value, there.high]).toEqual([0, 0]);
    expect(there.low).toBeLessThan(-0.005);
    const back = difference('cornerIllumination', doubtful, still, PLAIN) as Known;
    expect([back.value, back.low]).toEqual([0, 0]);
    expect(back.high).toBeCloseTo(0 - (there.low as number), 9);
  });

  it('is as weak as the weaker of the two', () => {
    const relay = (origin: string) => ({ relay: { ...BASE.relay, focalLengthMm: { value: 180, plusMinus: 1, origin } } });
    const origin = (a: object, b: object): string => (difference('relayFocalLengthMm', a, b) as Known).origin;
    expect(origin(relay('measured'), relay('assumed'))).toBe('assumed');
    expect(origin(relay('assumed'), relay('measured'))).toBe('assumed');
    expect(origin(relay('measured'), relay('marked'))).toBe('marked');
    expect(origin(relay('measured'), relay('measured'))).toBe('measured');
  });

  it('is none where one of the two has none, unknown where one is', () => {
    // A ring of 3 mm, narrower than the corner's walk at any space.
    const stops = [{ diameterMm: 3, fromSensorMm: 100 }];
    const id = 'longestUnvignettedSpaceMm';
    const none = evaluatePart({ ...BASE, stops } as Pairing, planFor([id])).answers[id];
    expect(none?.state).toBe('none');
    expect(difference(id, { stops }, {})).toEqual(none);
    expect(difference(id, {}, { stops })).toEqual(none);
    const depth = { subject: { depthMm: 1 } };
    expect(difference('framesForSubject', depth, {})).toMatchObject({ state: 'unknown', missing: ['/subject/depthMm'] });
    expect(difference('framesForSubject', {}, depth)).toMatchObject({ state: 'unknown', missing: ['/subject/depthMm'] });
  });

  it('is not moved by what tells only how long a rig is', () => {
    const objective = { ...BASE.objective, na: { value: 0.25, plusMinus: 0.02 } };
    const rig = (clearApertureMm: object, more: object = {}) => ({
      objective,
      infinitySpaceMm: { value: 100, plusMinus: 10 },
      relay: { ...GLASS, clearApertureMm, ...more },
    });
    const length = { rimToSensorMm: { value: 150, plusMinus: 20 }, backFocalLengthMm: { value: 140, plusMinus: 20 } };
    for (const wide of [32, 31, 30, 28]) {
      const rim = { value: wide, plusMinus: 2 };
      const plain = difference('cornerIllumination', { relay: GLASS }, rig(rim), PLAIN);
      expect(difference('cornerIllumination', { relay: GLASS }, rig(rim, length), PLAIN)).toEqual(plain);
    }
  });

  it('counts what one glass does to two pictures as two things', () => {
    const at = (infinitySpaceMm: number) => ({ relay: { ...GLASS, clearApertureMm: exact(28) }, infinitySpaceMm: exact(infinitySpaceMm) });
    // The same to the same picture is one thing: a pairing less itself is nothing for sure.
    const same = difference(
      'cornerIllumination',
      at(100),
      at(100),
      works(() => 0.99),
    ) as Known;
    expect([same.value, same.low, same.high]).toEqual([0, 0, 0]);
    const [near, far] = [100, 110].map(
      (space) =>
        (
          evaluate(
            { ...BASE, ...at(space) } as Pairing,
            works(() => 1),
          ).answers.cornerIllumination as Known
        ).value,
    );
    for (const sign of [1, -1]) {
      const told = difference(
        'cornerIllumination',
        at(100),
        at(110),
        works((distance) => 1 - sign * (distance === 100 ? 0.006 : 0.012)),
      ) as Known;
      const [takenNear, takenFar] = [0.006 * (near as number), 0.012 * (far as number)];
      expect(told.value).toBeCloseTo((far as number) - (near as number), 9);
      expect((told.high as number) - told.value).toBeCloseTo(sign === 1 ? takenNear : takenFar, 6);
      expect(told.value - (told.low as number)).toBeCloseTo(sign === 1 ? takenFar : takenNear, 6);
    }
  });
});
