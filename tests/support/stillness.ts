import type { Page } from 'playwright-core';

/** A visit over a slow line: 1.6 Mbit a second, each answer 150 ms away. */
const SLOW = { offline: false, downloadThroughput: 1.6e6 / 8, uploadThroughput: 0.75e6 / 8, latency: 150 };
/** How long nothing may have been fetched before the page counts as whole, ms. */
const QUIET = 1000;

export interface Shift {
  /** The browser's score: the part of the window that moved times how far it moved. */
  value: number;
  atMs: number;
  /** What moved, as its element and class. */
  what: string[];
}

/** Text, because what the runner makes of a function does not always run in a page. */
const WATCH = `
  window.shifts = [];
  const called = (node) => node ? (node.nodeName + ' ' + (node.getAttribute?.('class') ?? node.textContent?.slice(0, 30) ?? '')).trim() : 'gone';
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries())
      if (!entry.hadRecentInput)
        window.shifts.push({ value: entry.value, atMs: Math.round(entry.startTime), what: entry.sources.map((s) => called(s.node)) });
  }).observe({ type: 'layout-shift', buffered: true });
`;

/**
 * Everything that moved on a page by itself while it was being fetched with an empty cache over a slow line,
 * from its first paint until nothing has been fetched for a second.
 * @param page a page of a fresh context that has not been anywhere
 */
export async function shiftsOf(page: Page, address: string): Promise<Shift[]> {
  const line = await page.context().newCDPSession(page);
  await line.send('Network.enable');
  await line.send('Network.setCacheDisabled', { cacheDisabled: true });
  await line.send('Network.emulateNetworkConditions', SLOW);
  await page.addInitScript(WATCH);
  let last = Date.now();
  const busy = (): void => {
    last = Date.now();
  };
  page.on('request', busy).on('requestfinished', busy).on('requestfailed', busy);
  await page.goto(address);
  await page.waitForSelector('.sentence');
  while (Date.now() - last < QUIET) await page.waitForTimeout(100);
  return (await page.evaluate('window.shifts')) as Shift[];
}
