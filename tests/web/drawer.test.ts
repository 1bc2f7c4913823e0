import { afterEach, expect, it } from 'vitest';
import { clean } from './clean.ts';
import { address, complaints, leave, OPENING, pairingIn, useBrowser, visit } from './support.ts';

/** The drawer as a person uses it: a part of one's own measured, used, kept, taken out and put back, changed in two tabs. */

useBrowser();
afterEach(async () => {
  await leave();
  // Every refusal that is asked for here shows in the browser's own list.
  expect(complaints.splice(0).filter((told) => !/status of 4(04|12)|ERR_FAILED/.test(told))).toEqual([]);
});

type Page = Awaited<ReturnType<typeof visit>>;

const DRAWER = '?view=drawer';
const open = (options = {}): Promise<Page> => visit(DRAWER, options, '#own-my-close-up, .own .put-in');
const slip = (page: Page, label: string) => page.locator('.slip').getByLabel(label, { exact: true });
const press = (page: Page, words: string) => page.click(`.slip button:text-is("${words}")`);
const said = (page: Page, words: string) =>
  page.waitForFunction((w) => [...document.querySelectorAll('.slip [role=status]')].some((p) => p.textContent?.includes(w)), words);
const own = async (shelf = 'relays'): Promise<Record<string, unknown>[]> => {
  const parts = (await (await fetch(`${address()}/api/parts`)).json()) as Record<string, { own?: object }[]>;
  return parts[shelf]?.filter((part) => part.own) as Record<string, unknown>[];
};
const magnification = (page: Page): Promise<string> => page.locator('[data-figure=systemMagnification] .number').textContent().then(String);
/** How far its low and its high are apart. */
async function spread(page: Page): Promise<number> {
  const told = await page.locator('[data-figure=systemMagnification]').textContent();
  const [, low, high] = told?.match(/([\d.]+) to ([\d.]+)/) ?? [];
  return Number(high) - Number(low);
}
const width = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

it('keeps a measured relay beside what is engraved, gives the pairing its ±, and has it after a reload; out and back', async () => {
  const page = await open();
  expect(await page.textContent('.drawer-says')).toContain('drawer.json');
  await clean(page);
  await page.fill('#put-in-relay', '5 D 58 mm');
  await page.keyboard.press('Enter');
  expect(await slip(page, 'Power').inputValue()).toBe('5');

  // What is wrong is said at its input, and the button that was pressed stays where it was.
  await slip(page, 'Name').fill('My close-up');
  await slip(page, 'Focal length, as set').fill('frog');
  await press(page, 'Keep');
  await said(page, 'Not kept: one thing has to be put right first.');
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-invalid'))).toBe('true');
  expect(await own()).toEqual([]);
  await slip(page, 'Focal length, as set').fill('196');
  await slip(page, '± of Focal length, as set, in mm').fill('2');
  await slip(page, 'Where Focal length, as set comes from').selectOption('measured');
  await clean(page, { within: '.slip' });
  await press(page, 'Keep');
  await page.waitForSelector('#own-my-close-up[aria-expanded=true]');
  await said(page, 'Kept.');
  const measured = { value: 196, plusMinus: 2, origin: 'measured' };
  expect(await own()).toMatchObject([{ id: 'my-close-up', powerDioptre: 5, focalLengthMm: measured, own: { owned: true, version: 1 } }]);
  expect(await page.textContent('.printed')).toContain('5 D 58 mmmeasured: focal length, as set 196 ± 2 mm');

  // In the pairing: its magnification is known as closely as it was measured, not as loosely as dioptres are engraved.
  await press(page, 'Use in the pairing');
  await page.waitForSelector('[data-figure=systemMagnification]');
  expect((await pairingIn(page)).relay).toEqual({
    name: 'My close-up',
    kind: 'supplementary',
    powerDioptre: 5,
    maleThread: '58 x 0.75',
    focalLengthMm: measured,
  });
  expect(await magnification(page)).toBe('9.8');
  expect(await spread(page)).toBeCloseTo(0.2, 9);
  await page.goBack();
  await page.goBack();
  await page.waitForFunction(() => location.search === '?view=drawer');
  expect((await pairingIn(page)).relay).toEqual(OPENING.relay);
  await page.click('.views >> text=Pairing');
  await page.waitForSelector('[data-figure=systemMagnification]');
  expect(await spread(page)).toBeGreaterThan(0.9);
  await page.click('.views >> text=The drawer');

  await page.reload();
  await page.click('#own-my-close-up');
  expect(await slip(page, 'Focal length, as set').inputValue()).toBe('196');
  expect(await slip(page, 'Where Focal length, as set comes from').inputValue()).toBe('measured');

  await press(page, 'Take out');
  await page.waitForSelector('.taken-out');
  await expect.poll(own).toEqual([]);
  // The cursor is on the way back.
  await page.waitForFunction(() => document.activeElement?.textContent?.startsWith('Put back'));
  await page.keyboard.press('Enter');
  await page.waitForSelector('.printed #own-my-close-up');
  expect(await own()).toMatchObject([{ id: 'my-close-up', focalLengthMm: measured }]);

  // Its own come first where a part is picked.
  await page.click('.views >> text=Pairing');
  await page.click('.engraved:has(#engraved-relay) .marker');
  const first = page.locator('#engraved-relay-list [role=group]').first();
  expect(await first.textContent()).toBe('YoursMy close-up5 D 58 mm');
}, 60_000);

