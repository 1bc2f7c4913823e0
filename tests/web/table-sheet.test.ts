import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { extractText, getDocumentProxy } from 'unpdf';
import { afterEach, expect, it } from 'vitest';
import { report } from '../../core/index.ts';
import { TABLE_FIGURES } from '../../core/table.ts';
import { clean } from './clean.ts';
import { blank, complaints, leave, linkOf, OPENING, useBrowser, visit } from './support.ts';

/** The sheet: on paper, and as each file that it is saved as. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

const RIG = { ...OPENING, objective: { ...OPENING.objective, name: 'Old <b>brass</b> one | *' } };

async function saved(page: Page, button: string): Promise<{ name: string; path: string; text: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.click(`text="${button}"`)]);
  const path = await download.path();
  return { name: download.suggestedFilename(), path, text: await readFile(path, 'utf8') };
}

it('shows every figure of the table, prints the sheet on one page in black and white, and saves it three ways', async () => {
  const page = await visit(`?view=table${linkOf(RIG)}`, {}, '.sheet');
  const shown = await page.locator('[data-figure]').evaluateAll((rows) => rows.map((row) => row.getAttribute('data-figure')));
  for (const { id } of TABLE_FIGURES) expect(shown, id).toContain(id);

  await page.fill('#sheet-title', 'Moss, Saturday');
  // The browser's print window would wait for a person.
  await page.evaluate(() => {
    window.print = () => {};
  });
  await page.click('text="Print the sheet"');
  const pdf = await page.pdf({ format: 'A4' });
  const document = await getDocumentProxy(new Uint8Array(pdf));
  expect(document.numPages).toBe(1);
  const { text } = await extractText(document, { mergePages: true });
  const printed = text.replaceAll('μ', 'µ').replace(/\s+/g, ' ');
  for (const words of ['Moss, Saturday', report(RIG).sentence, 'Frames for this subject', 'Step from frame to frame', 'Rests on guesses'])
    expect(printed).toContain(words);
  await page.emulateMedia({ media: 'print' });
  const colours = await page.locator('.sheet *').evaluateAll((all) => [...new Set(all.map((element) => getComputedStyle(element).color))]);
  expect(colours).toEqual(['rgb(0, 0, 0)']);
  await page.emulateMedia({ media: 'screen' });

  const html = await saved(page, 'Save as a page');
  expect(html.name).toBe('pupilwalk-sheet-10x-5D.html');
  // By itself, without a network or a server: nothing is asked for, and no name is markup.
  const alone = await blank({ offline: true });
  const asked: string[] = [];
  alone.on('request', (request) => asked.push(request.url()));
  await alone.setContent(html.text);
  expect(asked).toEqual([]);
  expect(await alone.locator('b, script').count()).toBe(0);
  expect(await alone.title()).toBe('Moss, Saturday');
  expect(await alone.textContent('.sheet-answer')).toContain(report(RIG).sentence);
  expect(await alone.getAttribute('.sheet-link a', 'href')).toBe(page.url());
  expect(await alone.locator('.sheet').evaluate((sheet) => getComputedStyle(sheet).backgroundColor)).toBe('rgb(255, 255, 255)');

  const markdown = await saved(page, 'Save as text');
  expect(markdown.name).toBe('pupilwalk-sheet-10x-5D.md');
  expect(markdown.text).toContain('# Moss, Saturday\n');
  expect(markdown.text).toContain('\n## Frames for this subject\n');
  expect(markdown.text).not.toContain('<b>');

  const data = await saved(page, 'Save as data');
  const held = JSON.parse(data.text) as { pairing: unknown; table: { figures: Record<string, unknown> } };
  expect(held.pairing).toEqual(RIG);
  expect(Object.keys(held.table.figures)).toEqual(TABLE_FIGURES.map(({ id }) => id));
  await clean(page);
}, 60_000);
