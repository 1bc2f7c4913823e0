import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { type Running, startServer } from '../../api/server.ts';
import { type Pairing, pairingSchema } from '../../core/index.ts';
import opening from '../../data/opening.json';
import { CHROMIUM_ARGS, findChromium } from '../tools/chromium.mjs';
import { withPlainSpaces } from './plain-spaces.ts';

/** The real page from the real server in a real browser: one of each for a file of tests. */

export const OPENING = pairingSchema.parse(opening.pairing);

let server: Running;
let browser: Browser;
const open: Page[] = [];

export function useBrowser(): void {
  beforeAll(async () => {
    const executablePath = findChromium();
    if (!executablePath) throw new Error('No Chromium found: install one (Debian: apt-get install chromium) or set CHROMIUM_PATH.');
    server = await startServer(0, { host: '127.0.0.1' });
    browser = await chromium.launch({ executablePath, args: CHROMIUM_ARGS });
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    // Files of tests share this module.
    contexts.clear();
    complaints.length = 0;
    await server?.stop();
  });
}

export const address = (): string => server.address;

/** `#1.` and base64url of the JSON, written anew here. */
export const linkOf = (pairing: unknown): string => `#1.${Buffer.from(JSON.stringify(pairing)).toString('base64url')}`;

/** The pairing in a page's address, read anew here. */
export async function pairingIn(page: Page): Promise<Pairing> {
  const hash = await page.evaluate(() => location.hash);
  return JSON.parse(Buffer.from(hash.replace('#1.', ''), 'base64url').toString('utf8')) as Pairing;
}

/** Everything that a page complained of; a test that ends with any has failed. */
export const complaints: string[] = [];

/** What a worker asks for is seen by no route of a test, and what it keeps would outlive the visit: there is none unless asked for. */
const USUAL = { viewport: { width: 1280, height: 900 }, reducedMotion: 'reduce', serviceWorkers: 'block' } as const;

/** Visits of one kind share a context, and with it the browser's caches: the page keeps nothing but its address. */
const contexts = new Map<string, BrowserContext>();

async function watched(context: BrowserContext): Promise<Page> {
  const page = await withPlainSpaces(await context.newPage());
  open.push(page);
  page.setDefaultTimeout(8_000);
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  return page;
}

/** A page that has not been anywhere, in a browser that knows nothing yet. */
export const blank = async (options: BrowserContextOptions = {}): Promise<Page> =>
  watched(await browser.newContext({ ...USUAL, ...options }));

async function contextFor(options: BrowserContextOptions): Promise<BrowserContext> {
  const key = JSON.stringify(options);
  const known = contexts.get(key);
  if (known) return known;
  const fresh = await browser.newContext({ ...USUAL, ...options });
  contexts.set(key, fresh);
  return fresh;
}

/**
 * @param ready what is waited for: by default that the Pairing view stands whole
 * @param prepare done to the page before it goes there
 */
export async function visit(
  hash = '',
  options: BrowserContextOptions = {},
  ready = '#vary-caption',
  prepare: (page: Page) => Promise<unknown> = async () => {},
): Promise<Page> {
  const context = await contextFor(options);
  const page = await watched(context);
  await prepare(page);
  await page.goto(`${server.address}/${hash}`);
  await page.waitForSelector(ready, { state: 'attached' });
  return page;
}

export async function leave(): Promise<void> {
  await Promise.all(open.splice(0).map((page) => page.close()));
}

export const sentence = async (page: Page): Promise<string> => (await page.textContent('.sentence')) ?? '';

/** Opens every fold, so that every input is on the page. */
export const unfold = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });

/** Goes to another link on a page that is open, as one who follows it there. */
export async function go(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
  await page.waitForFunction(() => history.state !== null);
}

export const input = (path: string): string => `#in${path.replaceAll('/', '-')}`;

/** Types into an input as a person does, opening the folds that hide it, and leaves it. */
export async function put(page: Page, path: string, text: string): Promise<void> {
  await page.locator(input(path)).evaluate((element) => {
    for (let fold = element.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) fold.open = true;
  });
  await page.fill(input(path), text);
  await page.locator(input(path)).blur();
}

/** Takes a part from the list under its line, by a piece of its name. */
export async function pick(page: Page, line: 'objective' | 'relay' | 'sensor', name: string): Promise<void> {
  await page.click(`.engraved:has(#engraved-${line}) .marker`);
  await page.locator(`#engraved-${line}-list [role=option]`, { hasText: name }).first().click();
}
