import { describe, expect, it } from 'vitest';
import { DOUBLE_GAUSS } from '../../../../core/checked/lenses/double-gauss.ts';
import { DOUBLETS } from '../../../../core/checked/lenses/doublets.ts';
import { RAY_TABLES } from '../../../../core/checked/lenses/ray-tables.ts';
import { THIN } from '../../../../core/checked/lenses/thin.ts';
import { agrees } from '../../../../core/checked/printed.ts';

describe.each([
  ['a double Gauss', DOUBLE_GAUSS],
  ['doublets', DOUBLETS],
  ['rays', RAY_TABLES],
  ['thin lenses', THIN],
])('%s: a hundredth shows, whatever the rounding of radii adds', (_, checks) => {
  it.each(checks.map(({ id, values }) => [id, values] as const))('%s', (_, values) => {
    for (const { what, printed, of, slack } of values) {
      const rounding = { slack: slack?.of() ?? 0 };
      const [value, nought] = [of(), Number(printed) === 0];
      expect(agrees(value, printed, rounding), `${what}: ${value}`).toBe(true);
      const shows = [1.01, 0.99].some((by) => !agrees(by * value, printed, rounding));
      expect(shows, `${what}: ${printed} hides 1 % of ${value}`).toBe(!nought);
    }
  });
});
