import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { extractText, getDocumentProxy } from 'unpdf';
import { afterEach, expect, it } from 'vitest';
import { report } from '../../core/index.ts';
import { evaluateTable, TABLE_FIGURES } from '../../core/table.ts';
import { toldAs } from '../../web/figures/value.ts';
import { fullSettings } from '../core/table/full-settings.ts';
import { random } from '../support/random.ts';
import { clean } from './clean.ts';
import { blank, complaints, leave, linkOf, OPENING, pairingIn, useBrowser, visit } from './support.ts';

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

/** Presses the button that prints; the browser's own window would wait for a person. */
async function printed(page: Page): Promise<{ pages: number; text: string }> {
  await page.evaluate(() => {
    window.print = () => {};
  });
  await page.click('text="Print the sheet"');
  const document = await getDocumentProxy(new Uint8Array(await page.pdf({ format: 'A4' })));
  const { text } = await extractText(document, { mergePages: true });
  return { pages: document.numPages, text: text.replaceAll('μ', 'µ').replace(/\s+/g, ' ') };
}

const figure = (page: Page, id: string): Promise<string | null> => page.textContent(`[data-figure=${id}] .amount`);

it('is short on a phone until it is asked for more, and whole on paper', async () => {
  const page = await visit('?view=table', { viewport: { width: 390, height: 844 } }, '#table-close-up');
  const folds = page.locator('details.in-full');
  const open = () => folds.evaluateAll((all) => all.map((fold) => (fold as HTMLDetailsElement).open));
  expect(await open()).toEqual(Array(6).fill(false));
  // Each that is folded says what it has to say.
  expect((await page.locator('.in-brief').allTextContents()).filter((said) => said.length > 20)).toHaveLength(6);
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThan(8000);
  await clean(page, { within: 'main' });
  await page.click('.table-contents >> text="Room for light"');
  await page.locator('.side-plate').waitFor();
  expect(await open()).toEqual([false, true, false, false, false, false]);
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('table-light');
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  expect(await open()).toEqual(Array(6).fill(true));
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  expect(await open()).toEqual([false, true, false, false, false, false]);
  // By keys.
  await page.locator('details.in-full >> nth=0 >> summary >> nth=0').focus();
  await page.keyboard.press('Enter');
  await page.locator('.tube-rule').waitFor();
}, 30_000);

it('goes from a link to a sighting, the build, the frames, and the sheet on paper', async () => {
  // A link that somebody sent; from there to the table, as a person goes.
  const page = await visit(linkOf(RIG), {}, '.views a');
  expect(await page.textContent('.sentence')).toContain('At 10×');
  await page.click('.views >> text="On the table"');
  await page.waitForSelector('.sheet');
  const shown = await page.locator('[data-figure]').evaluateAll((rows) => rows.map((row) => row.getAttribute('data-figure')));
  for (const { id } of TABLE_FIGURES) expect(shown, id).toContain(id);

  // 2.31 mm of a ruler across 23.5 mm of sensor.
  await page.click('.saw >> text="a ruler"');
  await page.fill('#saw-0-across', '2.31');
  await page.fill('#saw-0-acrossPm', '0.01');
  await page.click('text="Take it"');
  await page.waitForSelector('text="Taken."');
  const rig = await pairingIn(page);
  const said = report(rig).sentence;
  expect(said).toContain('At 10.2×');

  // What follows stands on it: the tube, and the frames at the finer depth.
  const answers = evaluateTable(rig, {}).answers;
  for (const id of ['tubeLengthMm', 'frameStepUm', 'framesInAll'] as const) {
    const answer = answers[id];
    if (answer.state !== 'known') throw new Error(id);
    const { text } = toldAs(id, answer);
    expect(await figure(page, id)).toContain(text);
  }
  await page.fill('#in-railErrorUm', '3');
  await page.locator('#in-railErrorUm').blur();
  const coarse = evaluateTable(rig, { railErrorUm: 3 }).answers.framesInAll;
  await page.waitForFunction(
    (frames) => document.querySelector('[data-figure=framesInAll] .number')?.textContent === frames,
    String(coarse.state === 'known' && coarse.value),
  );

  const { pages, text } = await printed(page);
  expect(pages).toBe(1);
  for (const words of [
    said,
    'What you saw',
    'What to screw together',
    'Tube to build',
    'Frames to take',
    'Error of the rail',
    'Rests on guesses',
  ])
    expect(text).toContain(words);
  expect(text).toContain(`Frames to take ${coarse.state === 'known' && coarse.value}`);
}, 60_000);

it('prints on one page in black and white whatever stands on it, and saves it three ways', async () => {
  // As much as can be set, parts with long names, a wish for everything.
  const long = 'M'.repeat(60);
  const crowded = { ...RIG, objective: { ...RIG.objective, name: long }, relay: { ...RIG.relay, name: long } };
  const set = Buffer.from(JSON.stringify(fullSettings(random(5)))).toString('base64url');
  const full = await visit(`?view=table&set=1.${set}${linkOf(crowded)}`, {}, '.sheet');
  expect(await full.locator('[role=alert]').count()).toBe(0);
  const most = await printed(full);
  expect(most.pages).toBe(1);
  expect(most.text).toContain('more, in the link');
  expect(await full.locator('.sheet').evaluate((sheet) => Number.parseFloat(getComputedStyle(sheet).fontSize))).toBeGreaterThanOrEqual(8);

  const page = await visit(`?view=table${linkOf(RIG)}`, {}, '.sheet');
  await page.fill('#sheet-title', 'Moss, Saturday');
  expect((await printed(page)).text).toContain('Moss, Saturday');
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
  await clean(page, { within: '#table-sheet, .sheet' });
}, 60_000);
