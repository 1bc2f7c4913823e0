import { gzipSync } from 'node:zlib';
import { type Browser, chromium } from 'playwright-core';
import { startServer } from '../../api/server.ts';
import { readPage } from '../../api/static.ts';
import { NO_DRAWER } from '../measure/no-drawer.ts';
import { shiftsOf } from '../support/stillness.ts';
import { CHROMIUM_ARGS, findChromium } from '../tools/chromium.mjs';
import { dragging } from './dragging.ts';
import { firstAnswer } from './first-answer.ts';

/** The scripts that the document names, gzip as the server packs them, bytes. */
async function firstScripts(address: string): Promise<number> {
  const html = await (await fetch(address)).text();
  const scripts = [...html.matchAll(/src="(\/assets\/[^"]+\.js)"/g)].map((match) => match[1]);
  const sizes = scripts.map(async (script) => gzipSync(await (await fetch(`${address}${script}`)).text()).length);
  return (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0);
}

/** What moved by itself on a slow visit, the browser's score, by the width of the window. */
async function shifts(browser: Browser, address: string): Promise<Record<string, number>> {
  const shifted: Record<string, number> = {};
  for (const viewport of [
    { width: 1280, height: 900 },
    { width: 390, height: 844 },
  ]) {
    const context = await browser.newContext({ viewport, serviceWorkers: 'block' });
    const found = await shiftsOf(await context.newPage(), address);
    shifted[`${viewport.width} px`] = found.reduce((sum, { value }) => sum + value, 0);
    await context.close();
  }
  return shifted;
}

/** The built page in Chromium; undefined where there is none. */
export async function page() {
  const executablePath = findChromium();
  if (!executablePath) return undefined;
  const server = await startServer(0, { host: '127.0.0.1', drawer: NO_DRAWER, page: readPage('dist/web') });
  const browser = await chromium.launch({ executablePath, args: CHROMIUM_ARGS });
  const answer = await firstAnswer(browser, server.address);
  const drag = await dragging(browser, server.address);
  const shifted = await shifts(browser, server.address);
  const firstScriptBytes = await firstScripts(server.address);
  await browser.close();
  await server.stop();
  return { firstAnswer: answer, dragging: drag, shifted, firstScriptBytes };
}
