import { describe, expect, it } from 'vitest';
import { DOUBLE_GAUSS } from './lenses/double-gauss.ts';
import { DOUBLETS } from './lenses/doublets.ts';
import { RAY_TABLES } from './lenses/ray-tables.ts';
import { THIN } from './lenses/thin.ts';
import { agrees } from './printed.ts';
import type { Value } from './row.ts';

const TOPICS = {
  'published ray tables': RAY_TABLES,
  'a double Gauss, surface by surface': DOUBLE_GAUSS,
  doublets: DOUBLETS,
  'thin lenses': THIN,
};

const STATED = { read: '', 'formula read': ' (formula read, number worked out from it)', 'from memory': ' (from memory)' };

const off = ({ of, printed, slack = 0 }: Value, by: number): boolean => !agrees(by * of(), printed, { slack });

for (const [topic, rows] of Object.entries(TOPICS)) {
  describe(topic, () => {
    for (const { id, claim, known, values, how, source } of rows) {
      it(`${id}: ${claim}${STATED[known]}`, () => {
        for (const value of values) {
          const { what = '', printed, of, slack = 0 } = value;
          const told = `${id} ${what}: ${source.by} ${source.year ?? ''} print ${printed}, core has ${of()} (${how}; slack ${slack})`;
          expect(off(value, 1), told).toBe(false);
        }
        // Every one of them, and not only the row, unless few digits are printed of it.
        const coarse = values.filter((value) => !off(value, 1.01) && !off(value, 0.99)).map(({ printed }) => printed);
        expect(coarse.filter((printed) => printed.replace(/[-0.]/g, '').length > 2)).toEqual([]);
      });
    }
  });
}

it('carries over every lens row that is not a note, with its source', () => {
  const rows = Object.values(TOPICS).flat();
  expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length);
  expect(rows.length).toBe(26);
  expect(rows.reduce((sum, { values }) => sum + values.length, 0)).toBeGreaterThan(200);
});
