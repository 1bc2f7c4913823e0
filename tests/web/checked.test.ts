import { afterEach, expect, it } from 'vitest';
import { type Answers, checkedSays, checking, placedIn, summaryOf } from '../../core/checked.ts';
import { clean } from './clean.ts';
import { address, complaints, leave, linkOf, OPENING, useBrowser, visit } from './support.ts';

/** What the optics are checked against, as a reader meets it: worked out in the browser, held against the same here. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

const PHONE = { viewport: { width: 390, height: 844 } };
const VIEW = `?view=checked${linkOf(OPENING)}`;

function workedOut(): readonly Answers[] {
  const work = checking();
  let step = work.next();
  while (!step.done) step = work.next();
  return step.value;
}

it('is reached from the foot, answers first, and shows each number as it comes out here', async () => {
  const page = await visit(linkOf(OPENING));
  await page.click('.foot a:has-text("Checked against")');
  await page.waitForSelector('.strips');
  expect(await page.evaluate(() => location.search + location.hash)).toBe(VIEW);
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('checked-title');
  expect(await page.locator('.views [aria-current]').count()).toBe(0);

  const answers = workedOut();
  expect(await page.locator('.checked-head [aria-live] p').allTextContents()).toEqual(
    checkedSays(summaryOf(answers)).map((text) => text.replaceAll('_', '')),
  );
  const due = placedIn(answers);
  const ticks = await page.locator('.strips .ticks').evaluateAll((all) => all.map((path) => path.getAttribute('d')?.split('M').length));
  expect(ticks.map((count = 1) => count - 1)).toEqual(answers.map((subject) => placedIn([subject]).length));

  await page.click('text="Open all of them"');
  await page.evaluate(() => {
    for (const more of document.querySelectorAll<HTMLElement>('.check .more')) more.click();
  });
  await page.waitForFunction((count) => document.querySelectorAll('.held-against tbody tr').length === count, due.length);
  const rows = await page
    .locator('.held-against tbody tr')
    .evaluateAll((all) => all.map((row) => [...row.querySelectorAll('td')].slice(0, 2).map((cell) => cell.textContent)));
  expect(rows).toEqual(due.map(({ value }) => [value.expected, value.shown]));

  // A figure of a rig: its working, and a link to that very rig.
  const first = due.find(({ value }) => value.rig) as (typeof due)[number];
  await page.locator('.held-against .show').first().click();
  expect(await page.textContent('.opened .formula >> nth=1')).toContain('200 / 10 = 20');
  const href = (await page.getAttribute('.open-there a', 'href')) as string;
  expect(href).toBe(`/${linkOf(first.value.rig?.().pairing)}`);
  // All folds are alike: one of them is looked at, without the others in the way.
  await page.evaluate(() => {
    for (const fold of [...document.querySelectorAll('.checked-subject')].slice(1)) fold.remove();
  });
  await clean(page, { within: 'main' });
  await page.goto(address() + href);
  await page.waitForSelector('[data-figure=objectiveFocalLengthMm]');
  expect(await page.textContent('[data-figure=objectiveFocalLengthMm] .number')).toBe('20');
});

it('on a phone, in the dark, with one number wrong: that is said first and plainly', async () => {
  const page = await visit(VIEW, { ...PHONE, colorScheme: 'dark' }, '.strips', (to) =>
    to.route('**/assets/checked-view-*.js', async (route) => {
      const response = await route.fetch();
      const body = (await response.text()).replaceAll('909.09', '919.09');
      await route.fulfill({ response, body });
    }),
  );
  const says = await page.locator('.checked-head [aria-live] p').allTextContents();
  expect(says[0]).toMatch(/^One number does not agree on this machine/);
  expect(says[1]).toContain('Expected is 919.09 but what comes out is 909.0909 (subject)');
  expect(await page.textContent('main h2 >> nth=1')).toBe('What does not agree');
  expect(await page.locator('.bites .now em').first().textContent()).toContain('does not agree');
  expect(await page.locator('.strips .miss').count()).toBe(1);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await page.evaluate(() => document.querySelector('.checked-all')?.remove());
  await clean(page, { within: 'main', rules: ['color-contrast'] });
});
