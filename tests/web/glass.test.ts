import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { report } from '../../core/index.ts';
import { advised, BEHIND, WORKS, withGlass } from './glass-support.ts';
import { complaints, input, leave, linkOf, OPENING, pairingIn, pick, put, sentence, unfold, useBrowser, visit } from './support.ts';

/** The view of the glass as a person uses it. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

const VIEW = '?view=glass';
const RADIO = (words: string): string => `.radios label:has-text("${words}")`;
const READY = '#spacing-caption';

/** The sentence once the search for it is over. */
async function answer(page: Page): Promise<string> {
  await page.waitForFunction(
    () =>
      !document.querySelector('progress') && document.querySelector('.sentence:not(.stale)') && document.querySelector('#spacing-caption'),
  );
  return sentence(page);
}

it('opens by its link and from a field, keeps the pairing, and steps back, forward and over a reload', async () => {
  const page = await visit(linkOf({ ...OPENING, infinitySpaceMm: 75 }));
  expect(await page.getAttribute('nav a:has-text("Pairing")', 'aria-current')).toBe('page');
  const before = await page.evaluate(() => location.hash);
  await page.focus('nav a:has-text("The glass")');
  await page.keyboard.press('Enter');
  await page.waitForSelector('#glass-title');
  expect(await page.getAttribute('nav a:has-text("The glass")', 'aria-current')).toBe('page');
  expect(await page.evaluate(() => [location.search, location.hash, document.title])).toEqual([VIEW, before, 'The glass: Pupilwalk']);
  await put(page, '/infinitySpaceMm', '90');
  expect((await pairingIn(page)).infinitySpaceMm).toBe(90);
  await page.reload();
  await page.waitForSelector('#glass-title');
  expect(await page.inputValue(input('/infinitySpaceMm'))).toBe('90');
  await page.goBack();
  await page.waitForFunction((hash) => location.hash === hash, before);
  expect(await page.inputValue(input('/infinitySpaceMm'))).toBe('75');
  await page.goBack();
  await page.waitForSelector('#in-objective-na', { state: 'attached' });
  expect(await page.evaluate(() => [location.search, location.hash])).toEqual(['', before]);
  await page.goForward();
  await page.waitForSelector('#glass-title');
  await page.goBack();
  // What the Pairing view misses of the glass leads here too, to the very field.
  await page.click('text=give its glass');
  await page.waitForFunction(() => document.activeElement?.id === 'in-relay-glass');
  expect(await page.evaluate(() => location.search)).toBe(VIEW);
});

it('takes a glass as a person types it, says what to do, draws it, and turns it round', async () => {
  const page = await visit(`${VIEW}${linkOf(BEHIND)}`, {}, '#glass-title');
  await page.click(RADIO('surface by surface'));
  await put(page, '/relay/glass/radiiMm/0', '1000');
  await put(page, '/relay/glass/radiiMm/1', '-54');
  await put(page, '/relay/glass/thicknessesMm/0', '11');
  await page.click('text=Add a surface behind');
  await put(page, '/relay/glass/radiiMm/2', '−91');
  await put(page, '/relay/glass/thicknessesMm/1', '4');
  await put(page, '/relay/glass/glasses/1', 'N-SF5');
  expect((await pairingIn(page)).relay).toEqual(withGlass().relay);
  await page.waitForFunction(() => document.querySelectorAll('.section [data-glass]').length === 2);
  const told = await answer(page);
  const advice = advised(await pairingIn(page));
  expect(told).toBe(advice.sentence);
  expect(told).toMatch(/^Leave it weak side first, male thread toward the objective, and set it 85 mm /);
  expect(told).toContain('Strong side first the blur is 33.7 to 30.8 µm anywhere from 20 to 150 mm.');
  // The headline in the table: at 85 mm and at 20 mm, weak side first.
  await unfold(page);
  await page.waitForSelector('#spacing-caption ~ details td');
  const row = async (mm: string): Promise<string[]> => {
    const cells = page.locator('#spacing-caption ~ details tbody tr', { has: page.locator(`th:text-is("${mm}")`) }).locator('td');
    return cells.allTextContents();
  };
  expect(Number((await row('85'))[1])).toBeCloseTo(5.55, 1);
  expect((await row('20'))[1]).toBe('19.9');

  const thread = () => page.evaluate(() => document.querySelector('.section .thread')?.getBoundingClientRect().left ?? 0);
  const glass = () => page.evaluate(() => document.querySelector('.section .body')?.getBoundingClientRect().left ?? 0);
  expect(await thread()).toBeLessThan(await glass());
  await page.click(RADIO('turned round'));
  expect((await pairingIn(page)).relay.reversed).toBe(true);
  expect(await answer(page)).toMatch(/^Turn it round, weak side first, male thread toward the objective, and set it 85 mm /);
  expect(await thread()).toBeGreaterThan(await glass());
  expect(await page.textContent('#section-caption')).toMatch(/^Strong side first, male thread toward the camera\./);
  expect(await page.locator('.section text', { hasText: 'male thread 58 × 0.75' }).count()).toBe(1);
  // The spots of a stack are the smaller ones, and the caption says so in numbers.
  const worst = async (): Promise<number> => Number((await page.textContent('#spots-caption'))?.match(/ ([\d.]+) µm rms/)?.[1]);
  const frame = await worst();
  await page.click(RADIO('in a stack'));
  expect(await worst()).not.toBe(frame);
});

