import { describe, expect, it } from 'vitest';
import { VARIABLES } from '../../../core/choose/quantities.ts';
import { metWithin, places } from '../../../core/choose/scan.ts';
import { windowOf } from '../../../core/choose/windows.ts';
import { type Limit, meets } from '../../../core/choosing.ts';
import { type Pairing, report } from '../../../core/index.ts';
import { randomPairing } from '../../support/pairings.ts';
import { type Random, random } from '../../support/random.ts';
import { fullPairing } from '../support/full-pairing.ts';
import { figureOver, limitsFor, RANGES } from './windows-support.ts';

/** Two numbers with glass of its own besides. */
const anyPairing = (r: Random): Pairing => {
  const pairing = r.chance(0.5) ? randomPairing(r) : fullPairing(r);
  return r.chance(0.25) ? { ...pairing, sensor: { ...pairing.sensor, registerMm: 20, throatDiameterMm: r.between(25, 45) } } : pairing;
};

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
