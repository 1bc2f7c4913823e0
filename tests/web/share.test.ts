import { readFile } from 'node:fs/promises';
import { afterEach, expect, it } from 'vitest';
import { report } from '../../core/index.ts';
import { clean } from './clean.ts';
import { complaints, leave, linkOf, OPENING, pairingIn, put, sentence, unfold, useBrowser, visit } from './support.ts';

/** A pairing kept and brought back, the figures copied, and what to measure first. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

type Page = Awaited<ReturnType<typeof visit>>;
const text = (content: string | Buffer, name = 'pairing.json') => ({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
const choose = (page: Page, file: ReturnType<typeof text>) => page.setInputFiles('.keep input[type=file]', file);
const alert = (page: Page, words: string) =>
  page.waitForFunction((w) => document.querySelector('.keep [role=alert]')?.textContent?.includes(w), words);

it('saves a pairing, opens it again as one step of history, and leaves all as it is where a file holds none', async () => {
  const page = await visit('', { permissions: ['clipboard-read', 'clipboard-write'] });
  await unfold(page);
  await put(page, '/infinitySpaceMm', '77');
  const kept = await pairingIn(page);
  await page.click('button:text-is("File")');
  const [download] = await Promise.all([page.waitForEvent('download'), page.click('text="Save"')]);
  expect(download.suggestedFilename()).toBe('pupilwalk-10x-5D.json');
  const saved = await readFile(await download.path(), 'utf8');
  const plain = JSON.parse(saved) as { pupilwalk: number; pairing: unknown; report: unknown };
  expect(plain.pupilwalk).toBe(1);
  expect(plain.pairing).toEqual(kept);
  expect(plain.report).toEqual(JSON.parse(JSON.stringify(report(kept))));

  await put(page, '/infinitySpaceMm', '150');
  const steps = () => page.evaluate(() => history.length);
  const before = await steps();
  const standing = { said: await sentence(page), url: page.url() };
  const broken: [ReturnType<typeof text>, string][] = [
    [text(''), 'it is empty'],
    [text(saved.slice(0, 300)), 'cut short or damaged'],
    [text(Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0x00]), 'moss.jpg'), 'moss.jpg could not be opened: it is no JSON'],
    [text('{"anything": 1}'), 'was not saved from this page'],
    [text(saved.replace('"pupilwalk": 1', '"pupilwalk": 9')), 'later version'],
    [text(saved.replace('"infinitySpaceMm": 77', '"infinitySpaceMm": -77')), 'infinity space, shoulder to relay: −77 is too small'],
    [text(saved.replace('"infinitySpaceMm": 77', '"infinitySpaceMm": "<img src=x>"')), 'infinity space'],
    [text(saved + ' '.repeat(300_000)), 'larger than 256 kB'],
  ];
  for (const [file, words] of broken) {
    await choose(page, file);
    await alert(page, words);
    expect({ said: await sentence(page), url: page.url() }, words).toEqual(standing);
  }
  expect(await steps()).toBe(before);
  expect(await page.locator('img').count()).toBe(0);

  // The same file twice, once chosen and once let fall on the page.
  await choose(page, text(saved));
  await page.waitForFunction(() => document.querySelector('.keep [role=status]')?.textContent === 'Opened pairing.json.');
  expect(await page.locator('.keep [role=alert]').count()).toBe(0);
  expect(await pairingIn(page)).toEqual(kept);
  expect(await steps()).toBe(before + 1);
  expect(await sentence(page)).toBe(report(kept).sentence);
  await page.goBack();
  await page.waitForFunction((url) => location.href === url, standing.url);
  await page.waitForFunction((said) => document.querySelector('.sentence')?.textContent === said, standing.said);
  await choose(page, text(saved));
  await page.waitForFunction((hash) => location.hash === hash, linkOf(kept));
  await page.goBack();
  await page.waitForFunction((url) => location.href === url, standing.url);
  await page.evaluate((content) => {
    const carried = new DataTransfer();
    carried.items.add(new File([content], 'fallen.json'));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
  }, saved);
  await page.waitForFunction((hash) => location.hash === hash, linkOf(kept));

  // One with glass, before anything that traces glass has been asked for.
  const glass = { radiiMm: [120, -90, -400], thicknessesMm: [8, 3], glasses: ['N-BK7', 'N-SF5'] };
  const traced = { ...kept, relay: { kind: 'supplementary', glass } };
  await choose(page, text(JSON.stringify({ pupilwalk: 1, pairing: traced })));
  await page.waitForFunction((hash) => location.hash === hash, linkOf(traced));

  await page.goBack();
  await page.waitForFunction((hash) => location.hash === hash, linkOf(kept));
  await page.click('text=Copy the figures');
  await page.waitForFunction(() => document.querySelector('.keep')?.textContent?.includes('The figures are copied.'));
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toContain(report(kept).sentence);
  expect(copied).toContain('Magnification: 10× (9.52 to 10.53)');
  expect(copied.trim().split('\n').at(-1)).toBe(page.url());
});

it('keeps within two lines of a telephone, and shows the figures where the clipboard will not have them', async () => {
  const page = await visit('', { viewport: { width: 390, height: 844 }, colorScheme: 'dark' });
  await page.evaluate(() => {
    Object.defineProperty(navigator, 'clipboard', { value: { writeText: () => Promise.reject(new Error('no')) } });
  });
  const lines = await page.evaluate(() => [...document.querySelectorAll('.copy button')].map((b) => b.getBoundingClientRect().top));
  expect(new Set(lines).size).toBe(1);
  await page.click('button:text-is("File")');
  await page.click('text=Copy the figures');
  await page.waitForSelector('.keep textarea');
  expect(await page.inputValue('.keep textarea')).toContain(report(OPENING).sentence);
  await choose(page, text('{'));
  await alert(page, 'What stood here stays.');
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  await clean(page, { within: '.head' });
});

it('leads from the guesses to what to measure first, and tells a changed answer once to those who hear it', async () => {
  const page = await visit('', { viewport: { width: 390, height: 844 } });
  expect(await page.textContent('.rests')).toBe(
    "Rests on 5 guesses; the objective's field number (22 ± 2 mm) matters most: find it out in two minutes.",
  );
  await page.focus('.rests [aria-expanded=false]');
  await page.keyboard.press('Enter');
  await page.waitForSelector('.measure li');
  const told = (await page.textContent('.measure'))?.replaceAll('\u00a0', ' ') ?? '';
  const diagonal = Math.hypot(23.5, 15.6);
  const covering = (field: number) => String(Math.round((diagonal * 200) / field));
  expect(told).toContain(`Between 20 and 24 mm the shortest relay that covers goes from ${covering(20)} to ${covering(24)} mm.`);
  expect(told).toContain('engraved on its eyepiece');
  await clean(page, { within: '.answer' });
  await page.click('.measure li:first-child >> text=Put in what you find');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('in-objective-fieldNumberMm');

  // A number that was looked up is no guess any more: the next one comes first.
  await unfold(page);
  await page.selectOption('select[aria-label="Where Field number comes from"]', 'measured');
  await page.waitForFunction(() => document.querySelector('.measure .what')?.textContent?.includes("the close-up lens's true power"));

  // While a hand holds the focal length one line stands over the page, and nothing is read aloud until it has let go.
  await page.waitForFunction(() => document.querySelector('.spoken')?.textContent);
  await page.evaluate(() => {
    const heard: string[] = [];
    Object.assign(window, { heard });
    const spoken = document.querySelector('.spoken') as Element;
    new MutationObserver(() => heard.push(spoken.textContent ?? '')).observe(spoken, {
      childList: true,
      characterData: true,
      subtree: true,
    });
  });
  const heard = () => page.evaluate(() => (window as unknown as { heard: string[] }).heard.filter(Boolean));
  const handle = page.locator('.handle[data-handle=focal]');
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  if (!box) throw new Error('no handle');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 12; i++) await page.mouse.move(x + 8 * i, y);
  await page.waitForSelector('.brief');
  const line = await page.evaluate(() => {
    const brief = document.querySelector('.brief') as HTMLElement;
    return {
      text: brief.textContent,
      top: brief.getBoundingClientRect().top,
      hidden: brief.getAttribute('aria-hidden'),
      cut: brief.scrollWidth > brief.clientWidth,
    };
  });
  expect(line).toMatchObject({
    text: expect.stringMatching(/^[\d.]+×: (covers|keep|undecided|misses)/),
    top: 0,
    hidden: 'true',
    cut: false,
  });
  await page.waitForTimeout(700);
  expect(await heard()).toEqual([]);
  await page.mouse.up();
  await page.waitForFunction(() => (window as unknown as { heard: string[] }).heard.some(Boolean));
  expect(await page.locator('.brief').count()).toBe(0);
  await page.waitForTimeout(700);
  expect(await heard()).toEqual([await sentence(page)]);
}, 60_000);