it('changed in two tabs loses nothing silently; narrow and dark, files, no server', async () => {
  const page = await open({ viewport: { width: 390, height: 844 }, colorScheme: 'dark' });
  const other = await open({ viewport: { width: 390, height: 844 }, colorScheme: 'dark' });
  for (const tab of [page, other]) await tab.click('#own-my-close-up');
  await slip(other, 'Price').fill('45');
  await press(other, 'Keep');
  await said(other, 'Kept.');
  await slip(page, 'Notes').fill('a step ring is glued on');
  await press(page, 'Keep');
  await page.waitForSelector('.meanwhile');
  const rows = await page.locator('.meanwhile tbody tr').allTextContents();
  expect(rows).toEqual(['Pricenothing45', 'Notesa step ring is glued onnothing']);
  await clean(page, { within: '.slip' });
  expect(await width(page)).toBe(0);
  await press(page, 'Keep mine');
  await said(page, 'Kept.');
  expect((await own())[0]?.own).toEqual({ owned: true, notes: 'a step ring is glued on', version: expect.any(Number) });

  // The other tab, where nothing is typed, follows when it is turned to.
  await other.evaluate(() => dispatchEvent(new Event('focus')));
  await expect.poll(() => slip(other, 'Notes').inputValue()).toBe('a step ring is glued on');

  // Taken out there while it is typed on here: it can lie here again, with what was typed.
  await slip(page, 'Notes').fill('two rings');
  await press(other, 'Take out');
  await other.waitForSelector('.taken-out');
  await press(page, 'Keep');
  await page.waitForSelector('.meanwhile >> text=taken out elsewhere');
  await press(page, 'Keep mine');
  await said(page, 'Kept.');
  expect((await own()).map((part) => (part.own as { notes?: string }).notes)).toEqual(['two rings']);

  // The pairing's own objective, once though pressed twice; and a second one of a part.
  await page.locator('text=Keep the objective of the pairing').evaluate((button: HTMLElement) => {
    button.click();
    button.click();
  });
  await page.waitForSelector('.own:has(#put-in-objective) >> text=It lies here already');
  expect(await own('objectives')).toHaveLength(1);
  await press(page, 'Duplicate');
  expect(await page.locator('.loose').getByLabel('Name', { exact: true }).inputValue()).toBe('Plan achromat 10x/0.25 (2)');
  await page.click('.loose button:text-is("Let it go")');

  // A file: good rows come in, a bad one is told by its place, one that differs waits for a word.
  const saved = JSON.parse(await (await fetch(`${address()}/api/parts/drawer.json`)).text()) as { parts: { price?: number }[] };
  const [mine] = saved.parts;
  saved.parts = [
    { ...mine, price: 50 },
    { ...mine, id: 'second', part: { ...(mine as { part: object }).part, name: 'Second' } } as object,
    { kind: 'relay' } as object,
  ];
  const file = { name: 'drawer.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(saved)) };
  await page.setInputFiles('.drawer-file input[type=file]', file);
  await page.waitForSelector('.lines-told li');
  const told = await page.textContent('.drawer-file [role=status]');
  expect(told).toContain('drawer.json: 1 put in and 2 left out.');
  expect(told).toContain('One part lies here with other contents');
  expect(told).toContain('Part 3:');
  await page.click('text=Put the file’s in its place');
  await expect.poll(async () => (await own()).map((part) => (part.own as { price?: number }).price)).toEqual([50, undefined]);
  await page.waitForSelector('#own-second');
  await clean(page);
  expect(await width(page)).toBe(0);

  // Without the server what is typed stays, and is kept when it is there again.
  await page.click('#own-second');
  const last = page.locator('.slip').last();
  await last.getByLabel('Name', { exact: true }).fill('Third');
  await page.route('**/api/parts/**', (route) => route.abort());
  await last.locator('button:text-is("Keep")').click();
  await said(page, 'The server does not answer');
  expect(await last.getByLabel('Name', { exact: true }).inputValue()).toBe('Third');
  await page.unroute('**/api/parts/**');
  await last.locator('button:text-is("Keep")').click();
  await page.waitForSelector('.printed >> text=Third');
}, 60_000);
