import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { newKey } from '../../api/key.ts';
import { type Running, startServer } from '../../api/server.ts';
import { CHROMIUM_ARGS, findChromium } from '../tools/chromium.mjs';

/** A phone beside the rig: it reads the plan, writes only with the key, and loses nothing where it may not. */

const PHONE = { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true, reducedMotion: 'reduce' } as const;
const key = newKey();
let server: Running;
let browser: Browser;
let bench: string;

beforeAll(async () => {
  server = await startServer(0, { host: '127.0.0.1', names: ['bench.local'], key });
  // A name that is not loopback's, as another device would ask for it.
  const args = [...CHROMIUM_ARGS, '--host-resolver-rules=MAP bench.local 127.0.0.1'];
  browser = await chromium.launch({ executablePath: findChromium() as string, args });
  bench = `http://bench.local:${new URL(server.address).port}`;
}, 60_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

const parts = async (): Promise<number> =>
  ((await (await fetch(`${server.address}/api/parts`)).json()) as { drawer: { parts: number } }).drawer.parts;

it('shows the plan, keeps nothing without the key and loses nothing of it, and keeps it once the key has been brought', async () => {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  page.setDefaultTimeout(8_000);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(bench);
  await page.waitForSelector('#vary-caption', { state: 'attached' });
  expect(await page.textContent('.sentence')).toContain('At 10×');

  await page.goto(`${bench}/?view=drawer`);
  await page.fill('#put-in-relay', '5 D 58 mm');
  await page.keyboard.press('Enter');
  const name = page.locator('.slip').getByLabel('Name', { exact: true });
  await name.fill('The one on the rig');
  const keep = page.locator('.slip button:text-is("Keep")');
  await keep.click();
  const said = page.locator('.slip [role=status]');
  await said.filter({ hasText: 'Not kept' }).waitFor();
  expect(await said.textContent()).toBe(
    'Not kept: it comes from a device that may only read the drawer; what would do: opening the address with a key, which the server printed when it last started, once in this browser.',
  );
  expect(await name.inputValue()).toBe('The one on the rig');
  expect(await parts()).toBe(0);

  const other = await context.newPage();
  const refused = await other.goto(`${bench}/open?key=${newKey()}`);
  expect(refused?.status()).toBe(401);
  await other.goto(`${bench}/open?key=${key}`);
  await other.waitForSelector('.sentence');
  expect(other.url()).not.toContain(key);
  expect(await other.evaluate(() => document.cookie)).toBe('');
  await other.close();

  await keep.click();
  await said.filter({ hasText: /^Kept\.$/ }).waitFor();
  expect(await parts()).toBe(1);
  expect(errors).toEqual([]);

  // Another browser has no part in it.
  const stranger = await (await browser.newContext(PHONE)).newPage();
  await stranger.goto(`${bench}/?view=drawer`);
  const status = await stranger.evaluate(
    async () => (await fetch('/api/parts/the-one-on-the-rig', { method: 'DELETE', headers: { 'if-match': '"1"' } })).status,
  );
  expect(status).toBe(401);
  expect(await parts()).toBe(1);
}, 60_000);
