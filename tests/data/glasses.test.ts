import { expect, test } from 'vitest';
import { GLASS_TABLE } from '../../core/checked/glass-table.ts';
import { CATALOGUE } from '../../core/checked/rows/glass.ts';
import { GLASS_NAMES, glassNamed } from '../../core/glass/glasses.ts';
import type { Medium } from '../../core/glass/medium.ts';
import table from '../../data/glasses.json' with { type: 'json' };

/** The table of glasses against what it says of itself. */

interface Entry {
  name: string;
  B: number[];
  C: number[];
  rangeUm: number[];
  nd?: number;
  vd?: number;
  provenance: keyof typeof table.sources;
}
const entries = table.glasses as Entry[];
const named = (name: string): Medium => glassNamed(name) as Medium;

test('holds 51 media, each once whatever the case, each from one of its sources', () => {
  expect(entries.length).toBe(51);
  expect(new Set(entries.map((e) => e.name.toLowerCase())).size).toBe(51);
  expect(GLASS_NAMES).toEqual(entries.map((e) => e.name));
  expect(new Set(entries.map((e) => e.provenance))).toEqual(new Set(Object.keys(table.sources)));
});

test('the n_d and V_d printed beside the coefficients of 49 are published checks, and those copied by hand are the same', () => {
  const byHand = new Map<string, readonly string[]>(CATALOGUE.map(([, name, ...told]) => [name, told]));
  const fromTable = new Set(GLASS_TABLE.flatMap(({ values }) => values.map(({ what = '' }) => what.replace(/, \w+$/, ''))));
  const printed = entries.filter(({ nd, vd }) => nd !== undefined && vd !== undefined);
  expect(printed.length).toBe(49);
  for (const { name, nd, vd } of printed) {
    expect(fromTable.has(name) || byHand.has(name), name).toBe(true);
    if (byHand.has(name)) expect(byHand.get(name)?.map(Number)).toEqual([nd, vd]);
  }
});

test.each(entries)(
  '$name: covers what the eye and a camera see, its index falling from blue to red and its resonances outside',
  ({ name, C, rangeUm }) => {
    const { rangeNm, indexAt } = named(name);
    expect(rangeNm).toEqual(rangeUm.map((um) => 1000 * um));
    expect(rangeNm[0]).toBeLessThanOrEqual(400);
    expect(rangeNm[1]).toBeGreaterThanOrEqual(1014);
    for (const c of C) expect(Math.sqrt(c) < (rangeUm[0] as number) || Math.sqrt(c) > (rangeUm[1] as number)).toBe(true);
    for (let nm = 400; nm < 1000; nm += 50) expect(indexAt(nm)).toBeGreaterThan(indexAt(nm + 50));
  },
);

test.each([
  ['CaF2', [0.050263605, 0.1003909, 34.64904]],
  ['fused silica', [0.0684043, 0.1162414, 9.896161]],
] as const)('%s: C holds the squares of the resonance wavelengths that its paper prints', (name, resonances) => {
  const { C } = entries.find((e) => e.name === name) as Entry;
  for (const [i, um] of resonances.entries()) expect(Math.sqrt(C[i] as number) / um).toBeCloseTo(1, 13);
});

test('holds what close-up achromats and tube lenses are listed with', () => {
  for (const name of [
    'N-BK7',
    'N-BAK4',
    'N-SSK2',
    'N-SK2',
    'N-SK16',
    'N-SSK5',
    'N-BAF10',
    'F2',
    'F5',
    'SF2',
    'SF5',
    'N-SF5',
    'LAFN7',
    'N-FK51A',
  ])
    expect(glassNamed(name), name).toBeDefined();
});
