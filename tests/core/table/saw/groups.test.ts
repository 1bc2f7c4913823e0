import { describe, expect, test } from 'vitest';
import { evaluate, type Pairing } from '../../../../core/index.ts';
import { soundInputs } from '../../../../core/pairing/evaluate.ts';
import type { Input } from '../../../../core/pairing/input.ts';
import { groupsOf, isRuler, rulersGive, saidBeside, wallUnknowns } from '../../../../core/table/saw/groups.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import {
  clashOf,
  EXIT_PUPIL,
  knownOf,
  MAGNIFICATION,
  openingAt,
  RELAY_FOCAL_LENGTH,
  rangeOf,
} from '../../../../core/table/saw/unknowns.ts';
import { bare, ruler } from './bare.ts';
import { q } from './simulated.ts';

type Quantity = number | { value: number; plusMinus?: number; origin?: 'measured' | 'assumed' };
const relay = (over: object): Pairing => ({ ...bare(), relay: { ...bare().relay, ...over } as Pairing['relay'] });
const inputs = (pairing: Pairing): readonly Input[] => soundInputs(pairing).list;
const lens = (over: object): Pairing => ({ ...bare(), relay: { kind: 'camera-lens', ...over } as Pairing['relay'] });

const kinds: Sighting[] = [
  ruler(2.3),
  { kind: 'micrometer', divisions: q(230, 1), divisionUm: 10 },
  { kind: 'wall', cornerLossEv: q(1, 0.1) },
  { kind: 'far', imageMm: q(200, 1), thingMm: 10_000 },
  { kind: 'extensions', firstAcrossMm: q(100, 1), secondAcrossMm: q(50, 1), apartMm: 50 },
];

describe('what goes with what', () => {
  test('rulers and micrometers show a magnification', () => {
    expect(kinds.map(isRuler)).toEqual([true, true, false, false, false]);
  });
  test('a lens alone tells of the relay, whatever rulers are usually for', () => {
    const places = (usual: 'relay' | 'objective') =>
      Object.fromEntries(Object.entries(groupsOf(kinds, usual)).map(([name, all]) => [name, all.map(({ place }) => place)]));
    expect(places('objective')).toEqual({ relay: [3, 4], objective: [0, 1], wall: [2] });
    expect(places('relay')).toEqual({ relay: [0, 1, 3, 4], objective: [], wall: [2] });
    const asked = groupsOf([{ ...ruler(2), gives: 'objective' } as Sighting, { ...ruler(2), gives: 'relay' } as Sighting], 'relay');
    expect([asked.relay[0]?.place, asked.objective[0]?.place]).toEqual([1, 0]);
  });
  test('the number whose ± is the greater share of it is what a ruler settles; the relay where both are alike', () => {
    const of = (M: Quantity, f: Quantity): string =>
      rulersGive(inputs({ ...relay({ focalLengthMm: f }), objective: { ...bare().objective, magnification: M } }));
    expect(of(q(10, 0.2), q(200, 3))).toBe('objective');
    expect(of(q(10, 0.2), q(200, 5))).toBe('relay');
    expect(of(10, 200)).toBe('relay');
    expect(of(q(10, 0.1), q(200, 2))).toBe('relay');
  });
});

