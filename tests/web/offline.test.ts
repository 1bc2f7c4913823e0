import { afterEach, expect, it } from 'vitest';
import { startServer } from '../../api/server.ts';
import { builtPage, type Page as Files, readPage } from '../../api/static.ts';
import { address, blank, complaints, go, input, leave, linkOf, OPENING, sentence, useBrowser } from './support.ts';

/** Opened once, the page is at hand without the server, and a newer one takes its place in time. */

useBrowser();
afterEach(leave);

/** Browsers put off changing workers while they are busy. */
const PATIENT = { timeout: 15_000 };

type Page = Awaited<ReturnType<typeof blank>>;

/** Opens the page and waits until the worker has what it needs and answers for it. */
async function opened(page: Page, at: string): Promise<void> {
  await page.goto(at);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (!navigator.serviceWorker.controller) await new Promise((done) => setTimeout(done, 20));
  });
}

const listed = (page: Page, list: string): Promise<number> =>
  page.evaluate(
    (from) =>
      fetch(from).then(
        async (answer) => Object.values((await answer.json()) as object).flat().length,
        () => -1,
      ),
    list,
  );

it('answers, draws and shows the glass offline, and lists what it last saw', async () => {
  const page = await blank({ serviceWorkers: 'allow' });
  await opened(page, address());
  await page.context().setOffline(true);
  expect(await listed(page, '/api/figures')).toBe(-1);

  await page.goto(`${address()}/${linkOf({ ...OPENING, infinitySpaceMm: 75 })}`);
  await page.reload();
  await page.waitForSelector('.canvas canvas[width]');
  const before = await sentence(page);
  await go(page, linkOf({ ...OPENING, relay: { kind: 'tube-lens', focalLengthMm: 400 } }));
  expect(await sentence(page)).not.toBe(before);
  expect(await listed(page, '/api/parts')).toBeGreaterThan(30);
  expect(await listed(page, '/api/glasses')).toBeGreaterThan(30);

  await page.goto(`${address()}/?view=glass${linkOf({ ...OPENING, infinitySpaceMm: 75 })}`);
  await page.waitForSelector('#glass-title');
  expect(await page.inputValue(input('/infinitySpaceMm'))).toBe('75');
  // What is the user's own is shown as what it is: a copy.
  await page.goto(`${address()}/?view=drawer`);
  await page.waitForSelector('text=this is the drawer as it was last seen');
  expect(complaints.splice(0).filter((told) => !told.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([]);
});

/** The files with another title, and another version in the worker. */
function newer(files: Files): Files {
  const changed = (name: string, from: RegExp, to: string) => {
    const file = files.get(name);
    if (!file) throw new Error(`no ${name}`);
    const text = new TextDecoder().decode(file.bytes);
    expect(text).toMatch(from);
    return [name, { ...file, bytes: new TextEncoder().encode(text.replace(from, to)), gzip: undefined, tag: '"newer"' }] as const;
  };
  return new Map([
    ...files,
    changed('/', /<meta name="description"/, '<meta name="newer" /><meta name="description"'),
    changed('/sw.js', /VERSION = '[\w-]+'/, "VERSION = 'newer'"),
  ]);
}

it('keeps the files it was opened with; the next visit has the new ones, and nothing of the old is left', async () => {
  const files = readPage(builtPage());
  const page = await blank({ serviceWorkers: 'allow' });
  const context = page.context();
  const first = await startServer(0, { host: '127.0.0.1', page: files });
  await opened(page, first.address);
  await first.stop();
  const second = await startServer(Number(new URL(first.address).port), { host: '127.0.0.1', page: newer(files) });
  const isNewer = (of: Page): Promise<number> => of.locator('meta[name=newer]').count();
  const kept = (of: Page): Promise<string[]> => of.evaluate(() => caches.keys());

  await page.reload();
  await page.evaluate(async () => {
    const known = await navigator.serviceWorker.getRegistration();
    await known?.update();
    while (!known?.waiting) await new Promise((done) => setTimeout(done, 20));
  });
  await page.reload();
  expect(await isNewer(page)).toBe(0);
  expect((await kept(page)).filter((name) => !name.endsWith('lists'))).toHaveLength(2);

  // The browser changes workers when the last page of the old one has gone.
  await page.goto('about:blank');
  await expect
    .poll(async () => {
      await page.goto(first.address);
      const found = await isNewer(page);
      if (found === 0) await page.goto('about:blank');
      return found;
    }, PATIENT)
    .toBe(1);
  await expect.poll(() => kept(page), PATIENT).toEqual(['pupilwalk lists', 'pupilwalk newer']);
  await context.close();
  await second.stop();
}, 60_000);
