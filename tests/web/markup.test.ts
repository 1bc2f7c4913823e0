import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterEach, beforeAll, expect, it } from 'vitest';
import { address, blank, complaints, leave, linkOf, OPENING, useBrowser, visit } from './support.ts';

/** Parts whose names and notes are markup, wherever they are read: on the page, on the sheet, in every file. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

const NAMES = [
  '<img src=x onerror="window.ran=1"><script>window.ran=1</script>',
  '"><svg onload=window.ran=1><iframe src="javascript:window.ran=1"></iframe>',
  '</title></script><base href="//evil.example/"><style>*{display:none}</style>',
] as const;
const NOTES = "<a href='javascript:window.ran=1'>notes</a> [x](javascript:window.ran=1) =cmd|' /C calc'!A0";
const LINES = '- a list\n\n# a heading\n[x](javascript:window.ran=1) ![y](//evil.example/z) &lt;b&gt; ***';
const RIG = {
  ...OPENING,
  objective: { ...OPENING.objective, name: NAMES[0] },
  relay: { ...OPENING.relay, name: NAMES[1] },
  sensor: { ...OPENING.sensor, name: NAMES[2] },
};

beforeAll(async () => {
  for (const kind of ['objective', 'relay', 'sensor'] as const) {
    const own = { kind, owned: true, notes: NOTES, part: RIG[kind] };
    const answer = await fetch(`${address()}/api/parts`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(own),
    });
    expect(answer.status).toBe(201);
  }
});

/** That nothing of a name has become more than text, and that the name is there as it was typed. */
async function holds(page: Page, names: readonly string[]): Promise<void> {
  expect(await page.evaluate(() => (window as { ran?: number }).ran)).toBeUndefined();
  expect(await page.locator('[onerror], [onload], iframe, base, body script, [href^="javascript:"], [src="x"]').count()).toBe(0);
  const all = await page.evaluate(() => [
    document.body.textContent ?? '',
    ...[...document.querySelectorAll<HTMLInputElement>('input, textarea, option')].map((input) => input.value || (input.textContent ?? '')),
  ]);
  for (const name of names)
    expect(
      all.some((text) => text.replace(/\s+/g, ' ').includes(name)),
      name,
    ).toBe(true);
}

it('are text in every view', async () => {
  const drawer = await visit('?view=drawer', {}, '.own');
  await holds(drawer, NAMES);
  for (const row of await drawer.locator('.own button.name').all()) await row.click();
  await holds(drawer, [...NAMES, NOTES]);
  for (const view of ['', '?view=subject', '?view=glass', '?view=abreast', '?view=table']) {
    const page = await visit(`${view}${linkOf(RIG)}`, {}, 'h1');
    await page.waitForLoadState('networkidle');
    await holds(page, view === '' || view === '?view=table' ? NAMES.slice(0, 2) : []);
    await page.close();
  }
}, 60_000);

it('are text on the sheet, in the files it is saved as, and in the tables of the drawer', async () => {
  const name = `1. ${NAMES[0]}\n\n# a heading\n- a list`;
  const page = await visit(`?view=table${linkOf({ ...RIG, objective: { ...RIG.objective, name } })}`, {}, '.sheet');
  const saved = async (button: string): Promise<string> => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.click(`text="${button}"`)]);
    return readFile(await download.path(), 'utf8');
  };
  // Untitled it is called by its parts: all of that stands on one line.
  const called = await saved('Save as text');
  expect(called).toMatch(/^# 1\\\. \\<img src=x .*script\\> \\# a heading - a list/);
  expect(called.match(/^# /gm)).toHaveLength(1);
  expect(called).not.toMatch(/^- a list/m);
  await page.fill('#sheet-title', LINES.replaceAll('\n', ' '));

  const alone = await blank({ offline: true });
  const asked: string[] = [];
  alone.on('request', (request) => asked.push(request.url()));
  await alone.setContent(await saved('Save as a page'));
  await holds(alone, NAMES.slice(0, 2));
  expect(asked).toEqual([]);

  const markdown = await saved('Save as text');
  expect(markdown).not.toMatch(/(^|[^\\])[<[*]\/?(img|script|svg|iframe|base|style|x\])/m);
  expect(markdown).toMatch(
    /^# \\- a list \\# a heading \\\[x\\\]\(javascript:window\.ran=1\) !\\\[y\\\]\(\/\/evil\.example\/z\) \\&lt;b\\&gt; \\\*\\\*\\\*$/m,
  );

  const data = JSON.parse(await saved('Save as data')) as { pairing: typeof RIG };
  expect(data.pairing.objective.name).toBe(name);

  // A table of the drawer: no cell is a formula, and it is not shown as a page by whoever opens its address.
  const table = await fetch(`${address()}/api/parts/drawer.csv`);
  expect(table.headers.get('content-type')).toBe('text/csv; charset=utf-8');
  expect(table.headers.get('content-disposition')).toBe('attachment; filename="drawer.csv"');
  expect(table.headers.get('x-content-type-options')).toBe('nosniff');
  expect(await table.text()).not.toMatch(/(^|[,;|\t"])[=+@-][a-z]/m);
}, 60_000);