describe('what is sought of a wall', () => {
  const wall = (name: string, infinitySpaceMm?: number): Sighting =>
    ({ kind: 'wall', [name]: q(1, 0.1), ...(infinitySpaceMm === undefined ? {} : { infinitySpaceMm }) }) as Sighting;
  const sought = (sightings: readonly Sighting[], pairing: Pairing, asked?: string): string[] =>
    wallUnknowns(sightings, groupsOf(sightings, 'relay').wall, inputs(pairing), asked).map(({ path }) => path);
  const doubtful = relay({ clearApertureMm: q(16, 2) });
  const RIM = '/relay/clearApertureMm';
  const two = [wall('cornerLossEv'), wall('halfRadiusMm')];

  test('two different ones tell the rim beside the pupil, where it is in doubt', () => {
    expect(sought(two, doubtful)).toEqual([EXIT_PUPIL.path, RIM]);
    expect(sought([wall('cornerLossEv'), wall('cornerLossEv', 100)], doubtful)).toEqual([EXIT_PUPIL.path, RIM]);
    expect(sought([wall('cornerLossEv', 60), wall('cornerLossEv', 100)], doubtful)).toEqual([EXIT_PUPIL.path, RIM]);
  });
  test('one, or the same one twice, tells the pupil alone', () => {
    expect(sought(two.slice(0, 1), doubtful)).toEqual([EXIT_PUPIL.path]);
    expect(sought([wall('cornerLossEv', 100), wall('cornerLossEv', 100)], doubtful, RIM)).toEqual([EXIT_PUPIL.path]);
  });
  test('a rim that is settled, without a ± or by having been measured, is only found where it is asked for', () => {
    const measured = relay({ clearApertureMm: { value: 16, plusMinus: 2, origin: 'measured' } });
    for (const settled of [bare(), measured]) {
      expect(sought(two, settled)).toEqual([EXIT_PUPIL.path]);
      expect(sought(two, settled, RIM)).toEqual([EXIT_PUPIL.path, RIM]);
    }
  });
  test('an opening that the pairing has not is not sought', () => {
    expect(sought(two, doubtful, '/stops/0/diameterMm')).toEqual([EXIT_PUPIL.path]);
  });

  test('what the pairing says of the opening with a ± counts beside; of the pupil, or without a ±, or measured it does not', () => {
    const beside = (pairing: Pairing) => {
      const list = inputs(pairing);
      return saidBeside([EXIT_PUPIL, openingAt(RIM, list) as never], list).map(({ place, says, value, plusMinus }) => [
        place,
        says,
        value,
        plusMinus,
      ]);
    };
    expect(beside(doubtful)).toEqual([[-1, 1, 16, 2]]);
    expect(beside(bare())).toEqual([]);
    expect(beside(relay({ clearApertureMm: { value: 16, plusMinus: 2, origin: 'measured' } }))).toEqual([]);
    expect(saidBeside([EXIT_PUPIL], inputs(bare()))).toEqual([]);
  });
});

describe('an opening', () => {
  const ringed: Pairing = {
    ...bare(),
    stops: [
      { label: 'a tube', diameterMm: q(15, 2), fromShoulderMm: 55 },
      { label: 'a ring', diameterMm: 20, fromShoulderMm: 40 },
    ],
  };
  const replaced = (path: string, pairing: Pairing): string[] | undefined => {
    const list = inputs(pairing);
    const opening = openingAt(path, list);
    return opening && list.filter((input) => opening.replaces(input)).map((input) => input.path);
  };
  test('stands in for what gives its width, and for nothing else', () => {
    expect(replaced('/relay/clearApertureMm', bare())).toEqual(['/relay/clearApertureMm']);
    expect(replaced('/stops/0/diameterMm', ringed)).toEqual(['/stops/0/diameterMm']);
    expect(replaced('/stops/1/diameterMm', ringed)).toEqual(['/stops/1/diameterMm']);
    const pupilled = lens({ focalLengthMm: 200, fNumber: 4 });
    expect(replaced('/relay/entrancePupilDiameterMm', pupilled)).toEqual(['/relay/fNumber']);
    expect(replaced('/relay/entrancePupilDiameterMm', lens({ focalLengthMm: 200, entrancePupilDiameterMm: 50 }))).toEqual([
      '/relay/entrancePupilDiameterMm',
    ]);
  });
  test('is none where there is no such opening, or where the number is no opening', () => {
    for (const path of [
      '/stops/2/diameterMm',
      '/stops/0/fromShoulderMm',
      '/relay/focalLengthMm',
      '/sensor/widthMm',
      'x/stops/0/diameterMm',
    ])
      expect(replaced(path, ringed)).toBeUndefined();
  });
  test('is looked for to a quarter and to four times of what is said, within its bounds', () => {
    const range = (pairing: Pairing, path = '/relay/clearApertureMm') => {
      const list = inputs(pairing);
      return rangeOf(openingAt(path, list) as never, [60], list);
    };
    expect(range(bare())).toEqual([4, 64]);
    expect(range(ringed, '/stops/1/diameterMm')).toEqual([5, 80]);
    const [least, greatest] = range(lens({ focalLengthMm: 200, fNumber: 4 }), '/relay/entrancePupilDiameterMm');
    // An f-number says nothing of the diameter in its own unit: the whole range.
    expect(greatest / least).toBeGreaterThan(100);
    expect(range(relay({ clearApertureMm: 2 * least }))[0]).toBe(least);
    expect(range(relay({ clearApertureMm: greatest / 2 }))[1]).toBe(greatest);
  });
});

