import type { Page } from 'playwright-core';
import { afterEach, expect, it } from 'vitest';
import { type Asked, type Choices, choosing } from '../../core/choosing.ts';
import { type Objective, objectiveSchema, type Relay, relaySchema } from '../../core/index.ts';
import { startOf, type Wish, wishTo } from '../../web/state/wish.ts';
import { entriesOf } from '../../web/subject/entries.ts';
import { answerOf } from '../../web/subject/told.ts';
import { OBJECTIVES, PLAIN_RELAYS } from '../core/choose/catalogue.ts';
import { manyParts } from '../support/many-parts.ts';
import { clean } from './clean.ts';
import { complaints, leave, OPENING, pairingIn, useBrowser, visit } from './support.ts';

/** From the subject, as a person goes about it: a wish, the list, a reason, a pairing and back, a link, a search that is too long. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

interface Shelf {
  objectives: { id: string; part: Objective }[];
  relays: { id: string; part: Relay }[];
}
const FEW: Shelf = { objectives: OBJECTIVES.slice(0, 5), relays: PLAIN_RELAYS.slice(0, 3) };

/** The server answers these parts and the real cameras. */
const holding =
  ({ objectives, relays }: Shelf) =>
  (page: Page): Promise<unknown> =>
    page.route('**/api/parts', async (route) => {
      const all = (await (await route.fetch()).json()) as Record<string, unknown>;
      const flat = (entries: Shelf['objectives'] | Shelf['relays']) => entries.map(({ id, part }) => ({ id, ...part }));
      await route.fulfill({ json: { ...all, objectives: flat(objectives), relays: flat(relays) } });
    });

const known = new Map<string, Choices>();

/** What core finds for a wish, without the page. */
function expected(wish: Wish): Choices {
  const key = JSON.stringify(wish);
  const found = known.get(key) ?? foundFor(wish, FEW);
  known.set(key, found);
  return found;
}

