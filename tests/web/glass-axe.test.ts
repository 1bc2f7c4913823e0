import { afterEach, expect, it } from 'vitest';
import { clean } from './clean.ts';
import { withGlass } from './glass-support.ts';
import { input, leave, linkOf, put, unfold, useBrowser, visit } from './support.ts';

/** No accessibility fault that axe can find in the view of the glass: whole, wrong, unknown; light, dark, narrow. And nothing wider than a phone. */

useBrowser();
afterEach(leave);

it('light, whole and with an error; narrow', async () => {
  const page = await visit(`?view=glass${linkOf(withGlass())}`, {}, '#spacing-caption');
  await page.click('text=Add a second lens behind it');
  await page.waitForSelector('#spacing-caption');
  await unfold(page);
  await put(page, '/relay/glass/radiiMm/1', 'frog');
  expect(await page.getAttribute(input('/relay/glass/radiiMm/1'), 'aria-invalid')).toBe('true');
  await clean(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.waitForTimeout(100);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  expect(await page.locator('.section [data-glass]').count()).toBe(4);
  expect(await page.textContent('main')).not.toMatch(/NaN|undefined|Infinity(?! space)/);
  await put(page, '/relay/glass/radiiMm/1', '-54');
  await page.click('.radios label:has-text("I do not know the glass")');
  await page.waitForSelector('progress');
  await clean(page);
}, 60_000);

it('dark: what the scheme can change is colour', async () => {
  const page = await visit(`?view=glass${linkOf(withGlass({ reversed: true }))}`, { colorScheme: 'dark' }, '#spacing-caption');
  await clean(page, { rules: ['color-contrast'] });
}, 60_000);
