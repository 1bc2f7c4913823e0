import { afterAll, beforeAll, expect, it } from 'vitest';
import { checksSchema } from '../../api/schemas/checks.ts';
import type { Running } from '../../api/server.ts';
import { checking, placedIn } from '../../core/checked.ts';
import { ask, start } from './support.ts';

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

it('GET /api/checks tells every check as core has it, while others are answered', async () => {
  const ended: string[] = [];
  const [{ status, json }] = await Promise.all([
    ask(`${server.address}/api/checks`).finally(() => ended.push('checks')),
    ask(`${server.address}/api/health`).finally(() => ended.push('health')),
  ]);
  expect(ended[0]).toBe('health');
  expect(status).toBe(200);
  const told = checksSchema.parse(json);
  const work = checking();
  let step = work.next();
  while (!step.done) step = work.next();
  const due = placedIn(step.value).map(({ value }) => value);
  const numbers = told.subjects.flatMap(({ checks }) => checks.flatMap((check) => check.numbers));
  expect(numbers.map(({ expected, computed, holds }) => [expected, computed, holds])).toEqual(
    due.map(({ expected, computed, holds }) => [expected, computed, holds]),
  );
  expect([told.failing, told.numbers + told.equalities]).toEqual([0, numbers.length]);
  expect(told.says[0]).toContain('All agree');
  expect(JSON.stringify(json)).not.toContain('null');
});