it('searches in the background, one search at a time, and stops when it is told to', async () => {
  // Pressed as soon as it stands there: on a fast machine the search would be done before a hand is, on a slow one too.
  const page = await visit(`${VIEW}${linkOf(BEHIND)}`, {}, 'text=Search once more', (fresh) =>
    fresh.addInitScript(() => {
      const watch = new MutationObserver(() => {
        const stop = [...document.querySelectorAll('button')].find((button) => button.textContent === 'Stop the search');
        if (!stop) return;
        watch.disconnect();
        stop.click();
      });
      watch.observe(document, { childList: true, subtree: true });
    }),
  );
  expect(await sentence(page)).toContain('The search was stopped');
  await expect.poll(() => page.workers().length, { timeout: 6_000 }).toBe(0);
  await page.click('text=Search once more');
  await page.waitForSelector('progress');
  // Another pairing ends the search that runs and begins its own.
  await put(page, '/infinitySpaceMm', '55');
  await page.waitForSelector('progress');
  await expect.poll(() => page.workers().length, { timeout: 6_000 }).toBeLessThanOrEqual(1);
  const told = await answer(page);
  expect(told).toContain('all 16 lenses of this class');
  expect(told).toContain('photograph the same corner both ways round');
  expect(page.workers().length).toBe(1);
});

describe('what is wrong', () => {
  it('is said at the very field, and the last answer stays', async () => {
    const page = await visit(`${VIEW}${linkOf(withGlass())}`, {}, READY);
    const told = await answer(page);
    const beside = async (path: string): Promise<string> => {
      expect(await page.getAttribute(input(path), 'aria-invalid')).toBe('true');
      return (await page.textContent(`#${await page.getAttribute(input(path), 'aria-describedby')}`)) ?? '';
    };
    await put(page, '/relay/glass/radiiMm/1', 'frog');
    expect(await beside('/relay/glass/radiiMm/1')).toContain('‘frog’ will not do: put in a radius');
    expect(await page.locator('[aria-invalid=true]').count()).toBe(1);
    expect(await sentence(page)).toBe(told);
    await put(page, '/relay/glass/radiiMm/1', '-54');
    await put(page, '/relay/glass/glasses/0', 'BK7x');
    expect(await beside('/relay/glass/glasses/0')).toContain('is no glass that is known here. What would do: N-BK7');
    await put(page, '/relay/glass/glasses/0', '1.5168');
    expect(await page.locator('[aria-invalid=true]').count()).toBe(0);
    expect((await pairingIn(page)).relay.glass).toMatchObject({ glasses: [1.5168, 'N-SF5'] });
    await put(page, '/relay/glass/radiiMm/0', 'flat');
    expect((await pairingIn(page)).relay.glass).toMatchObject({ radiiMm: ['plane', -54, -91] });
  });

  it('is said where the tracing cannot be fetched, and nothing is lost', async () => {
    const page = await visit(linkOf(OPENING));
    const said = await sentence(page);
    await page.route('**/glassworks-*.js', (route) => route.abort());
    await pick(page, 'relay', 'bent for the close-up job');
    await page.waitForSelector('text=could not be fetched');
    expect(await sentence(page)).toBe(said);
    // Nor is a link with glass answered by anything else.
    const link = linkOf(withGlass());
    await page.evaluate((hash) => {
      location.hash = hash;
    }, link);
    await page.waitForFunction(() => document.querySelector('.sentence')?.textContent?.includes('could not be fetched'));
    expect(await page.locator('#engraved-relay').count()).toBe(0);
    expect(await page.evaluate(() => location.hash)).toBe(link);
    await page.goBack();
    await page.waitForSelector('text=What traces the relay');
    await page.unroute('**/glassworks-*.js');
    complaints.splice(0);
    // What was picked is still there after the page is loaded again.
    await page.reload();
    await expect.poll(async () => (await pairingIn(page)).relay.glass).toBeDefined();
    expect(await page.locator('.sentence.stale').count()).toBe(0);
    expect(await sentence(page)).toBe(report(await pairingIn(page), WORKS).sentence);
  });

  it('is said where no worker runs, and the present place is worked out all the same', async () => {
    const page = await visit(linkOf(withGlass()));
    expect(await sentence(page)).toBe(report(withGlass(), WORKS).sentence);
    await page.evaluate(() => {
      Object.defineProperty(globalThis, 'Worker', { value: undefined });
    });
    await page.click('nav a:has-text("The glass")');
    await page.waitForSelector('text=does not run the search in the background');
    await page.waitForSelector('.section [data-glass]');
  });
});

it('lets the relay be taken by hand in the section, also where the view is the first that is opened', async () => {
  const page = await visit(`${VIEW}${linkOf(withGlass())}`, {}, READY);
  const relay = page.locator('[data-handle=relay]');
  await relay.scrollIntoViewIfNeeded();
  const [mark, stage] = [await relay.boundingBox(), await page.locator('.stage').first().boundingBox()];
  if (!mark || !stage) throw new Error('nothing to take hold of');
  const [x, y] = [mark.x + mark.width / 2, mark.y + mark.height / 2];
  expect(x > stage.x && x < stage.x + stage.width && y > stage.y && y < stage.y + stage.height).toBe(true);
  const before = Number(await relay.getAttribute('aria-valuenow'));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 30, y, { steps: 5 });
  await page.mouse.up();
  await page.waitForFunction((was) => Number(document.querySelector('[data-handle=relay]')?.getAttribute('aria-valuenow')) > was, before);
});
