import { describe, expect, it } from 'vitest';
import { agrees } from './printed.ts';
import { ROWS, TOPICS } from './rows/index.ts';

const STATED = { read: '', 'formula read': ' (formula read, number worked out from it)', 'from memory': ' (from memory)' };

for (const [topic, rows] of Object.entries(TOPICS)) {
  describe(topic, () => {
    for (const { id, claim, known, values, how, source } of rows) {
      it(`${id}: ${claim}${STATED[known]}`, () => {
        for (const { what = '', printed, of, cutOff = false, slack = 0 } of values) {
          const value = of();
          const told = `${id} ${what}: ${source.by} ${source.year ?? ''} print ${printed}, core has ${value} (${how})`;
          expect(agrees(value, printed, { cutOff, slack }), told).toBe(true);
        }
      });
    }
  });
}

it('carries over 45 rows or more, each once and each with its source', () => {
  expect(ROWS.length).toBeGreaterThanOrEqual(45);
  expect(new Set(ROWS.map((row) => row.id)).size).toBe(ROWS.length);
  for (const { source, values } of ROWS) {
    expect(source.title && source.by).toBeTruthy();
    expect(values.length).toBeGreaterThan(0);
  }
});
