import { describe, expect, it } from 'vitest';
import { type Box, gapped, type Run, runBetween } from '../../../../core/table/build/run.ts';
import { adapterOf, type Piece, type Tube, tubeOf } from '../../../../core/table/threads/adapter.ts';
import { filterThread, M25, M42 } from '../../../../core/table/threads/known.ts';
import type { NoChain } from '../../../../core/table/threads/nearest.ts';
import { stockOf } from '../../../../core/table/threads/stock.ts';
import type { End, Sex } from '../../../../core/table/threads/thread.ts';

const ring = (a: string, sexA: Sex, b: string, sexB: Sex, lengthMm = 5, owned = true): Piece =>
  adapterOf({
    ends: [
      { thread: a, sex: sexA },
      { thread: b, sex: sexB },
    ],
    lengthMm,
    owned,
  });
const tube = (lengthMm: number, owned = true): Tube => ({ ...tubeOf({ thread: 'M42 x 1', lengthMm }), owned });
const box = (rings: readonly Piece[], tubes: readonly Tube[] = [], more: Partial<Box> = {}): Box => ({
  rings: stockOf(rings),
  tubes,
  taken: new Set(),
  preferOwned: false,
  ...more,
});
const exact = (value: number) => ({ value, low: value, high: value, within: 0 });
const OBJECTIVE: End = { thread: M25, sex: 'male' };
const MALE: End = { thread: M42, sex: 'male' };
const FEMALE: End = { thread: M42, sex: 'female' };
const M58: End = { thread: filterThread(58), sex: 'female' };
const pieces = (run: Run | NoChain) => ('miss' in run ? [] : run.links.map(({ piece }) => piece));

describe('a run', () => {
  it('is of rings alone where no length is wanted, the shortest of them', () => {
    const run = runBetween(
      OBJECTIVE,
      FEMALE,
      undefined,
      box([ring('M25', 'female', 'M42 x 1', 'male', 7), ring('M25', 'female', 'M42 x 1', 'male', 4)], [tube(10)]),
    );
    expect(run).toStrictEqual({ links: expect.any(Array), lengthMm: 4, toBuy: 0, least: 4, most: 4 });
    expect(pieces(run).length).toBe(1);
  });

  it('is none where no rings join, with nothing of a length', () => {
    const none = runBetween(OBJECTIVE, M58, exact(20), box([ring('M25', 'female', 'M42 x 1', 'male')], [tube(10)]));
    expect(none).toHaveProperty('miss');
    expect(none).not.toHaveProperty('least');
  });

  it('has tubes where they come nearer by more than half a millimetre, told in whole ones', () => {
    const at = (value: number, length: number) => pieces(runBetween(MALE, FEMALE, exact(value), box([], [tube(length)]))).length;
    expect(at(1.6, 1.6)).toBe(1);
    expect(at(0.4, 0.4)).toBe(0);
    expect(at(0.6, 0.6)).toBe(1);
  });

  it('has no tube that is used elsewhere, nor one where the rings are too long already', () => {
    const long = tube(10);
    expect(pieces(runBetween(MALE, FEMALE, exact(10), box([], [long])))).toEqual([long]);
    expect(pieces(runBetween(MALE, FEMALE, exact(10), box([], [long], { taken: new Set([long]) })))).toEqual([]);
    const plate = ring('M25', 'female', 'M42 x 1', 'male', 20);
    expect(pieces(runBetween(OBJECTIVE, FEMALE, exact(10), box([plate], [long])))).toEqual([plate]);
  });

  it('has fewest pieces, or fewest to buy where that is preferred', () => {
    const [one, two] = [tube(20, false), [tube(10), { ...tube(10) }]];
    const chosen = (preferOwned: boolean) => runBetween(MALE, FEMALE, exact(20), box([], [one, ...two], { preferOwned }));
    expect(chosen(false)).toMatchObject({ toBuy: 1, lengthMm: 20 });
    expect(chosen(true)).toMatchObject({ toBuy: 0, lengthMm: 20 });
    // A direct ring of which one is to buy, or two owned ones through another thread and no tube.
    const rings = [
      ring('M25', 'female', '58', 'male', 5, false),
      ring('M25', 'female', 'M42 x 1', 'male', 5),
      ring('M42 x 1', 'female', '58', 'male', 5),
    ];
    const wanted = { value: 10, low: 10, high: 10, within: 10 };
    const through = (preferOwned: boolean) => runBetween(OBJECTIVE, M58, wanted, box(rings, [tube(2)], { preferOwned }));
    expect(through(false)).toMatchObject({ toBuy: 1 });
    expect(through(true)).toMatchObject({ toBuy: 0 });
  });

  it('may be longer than it need be where that is all owned, or of fewer pieces where all is bought alike', () => {
    // One ring to buy, 10 mm; or two owned of 4 mm with a tube of 3 mm between them. Both within 1 mm of 11.
    const rings = [
      ring('M25', 'female', '58', 'male', 10, false),
      ring('M25', 'female', 'M42 x 1', 'male', 4),
      ring('M42 x 1', 'female', '58', 'male', 4),
    ];
    const wanted = { value: 11, low: 11, high: 11, within: 1 };
    const through = (preferOwned: boolean) => runBetween(OBJECTIVE, M58, wanted, box(rings, [tube(3)], { preferOwned }));
    expect([through(false), through(true)]).toMatchObject([
      { toBuy: 1, lengthMm: 10 },
      { toBuy: 0, lengthMm: 11 },
    ]);
  });

  it('has one tube to buy, or two owned of another thread where that is preferred', () => {
    const rings = ['M42 x 1', 'M52 x 0.75'].flatMap((thread) => [
      ring('M25', 'female', thread, 'male', 5),
      ring(thread, 'female', '58', 'male', 5),
    ]);
    const five = (): Tube => ({ ...tubeOf({ thread: 'M52 x 0.75', lengthMm: 5 }), owned: true });
    const run = (preferOwned: boolean) =>
      runBetween(OBJECTIVE, M58, exact(20), box(rings, [tube(10, false), five(), five()], { preferOwned }));
    expect([run(false), run(true)].map((found) => [pieces(found).length, 'toBuy' in found && found.toBuy])).toEqual([
      [3, 1],
      [4, 0],
    ]);
  });

  it('is the nearest to its length of those with as many pieces, too long or too short', () => {
    const rings = ['M42 x 1', 'M52 x 0.75'].flatMap((thread) => [
      ring('M25', 'female', thread, 'male', 5),
      ring(thread, 'female', '58', 'male', 5),
    ]);
    const wide = (lengthMm: number): Tube => ({ ...tubeOf({ thread: 'M52 x 0.75', lengthMm }), owned: true });
    const wanted = { value: 20, low: 20, high: 20, within: 0.5 };
    const length = (first: number, second: number) =>
      runBetween(OBJECTIVE, M58, wanted, box(rings, [tube(first), wide(second)], { preferOwned: true }));
    expect(
      [length(9.7, 10.1), length(9.9, 10.3), length(10.3, 9.8), length(10.1, 9.6)].map((run) => 'lengthMm' in run && run.lengthMm),
    ).toEqual([20.1, 19.9, 19.8, 20.1]);
  });
});

