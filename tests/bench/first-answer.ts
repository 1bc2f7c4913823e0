import { chromium } from 'playwright-core';
import { startServer } from '../../api/server.ts';
import { CHROMIUM_ARGS, findChromium } from '../tools/chromium.mjs';
import { NO_DRAWER } from './no-drawer.ts';

/**
 * Milliseconds from the start of a visit to the first content on the screen, which is the answer, of each
 * of some visits with an empty cache; undefined where there is no Chromium. The page must be built.
 */
export async function firstAnswers(visits = 7): Promise<number[] | undefined> {
  const executablePath = findChromium();
  if (!executablePath) return undefined;
  const server = await startServer(0, { host: '127.0.0.1', drawer: NO_DRAWER });
  const browser = await chromium.launch({ executablePath, args: CHROMIUM_ARGS });
  const times: number[] = [];
  for (let i = 0; i < visits; i++) {
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    const page = await context.newPage();
    await page.goto(server.address);
    await page.waitForSelector('.sentence');
    const paint = await page.waitForFunction("performance.getEntriesByName('first-contentful-paint')[0]?.startTime");
    times.push(Number(await paint.jsonValue()));
    await context.close();
  }
  await browser.close();
  await server.stop();
  return times.toSorted((a, b) => a - b);
}
