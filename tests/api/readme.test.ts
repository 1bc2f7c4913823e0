import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { buildApp } from '../../api/app.ts';
import { adviceOf, spacings } from '../../core/glassworks.ts';
import type { Report } from '../../core/index.ts';
import { judgingIn, pairingWith } from '../core/lens/rigs.ts';

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

it("README's advice on the glass is what core says", () => {
  const judging = judgingIn(pairingWith({}, { infinitySpaceMm: 20 }));
  const { sentence } = adviceOf(judging, [...spacings(judging, { fromMm: 20, toMm: 150, count: 27 })], 20);
  expect(readme).toContain(`> ${sentence}`);
});