describe('a gap', () => {
  const to: End = { thread: filterThread(58), sex: 'male' };
  const gapOf = (rings: readonly Piece[], tubes: readonly Tube[], value: number | undefined, more: Partial<Box> = {}) => {
    const all = box(rings, tubes, more);
    const wanted = value === undefined ? undefined : exact(value);
    const none = runBetween(OBJECTIVE, to, wanted, all);
    if (!('miss' in none)) throw new Error('joined');
    const found = gapped(OBJECTIVE, to, none, wanted, all);
    return { ...found, before: found.before.map(({ piece }) => piece), after: found.after.map(({ piece }) => piece) };
  };
  const plate = ring('M25', 'female', 'M42 x 1', 'male');
  const step = ring('58', 'female', '67', 'male', 7);

  it('has what goes on from either end, and tubes as long as is left', () => {
    const [ten, twenty] = [tube(10), tube(20)];
    const found = gapOf([plate, step], [ten, twenty], 32);
    expect(found.before).toEqual([plate, twenty]);
    expect(found.after).toEqual([step]);
    expect(found.wouldDo).toBe('a ring with female M42 x 1 on one side and female M67 x 0.75 on the other');
  });

  it('has no tubes where no length is wanted, and nothing that is used elsewhere', () => {
    const [ten, twenty] = [tube(10), tube(20)];
    expect(gapOf([plate], [ten], undefined).before).toEqual([plate]);
    expect(gapOf([plate, step], [ten, twenty], 32, { taken: new Set([twenty]) }).before).toEqual([plate, ten]);
    const without = gapOf([plate, step], [], 32, { taken: new Set([plate]) });
    expect([without.before, without.after]).toEqual([[], [step]]);
  });

  it('is not bridged by pieces to buy where they come no nearer', () => {
    const bought = { ...plate, owned: false };
    expect(gapOf([bought, step], [], 32).before).toEqual([]);
  });
});
