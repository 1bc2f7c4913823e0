import { describe, expect, it } from 'vitest';
import { movedBy, movedTogether } from '../../../core/pairing/together.ts';

describe('an input moved by a part of its interval', () => {
  it('goes that part of the way to the nearer or the farther end', () => {
    const at = (part: number) => movedBy({ value: 3, least: 1, greatest: 7 }, part);
    expect([-1, -0.5, 0, 0.5, 1].map(at)).toEqual([1, 2, 3, 5, 7]);
  });
});

describe('inputs moved together', () => {
  it('are none where there are fewer than two', () => {
    expect([movedTogether(0), movedTogether(1)]).toEqual([[], []]);
  });

  it('follow the design for three, by hand: parities of shared bits, each run another at its end, then once more', () => {
    const a = 0.6;
    expect(movedTogether(3)).toEqual([
      [1, a, a],
      [-a, 1, -a],
      [a, -a, -1],
      [-1, -a, a],
      [a, a, 1],
      [-1, a, -a],
      [a, -1, -a],
      [-a, -a, 1],
    ]);
  });

  it.each([
    [2, 8],
    [3, 8],
    [4, 16],
    [7, 16],
    [8, 32],
    [20, 64],
  ])('of %d are moved in %d rows, every two in all four combinations of signs alike often, and one of them all the way', (count, runs) => {
    const rows = movedTogether(count);
    expect(rows).toHaveLength(runs);
    for (const row of rows) {
      expect(row).toHaveLength(count);
      expect(row.filter((part) => Math.abs(part) === 1)).toHaveLength(1);
      expect(row.filter((part) => Math.abs(part) === 0.6)).toHaveLength(count - 1);
    }
    for (let i = 0; i < count; i++)
      for (let j = 0; j < i; j++)
        for (const [s, t] of [
          [1, 1],
          [1, -1],
          [-1, 1],
          [-1, -1],
        ] as const)
          expect(rows.filter((row) => Math.sign(row[i] as number) === s && Math.sign(row[j] as number) === t)).toHaveLength(runs / 4);
  });

  it('are planned once for each number of them', () => expect(movedTogether(5)).toBe(movedTogether(5)));
});