function foundFor(wish: Wish, { objectives, relays }: Shelf): Choices {
  const { want, sensor = OPENING.sensor, infinitySpacesMm, sort, frontier } = wish;
  const asked: Asked = {
    want,
    sensor,
    infinitySpacesMm,
    sort,
    frontier,
    objectives: objectives.map(({ id, part }) => ({ id, part: objectiveSchema.parse(part) })),
    relays: relays.map(({ id, part }) => ({ id, part: relaySchema.parse(part) })),
    most: 24,
    eachPairOnce: true,
  };
  const steps = choosing(asked);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const answerIs = (page: Page, words: string) =>
  page.waitForFunction((w) => document.querySelector('.answer .sentence:not(.stale)')?.textContent === w, words);
const said = (choices: Choices, asks: number): string => answerOf({ ...choices, nearMisses: [] }, asks);
const titles = (page: Page, list = 'ol.chosen-list') => page.locator(`${list} h3`).allTextContents();
const titlesOf = (choices: Choices): string[] =>
  entriesOf(choices.choices)
    .slice(0, 12)
    .map(({ head: { pairing } }) => `${pairing.objective.name} with ${pairing.relay.name}`);
const blank = (label: string): string => `.wish input[aria-label="${label}"]`;
const leaveField = (page: Page) => page.evaluate(() => (document.activeElement as HTMLElement).blur());

it('answers a wish as it is put, keeps it in the link, and leads to a pairing and back', async () => {
  const page = await visit('?view=subject', {}, '.found:not(.stale)', holding(FEW));
  const start = startOf(OPENING);
  await answerIs(page, said(expected(start), 2));

  // Two wishes more: one in a blank that stands there, one put in by its words.
  await page.fill(blank('Finest detail told apart, in µm'), '2.5');
  await leaveField(page);
  await page.click('.further button:text-is("and room for a diffuser")');
  await page.waitForFunction(() => document.activeElement?.getAttribute('aria-label') === 'Depth of the diffuser, in mm');
  await page.keyboard.type('15');
  await page.keyboard.press('Enter');
  const wish: Wish = { ...start, want: { ...start.want, finestDetailUm: 2.5, lightingClearance: { depthMm: 15, minConeDeg: 0 } } };
  const found = expected(wish);
  expect(found.feasible).toBeGreaterThan(0);
  expect(found.nearMisses.length).toBeGreaterThan(0);
  await answerIs(page, said(found, 4));
  expect((await titles(page)).map((title) => title.replace(/ at [\d., or]+ mm$/, ''))).toEqual(titlesOf(found));
  expect(new URL(page.url()).searchParams.get('wish')).toBe(wishTo(wish));

  // Half a number says what is wrong and moves nothing.
  await page.fill(blank('Finest detail told apart, in µm'), '2.5 or so');
  await leaveField(page);
  await page.waitForSelector(`${blank('Finest detail told apart, in µm')}[aria-invalid=true]`);
  expect(await page.textContent('.wished .notice')).toContain('"2.5 or so" is no number');
  expect(await page.textContent('.answer .sentence')).toBe(said(found, 4));
  await page.fill(blank('Finest detail told apart, in µm'), '2.5');
  await leaveField(page);

  // Sorted otherwise.
  const sorted: Wish = { ...wish, sort: { by: 'totalLengthMm', first: 'least' } };
  await page.selectOption('.sorting select >> nth=0', 'totalLengthMm');
  const first = entriesOf(expected(sorted).choices)[0]?.head;
  const firstTitle = `${first?.pairing.objective.name} with ${first?.pairing.relay.name}`;
  await page.waitForFunction((title) => document.querySelector('.found:not(.stale) h3')?.textContent?.startsWith(title), firstTitle);

  // A near miss and its reason; what stands beside the name is what it misses.
  const near = found.nearMisses[0];
  const miss = page.locator('[aria-labelledby=almost-title] .chosen').first();
  await miss.locator('summary', { hasText: 'How each wish fares' }).click();
  expect(await miss.locator('tbody tr').count()).toBe(4);
  expect(await miss.locator('tbody th', { hasText: '☞' }).count()).toBe(near?.missing.length);
  await clean(page);

  // As the pairing, in one step, and back to the list.
  const list = page.url();
  await page.locator('ol.chosen-list .ways button:text-is("Open as the pairing")').first().click();
  await page.waitForSelector('.verdict');
  expect((await pairingIn(page)).relay).toEqual(first?.pairing.relay);
  expect(new URL(page.url()).searchParams.get('wish')).toBeNull();
  await page.goBack();
  await page.waitForFunction((title) => document.querySelector('.found:not(.stale) h3')?.textContent?.startsWith(title), firstTitle);

  // The link alone brings wish and list back.
  const text = new URL(list).searchParams.get('wish');
  const fresh = await visit(`?view=subject&wish=${text}${new URL(list).hash}`, {}, '.found:not(.stale)', holding(FEW));
  await answerIs(fresh, said(expected(sorted), 4));
  expect(await fresh.inputValue(blank('Depth of the diffuser, in mm'))).toBe('15');
  expect(await titles(fresh)).toEqual(await titles(page));
  // Taken out again: the way back has it still.
  await fresh.click('.wish button[aria-label="Leave out: diffuser"]');
  const without = { ...sorted, want: { ...start.want, finestDetailUm: 2.5 } };
  await answerIs(fresh, said(expected(without), 3));
  await fresh.goBack();
  await answerIs(fresh, said(expected(sorted), 4));
  // Three of the list abreast: each becomes the way there once it lies there.
  const lay = fresh.locator('ol.chosen-list .ways button:text-is("Lay it abreast")');
  const before = await lay.count();
  for (let i = 1; i <= 3; i++) {
    await lay.first().click();
    await expect.poll(() => lay.count()).toBe(before - i);
  }
  await fresh.locator('ol.chosen-list .ways button:text-is("See it abreast")').first().click();
  await expect.poll(() => fresh.locator('.entries .entry').count()).toBe(3);
}, 60_000);

it('says on a phone, by night, what excludes what, loosens it at a touch, and refuses a wish that is none', async () => {
  const start = startOf(OPENING);
  const wish: Wish = { ...start, want: { ...start.want, finestDetailUm: 0.2 } };
  const page = await visit(
    `?view=subject&wish=${wishTo(wish)}`,
    { viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
    '.loosen',
    holding(FEW),
  );
  await answerIs(page, said(expected(wish), 3));
  await clean(page, { rules: ['color-contrast'] });
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  expect(await page.textContent('main')).not.toMatch(/NaN|undefined|Infinity(?! space)/);
  await page.click('.loosen button');
  await page.waitForSelector('ol.chosen-list .chosen');
  expect(Number(await page.inputValue(blank('Finest detail told apart, in µm')))).toBeGreaterThan(0.2);

  // An address that holds no wish, come to by the history.
  await page.evaluate(() => {
    history.pushState(null, '', `?view=subject&wish=1.e30${location.hash}`);
    dispatchEvent(new PopStateEvent('popstate'));
  });
  await page.waitForSelector('.wished .notice');
  expect(await page.textContent('.wished .notice')).toContain('could not be read');
  await answerIs(page, said(expected(start), 2));
}, 60_000);

it('shows how far a long search has come, stops it at once, and takes it up again', async () => {
  // Glass to trace, so that no machine is done within the second after which progress shows.
  const glass = { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] };
  const many: Shelf = {
    objectives: manyParts(280).objectives.map(({ part }, i) => ({ id: `o${i}`, part })),
    relays: Array.from({ length: 280 }, (_, i) => ({
      id: `r${i}`,
      part: { kind: 'supplementary', clearApertureMm: 50 + i / 100, glass } as const,
    })),
  };
  const page = await visit('?view=subject', {}, '.progress', holding(many));
  expect(await page.textContent('.progress span')).toMatch(/^\d+ of 235200 pairings tried$/);
  await page.click('text="Stop the search"');
  await page.waitForFunction(() => document.querySelector('.answer .sentence')?.textContent === 'The search was stopped before it knew.');
  expect(await page.locator('.progress').count()).toBe(0);
  await page.click('text="Search once more"');
  // Another wish ends it: what comes belongs to the new one.
  await page.selectOption('.wish select[aria-label="Objectives"]', 'pairing');
  await page.selectOption('.wish select[aria-label="Relays"]', 'pairing');
  await page.waitForFunction(() => / 3 pairings give /.test(document.querySelector('.answer .sentence:not(.stale)')?.textContent ?? ''));
}, 60_000);
