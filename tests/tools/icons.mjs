/**
 * The icons of the installed page, drawn from `web/mark.svg`: `node tests/tools/icons.mjs` after the mark
 * has changed. The one that a home screen may cut to a shape of its own keeps the mark in its middle.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { CHROMIUM_ARGS, findChromium } from './chromium.mjs';

const WEB = join(import.meta.dirname, '../../web');
const mark = readFileSync(join(WEB, 'mark.svg'), 'utf8');
const paper = mark.match(/<rect[^>]* fill="(#\w+)"/)[1];
/** Name, side in px, the mark's part of it. */
const ICONS = [
  ['icon-192.png', 192, 1],
  ['icon-512.png', 512, 1],
  ['icon-maskable-512.png', 512, 0.72],
];

const browser = await chromium.launch({ executablePath: findChromium(), args: CHROMIUM_ARGS });
const page = await browser.newPage();
for (const [name, side, part] of ICONS) {
  await page.setViewportSize({ width: side, height: side });
  await page.setContent(
    `<style>body{margin:0;height:100vh;display:grid;place-items:center;background:${paper}}svg{width:${100 * part}%}</style>${mark}`,
  );
  await page.screenshot({ path: join(WEB, 'public', name) });
}
await browser.close();
