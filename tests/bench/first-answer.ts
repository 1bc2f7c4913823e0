import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser } from 'playwright-core';
import { median } from '../measure/processes.ts';

/**
 * From the start of a visit with an empty cache to the first content on the screen, which is the answer; against a
 * page of one sentence without script or style, in the same browser, by turns.
 */

const VISITS = 7;
const BARE =
  '<!doctype html><html lang="en"><title>bare</title><p class="sentence">At 10× the picture is covered to the corners.</p></html>';

async function firstPaint(browser: Browser, address: string): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(address);
  await page.waitForSelector('.sentence');
  const paint = await page.waitForFunction("performance.getEntriesByName('first-contentful-paint')[0]?.startTime");
  const ms = Number(await paint.jsonValue());
  await context.close();
  return ms;
}

export async function firstAnswer(browser: Browser, address: string) {
  const bare = createServer((_, answer) => answer.setHeader('content-type', 'text/html; charset=utf-8').end(BARE));
  await new Promise<void>((done) => bare.listen(0, '127.0.0.1', done));
  const plain = `http://127.0.0.1:${(bare.address() as AddressInfo).port}/`;
  const visits = [];
  for (let i = 0; i <= VISITS; i++) visits.push([await firstPaint(browser, address), await firstPaint(browser, plain)] as const);
  bare.close();
  const counted = visits.slice(1);
  return {
    medianMs: median(counted.map(([own]) => own)),
    worstMs: Math.max(...counted.map(([own]) => own)),
    bareMs: median(counted.map(([, other]) => other)),
    ratio: median(counted.map(([own, other]) => own / other)),
  };
}
