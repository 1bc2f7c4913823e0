import type { Page } from 'playwright-core';
import { afterEach, expect, it } from 'vitest';
import { evaluate, numberIn } from '../../core/index.ts';
import { clean } from './clean.ts';
import { complaints, leave, linkOf, OPENING, pairingIn, useBrowser, visit } from './support.ts';

/** What you saw, as a person tells it: a ruler, what it says, and taking it. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

const type = async (page: Page, id: string, text: string): Promise<void> => {
  await page.fill(`#saw-${id}`, text);
  await page.locator(`#saw-${id}`).blur();
};

it('takes what a ruler shows as the relay, in one step, and puts it back', async () => {
  const page = await visit(`?view=table${linkOf(OPENING)}`, {}, '#table-saw');
  await page.click('.saw >> text="a ruler"');
  await type(page, '0-across', '2.31');
  await type(page, '0-acrossPm', '0.01');
  await page.waitForSelector('text="You photograph at 10.173 ± 0.050×."');
  const wide = await page.textContent('[data-tightens=systemMagnification]');
  expect(wide).toContain('9.52 to 10.53×');
  expect(wide).toContain('10.12 to 10.22×');

  // A second ruler that does not agree is told by name.
  await page.click('.saw >> text="a stage micrometer"');
  for (const [key, text] of [
    ['divisions', '100'],
    ['division', '10'],
    ['pixels', '2720'],
    ['pixelsPm', '4'],
  ] as const)
    await type(page, `1-${key}`, text);
  await page.waitForSelector('text=/Sighting 2, the micrometer, reads 2720 pixels/');
  await clean(page, { within: 'main' });
  await page.click('[aria-label="Take sighting 2 away"]');
  await page.waitForFunction(() => document.querySelectorAll('.saw-row').length === 1);

  const steps = await page.evaluate(() => history.length);
  await page.click('text="Take it"');
  await page.waitForSelector('text="Taken."');
  expect(await page.evaluate(() => history.length)).toBe(steps + 1);
  const taken = await pairingIn(page);
  expect(taken.relay.focalLengthMm).toEqual({ value: 203.463, plusMinus: 1, origin: 'measured' });
  expect(numberIn(evaluate(taken).answers.systemMagnification)).toBeCloseTo(10.173, 3);
  // What was gained stays to be seen, and the address holds all of it.
  const link = new URL(page.url());
  const again = await visit(link.search + link.hash, { viewport: { width: 390, height: 844 }, colorScheme: 'dark' }, '[data-tightens]');
  expect(await again.textContent('[data-tightens=systemMagnification]')).toBe(wide);
  await again.waitForSelector('text="Taken."');
  expect(await again.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  await clean(again, { within: 'main', sameColours: true });
  // What cannot be is said at its row, and the rest still answers.
  await again.click('.saw >> text="an even wall"');
  await type(again, '1-read', '99');
  await type(again, '1-readPm', '1');
  expect(await again.textContent('#saw-1-wrong')).toMatch(/Lies outside the picture/);

  await page.click('text="put back what stood there"');
  await page.waitForSelector('text="Take it"');
  expect(await pairingIn(page)).toEqual(OPENING);
  await page.goBack();
  await page.waitForSelector('text="Taken."');
});

it('says of an address that is damaged that it could not be read', async () => {
  const page = await visit(`?view=table&saw=1.eyJyb3${linkOf(OPENING)}`, {}, '#table-saw');
  await page.waitForSelector('text=/What this address says was seen could not be read/');
});
