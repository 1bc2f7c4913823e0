import { expect, it } from 'vitest';
import { GLASS_TABLE } from '../../../core/checked/glass-table.ts';
import { CATALOGUE, GLASS } from '../../../core/checked/rows/glass.ts';

const named = GLASS_TABLE.flatMap(({ values }) => values.map(({ what }) => what?.replace(/, [nV]_d$/, '')));

it('n_d and V_d of each further glass stand in the table once, and not again where they were copied by hand', () => {
  const glasses = new Set(named);
  expect(named.length).toBe(2 * glasses.size);
  const byHand = CATALOGUE.map(([, name]) => name);
  expect(byHand.filter((name) => glasses.has(name))).toEqual([]);
  expect(byHand.every((name) => GLASS.some(({ claim }) => claim.startsWith(`${name}: n_d`)))).toBe(true);
});

it('numbers stand with as many decimals as their catalogue prints, zeros at the end among them', () => {
  const decimals = (id: string, what: string): Set<number> =>
    new Set(
      GLASS_TABLE.find((check) => check.id === id)
        ?.values.filter((value) => value.what?.endsWith(what))
        .map(({ printed }) => printed.split('.')[1]?.length ?? 0),
    );
  expect([...decimals('GLS-150', 'n_d'), ...decimals('GLS-150', 'V_d')]).toEqual([5, 2]);
  expect([...decimals('GLS-151', 'n_d'), ...decimals('GLS-151', 'V_d')]).toEqual([6, 6]);
});
