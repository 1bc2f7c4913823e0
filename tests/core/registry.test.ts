import { describe, expect, it } from 'vitest';
import { evaluate, FIGURE_IDS, FIGURES, figureById, pairingSchema, RADIUS_IDS, report } from '../../core/index.ts';
import { random } from '../support/random.ts';
import { fullPairing, scaled } from './support/full-pairing.ts';
import { clashesIn, numbersCome, scalesBy, symbolsCome, toldWhole, workingsReach } from './support/registry-checks.ts';

const TOLD = [...FIGURES, ...RADIUS_IDS.map(figureById)];

const pairings = (seed: number, count: number) => {
  const draw = random(seed);
  return Array.from({ length: count }, () => fullPairing(draw));
};
const samples = (seed: number, count: number) => pairings(seed, count).map((pairing) => evaluate(pairing));

describe('the working of every figure', () => {
  it('comes to the figure when its numbers are worked out, and so does each step in it', () => {
    const checked = numbersCome(samples(81_001, 40), TOLD);
    for (const { id } of TOLD) expect(checked.get(id) ?? 0, id).toBeGreaterThanOrEqual(10);
  });

  it('comes to the figure when its symbols are looked up among its terms', () => {
    expect(symbolsCome(samples(81_002, 30), TOLD)).toBeGreaterThan(1000);
  });

  it('has one meaning for each symbol', () => {
    expect(clashesIn(samples(81_003, 25), TOLD)).toEqual([]);
  });
});

describe('every figure', () => {
  it('carries its unit, symbol, words and source, and a symbol of its own', () => toldWhole(TOLD));

  it('is reached in the report and in the working', () => {
    const evaluation = evaluate(fullPairing(random(81_004)));
    const { figures, vignetting } = report(evaluation.pairing);
    expect(Object.keys(figures)).toEqual([...FIGURE_IDS]);
    for (const id of FIGURE_IDS) expect(figures[id].unit).toBe(figureById(id).unit);
    for (const id of RADIUS_IDS) expect(vignetting[id].unit).toBe(figureById(id).unit);
    workingsReach(evaluation, TOLD);
  });

  it.each([0.6, 1.7])('follows its dimension when all lengths are %d times as large', (k) => {
    let checked = 0;
    for (const pairing of pairings(81_005, 30)) {
      expect(pairingSchema.safeParse(pairing).success).toBe(true);
      checked += scalesBy(k, evaluate(pairing), evaluate(scaled(pairing, k)), TOLD, JSON.stringify(pairing));
    }
    expect(checked).toBeGreaterThan(1000);
  });
});
