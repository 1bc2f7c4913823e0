import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { buildApp } from '../../api/app.ts';
import type { Report } from '../../core/index.ts';

/** The README's example is what the server answers today. */
const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

it("README's example is real", async () => {
  const body = /-d '(\{[\s\S]*?\n\})'/.exec(readme)?.[1] ?? '';
  const answer = await buildApp().request('http://127.0.0.1/api/pairings/report', {
    method: 'POST',
    body,
    headers: { 'content-type': 'application/json', host: '127.0.0.1' },
  });
  expect(answer.status).toBe(200);
  const report = (await answer.json()) as Report;
  expect(readme).toContain(`> ${report.sentence}`);
  const shown = JSON.parse(/```json\n([\s\S]*?)\n```/.exec(readme)?.[1] ?? '') as Record<string, unknown>;
  expect(Object.keys(shown).length).toBeGreaterThan(3);
  expect(report.figures).toMatchObject(shown);
});
