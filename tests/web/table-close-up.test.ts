import { afterEach, expect, it } from 'vitest';
import { closeUpClaims, closeUpSays, evaluateTable, type Settings, settingsSchema } from '../../core/table.ts';
import { clean } from './clean.ts';
import { complaints, leave, linkOf, OPENING, put, unfold, useBrowser, visit } from './support.ts';

/** The close-up lens on a camera lens, as a person tells it. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

const WITHIN = '[aria-labelledby=table-close-up]';

it('is a line and the fields where there is no close-up lens', async () => {
  const tube: typeof OPENING = { ...OPENING, relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 54 } };
  const page = await visit(`?view=table${linkOf(tube)}`, {}, WITHIN);
  expect(await page.textContent(`${WITHIN} .sentence`)).toContain('The relay is no close-up lens');
  expect(await page.locator(`${WITHIN} .figure`).count()).toBe(0);
  await put(page, '/closeUpFocalLengthMm', '200');
  expect(await page.locator(`${WITHIN} .figure`).count()).toBeGreaterThan(6);
}, 30_000);

it('answers a camera lens, guesses its nearest focus, draws and tabulates it, and takes what was measured', async () => {
  const page = await visit('?view=table', { viewport: { width: 390, height: 844 } }, WITHIN);
  await unfold(page);
  const says = () => page.textContent(`${WITHIN} .sentence`);
  const due = (settings: Settings) => closeUpSays(evaluateTable(OPENING, settingsSchema.parse(settings))).join(' ');
  expect(await says()).toBe(due({}));
  await page.click(`${WITHIN} >> text="On a 200 mm lens"`);
  expect(await says()).toBe(due({ cameraFocalLengthMm: 200 }));

  await put(page, '/closestFocusMm', '950');
  const guessed: Settings = { cameraFocalLengthMm: 200, closestFocusMm: 950 };
  expect(await says()).toBe(due(guessed));
  expect(await says()).toContain('partly guessed');
  expect(await page.locator(`${WITHIN} .track .line.assumed`).count()).toBe(2);

  await put(page, '/cameraMagnification', '0.31');
  await put(page, '/cameraSubjectDistanceMm', '650');
  await put(page, '/extensionMm', '36');
  const measured: Settings = { ...guessed, cameraMagnification: 0.31, cameraSubjectDistanceMm: 650, extensionMm: 36 };
  expect(await says()).toBe(due(measured));
  expect(await page.locator(`${WITHIN} .track`).count()).toBe(3);
  expect(await page.textContent('#reach-caption')).toContain('with the close-up lens from 153 mm (1.3×) to 200 mm (1×)');
  const cells = await page.locator(`${WITHIN} .against-tubes tbody`).nth(1).locator('td .number').allTextContents();
  expect(cells.slice(0, 3)).toEqual(['264', '152.9', '350']);
  expect(await page.locator(`${WITHIN} .claims p`).allTextContents()).toEqual(
    closeUpClaims(evaluateTable(OPENING, settingsSchema.parse(measured))),
  );
  await clean(page, { within: WITHIN });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
}, 30_000);