describe('an unknown', () => {
  test('is known in its own unit: what power says of a focal length is turned about', () => {
    const supplementary = (powerDioptre: Quantity): Pairing => ({
      ...bare(),
      relay: { kind: 'supplementary', powerDioptre, clearApertureMm: 54 },
    });
    const known = knownOf(RELAY_FOCAL_LENGTH, inputs(supplementary({ value: 5, plusMinus: 1, origin: 'measured' })));
    expect(known).toEqual({ least: expect.closeTo(1000 / 6, 9), greatest: 250, measured: true });
    expect(knownOf(RELAY_FOCAL_LENGTH, inputs(relay({ focalLengthMm: q(200, 10) })))).toEqual({
      least: 190,
      greatest: 210,
      measured: false,
    });
    expect(knownOf(RELAY_FOCAL_LENGTH, inputs(bare()))).toBeUndefined();
    // An f-number gives a pupil's diameter no interval in mm.
    const list = inputs(lens({ focalLengthMm: 200, fNumber: q(4, 0.4) }));
    expect(knownOf(openingAt('/relay/entrancePupilDiameterMm', list) as never, list)).toBeUndefined();
  });

  test('clashes with what stood bare where more than a twentieth of that lies between', () => {
    const clash = ([low, high]: readonly [number, number]) => clashOf(RELAY_FOCAL_LENGTH, { low, high }, inputs(bare()));
    const told = { value: 200, path: '/relay/focalLengthMm' };
    for (const inside of [
      [210, 215],
      [185, 190],
      [190, 210],
    ] as const)
      expect(clash(inside)).toBeUndefined();
    for (const outside of [
      [210.05, 215],
      [185, 189.95],
    ] as const)
      expect(clash(outside)).toEqual(told);
    expect(clashOf(RELAY_FOCAL_LENGTH, { low: 300, high: 310 }, inputs(relay({ focalLengthMm: q(200, 1) })))).toBeUndefined();
    const inside = (e: number) => inputs({ ...bare(), objective: { ...bare().objective, exitPupilFromShoulderMm: e } });
    // Of a place below zero too the twentieth is to both sides: -21 to -19.
    expect(clashOf(EXIT_PUPIL, { low: -18.95, high: -15 }, inside(-20))).toEqual({ value: -20, path: EXIT_PUPIL.path });
    for (const [low, high] of [
      [-19.05, -15],
      [-25, -20.95],
    ] as const)
      expect(clashOf(EXIT_PUPIL, { low, high }, inside(-20))).toBeUndefined();
    const five: Pairing = { ...bare(), relay: { kind: 'supplementary', powerDioptre: { value: 5, plusMinus: 0 }, clearApertureMm: 54 } };
    expect(clashOf(RELAY_FOCAL_LENGTH, { low: 195, high: 205 }, inputs(five))).toBeUndefined();
    expect(clashOf(RELAY_FOCAL_LENGTH, { low: 250, high: 255 }, inputs(five))).toEqual({ value: 200, path: '/relay/powerDioptre' });
  });

  test('an exit pupil is looked for up to the rim of the longest spacing, or where it is guessed, if that is farther', () => {
    const to = (spaces: readonly number[], e: Quantity): number =>
      rangeOf(EXIT_PUPIL, spaces, inputs({ ...bare(), objective: { ...bare().objective, exitPupilFromShoulderMm: e } }))[1];
    expect(to([60, 140], { value: -15, plusMinus: 25, origin: 'assumed' })).toBe(140);
    expect(to([60], { value: 80, plusMinus: 25, origin: 'assumed' })).toBe(105);
    const without = bare();
    delete (without.objective as { exitPupilFromShoulderMm?: unknown }).exitPupilFromShoulderMm;
    expect(rangeOf(EXIT_PUPIL, [60], [])[1]).toBe(60);
    expect(rangeOf(MAGNIFICATION, [60], inputs(bare()))).toEqual(rangeOf(MAGNIFICATION, [600], []));
    expect(evaluate(without).answers).toBeDefined();
  });
});
