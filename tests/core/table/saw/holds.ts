import { describe, expect, test } from 'vitest';
import { sawSchema, toldBy } from '../../../../core/table/saw/saw.ts';
import { type Random, random } from '../../../support/random.ts';
import type { Simulated } from './simulated.ts';

const RUNS = 500;
const SEED = Number(process.env.SEED ?? 61_001);

/** Solving backward recovers what the sightings were made from, and its 95 % hold the truth. */
export const holdsTheTruth = (kinds: Readonly<Record<string, (draw: Random) => Simulated>>): void =>
  describe.each(Object.entries(kinds))('%s', (_, made) => {
    test('holds the truth in nine runs of ten, without leaning', () => {
      const draw = random(SEED);
      const held: Record<string, number> = {};
      const found: Record<string, number> = {};
      const lean: Record<string, number> = {};
      for (let run = 0; run < RUNS; run++) {
        const { given, asked, truth } = made(draw);
        sawSchema.parse(asked);
        const { results } = toldBy(given, asked);
        for (const [path, true_] of Object.entries(truth)) {
          const result = results.find((r) => r.path === path);
          if (!result) continue;
          found[path] = (found[path] ?? 0) + 1;
          if (Math.abs(true_ - result.value) <= result.plusMinus && true_ >= result.low - 1e-9 && true_ <= result.high + 1e-9)
            held[path] = (held[path] ?? 0) + 1;
          lean[path] = (lean[path] ?? 0) + (result.value - true_) / result.plusMinus;
        }
      }
      const sought = Object.keys(made(draw).truth);
      for (const path of sought) {
        expect(found[path] ?? 0, path).toBeGreaterThan(0.9 * RUNS);
        expect((held[path] as number) / (found[path] as number), path).toBeGreaterThanOrEqual(0.9);
        expect(Math.abs((lean[path] as number) / (found[path] as number)), path).toBeLessThan(0.15);
      }
      expect(sought.length).toBeGreaterThan(0);
    }, 60_000);
  });
