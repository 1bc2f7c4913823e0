import { describe, expect, it } from 'vitest';
import { FIGURE_IDS, numberIn, RADIUS_IDS } from '../../../core/index.ts';
import { evaluateTable, SETTINGS, settingsSchema, TABLE_FIGURES, TABLE_GROUPS } from '../../../core/table.ts';
import { random } from '../../support/random.ts';
import { fullPairing, scaled } from '../support/full-pairing.ts';
import { clashesIn, numbersCome, scalesBy, symbolsCome, toldWhole, workingsReach } from '../support/registry-checks.ts';
import { fullSettings, scaledSettings } from './full-settings.ts';

const drawn = (seed: number, count: number) => {
  const draw = random(seed);
  return Array.from({ length: count }, () => ({ pairing: fullPairing(draw), settings: fullSettings(draw) }));
};
const samples = (seed: number, count: number) => drawn(seed, count).map(({ pairing, settings }) => evaluateTable(pairing, settings));

describe("the working of each of the table's figures", () => {
  it('comes to the figure when its numbers are worked out, and so does each step in it', () => {
    const checked = numbersCome(samples(82_001, 60), TABLE_FIGURES);
    for (const { id } of TABLE_FIGURES) expect(checked.get(id) ?? 0, id).toBeGreaterThanOrEqual(8);
  });

  it('comes to the figure when its symbols are looked up among its terms', () => {
    expect(symbolsCome(samples(82_002, 20), TABLE_FIGURES)).toBeGreaterThanOrEqual(8 * TABLE_FIGURES.length);
  });

  it('has one meaning for each symbol', () => {
    expect(clashesIn(samples(82_003, 15), TABLE_FIGURES)).toEqual([]);
  });
});

describe("each of the table's figures", () => {
  it('carries its unit, symbol, words and source, and a symbol of its own', () => toldWhole(TABLE_FIGURES));

  it("has an id that no figure of the pairing has, and each setting a path that no input of the pairing's has", () => {
    const pairingIds: readonly string[] = [...FIGURE_IDS, ...RADIUS_IDS];
    for (const { id } of TABLE_FIGURES) expect(pairingIds).not.toContain(id);
    const keys = SETTINGS.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    for (const { path } of evaluateTable(fullPairing(random(82_006)), {}).inputs.filter(
      ({ leaf }) => !SETTINGS.some((s) => s.leaf === leaf),
    ))
      expect(keys.map((key) => `/${key}`)).not.toContain(path);
  });

  it('is told with low and high about it, and with the guesses that it rests on', () => {
    for (const { answers } of samples(82_004, 10))
      for (const { id } of TABLE_FIGURES) {
        const answer = answers[id];
        const value = numberIn(answer);
        if (answer.state !== 'known' || value === undefined) continue;
        expect(answer.low ?? value, id).toBeLessThanOrEqual(value);
        expect(answer.high ?? value, id).toBeGreaterThanOrEqual(value);
      }
  });

  it('is reached in its working, and every setting moves a figure of its group', () => {
    workingsReach(samples(82_005, 1)[0] as ReturnType<typeof evaluateTable>, TABLE_FIGURES);
    for (const [group, { figures, settings }] of Object.entries(TABLE_GROUPS))
      for (const one of settings as readonly (typeof SETTINGS)[number][]) {
        const reached = new Set<unknown>();
        const visit = (node: { needs?: readonly unknown[] }): void => {
          if (reached.has(node)) return;
          reached.add(node);
          for (const need of node.needs ?? []) visit(need as typeof node);
        };
        for (const figure of figures) visit(figure);
        expect(reached.has(one.leaf), `${group}: ${one.key}`).toBe(true);
      }
  });

  it.each([0.6, 1.7])('follows its dimension when all lengths are %d times as large', (k) => {
    let checked = 0;
    for (const { pairing, settings } of drawn(82_007, 20)) {
      const larger = scaledSettings(settings, k);
      expect(settingsSchema.safeParse(larger).error).toBeUndefined();
      checked += scalesBy(k, evaluateTable(pairing, settings), evaluateTable(scaled(pairing, k), larger), TABLE_FIGURES);
    }
    expect(checked).toBeGreaterThanOrEqual(8 * TABLE_FIGURES.length);
  });
});
