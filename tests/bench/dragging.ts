import type { Browser, Page } from 'playwright-core';
import opening from '../../data/opening.json' with { type: 'json' };
import relays from '../../data/relays.json' with { type: 'json' };

/**
 * The built page under a hand that drags: from each movement's event (its own time stamp, when the browser
 * got it) to the end of the frame that shows its consequences: handler, all that is worked out and rendered,
 * style, layout and paint on the page's side. What the screen's compositor does after it is not in it, nor
 * the way from the hand to the browser. Movements that come within one frame end with it.
 */
const STEPS = 120;
const STEP_MS = 1000 / 60;

/** Text, because what runs these files does not leave functions fit for a page. A message is taken up after the frame is painted. */
const WATCH = `
  window.frames_ = [];
  addEventListener('pointermove', (event) => {
    if (event.buttons === 0) return;
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => window.frames_.push([event.timeStamp, performance.now()]);
      port2.postMessage(0);
    });
  }, { capture: true });
`;

interface Dragged {
  median: number;
  p95: number;
  worst: number;
  /** Movements that were seen, and frames that they ended in. */
  moves: number;
  frames: number;
}

/** Drags a handle there and back over most of what it can do, ms from event to painted frame. */
async function dragged(page: Page, handle: string, byPx: number): Promise<Dragged> {
  const mark = page.locator(handle);
  await mark.scrollIntoViewIfNeeded();
  const box = await mark.boundingBox();
  if (!box) throw new Error(`${handle} is not on the page`);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const before = await mark.getAttribute('aria-valuenow');
  await page.mouse.move(x, y);
  await page.mouse.down();
  const began = performance.now();
  for (let i = 1; i <= STEPS; i++) {
    await page.mouse.move(x + byPx * Math.sin((i / STEPS) * 1.5 * Math.PI), y);
    const early = began + i * STEP_MS - performance.now();
    if (early > 0) await new Promise((done) => setTimeout(done, early));
  }
  await page.mouse.up();
  await page.waitForTimeout(300);
  if ((await mark.getAttribute('aria-valuenow')) === before) throw new Error(`${handle} did not move`);
  const seen = (await page.evaluate('window.frames_.splice(0)')) as [number, number][];
  const times = seen.map(([from, to]) => to - from).toSorted((a, b) => a - b);
  const at = (share: number): number => Number((times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? 0).toFixed(1));
  // Messages of one frame follow each other within a fraction of a millisecond.
  const ends = seen.map(([, to]) => to);
  const frames = ends.filter((to, i) => i === 0 || to - (ends[i - 1] as number) > 2).length;
  return { median: at(0.5), p95: at(0.95), worst: at(1), moves: times.length, frames };
}

const linkOf = (pairing: unknown): string => `#1.${Buffer.from(JSON.stringify(pairing)).toString('base64url')}`;

const glassed = relays.parts.find(({ id }) => id === 'close-up-5d-58-glass')?.part;
const PAIRINGS = { 'the opening example': opening.pairing, 'a relay with glass': { ...opening.pairing, relay: glassed } };
const WINDOWS = { wide: { width: 1280, height: 900 }, phone: { width: 390, height: 844 } };
const HANDLES = ['relay', 'focal'];
/** The views that are dragged in, and what shows that each stands. */
const VIEWS = { '': '#vary-caption', '?view=glass': '#spacing-caption' };

async function drags(browser: Browser, address: string): Promise<Record<string, Dragged>> {
  const all: Record<string, Dragged> = {};
  for (const [window, viewport] of Object.entries(WINDOWS)) {
    const page = await browser.newPage({ viewport, reducedMotion: 'reduce', serviceWorkers: 'block' });
    await page.addInitScript(WATCH);
    for (const [pairing, of] of Object.entries(PAIRINGS))
      for (const [view, stands] of Object.entries(VIEWS)) {
        // Where nothing is known of the glass that view has nothing to drag.
        if (view && !('glass' in (of.relay ?? {}))) continue;
        await page.goto('about:blank');
        await page.goto(`${address}/${view}${linkOf(of)}`);
        await page.waitForSelector(stands, { state: 'attached', timeout: 60_000 });
        for (const name of HANDLES) {
          const handle = `[data-handle="${name}"]`;
          // What is known by its glass has no focal length to be moved.
          if ((await page.locator(handle).count()) === 0) continue;
          all[[name, view && 'in section', pairing, window].filter(Boolean).join(', ')] = await dragged(page, handle, viewport.width / 12);
        }
      }
    await page.close();
  }
  return all;
}

/** A page with one square that follows the pointer and nothing else: what browser, driver and machine cost by themselves. */
const BARE = `<!doctype html><html lang="en"><title>bare</title>
<div data-handle="relay" aria-valuenow="0" style="position:absolute;left:100px;top:100px;width:44px;height:44px;background:#777"></div>
<script>
  const square = document.querySelector('div');
  addEventListener('pointermove', (event) => {
    if (event.buttons === 0) return;
    square.style.left = event.clientX - 22 + 'px';
    square.setAttribute('aria-valuenow', event.clientX);
  });
</script></html>`;

async function bareDrag(browser: Browser): Promise<Dragged> {
  const page = await browser.newPage({ viewport: WINDOWS.wide, reducedMotion: 'reduce' });
  await page.addInitScript(WATCH);
  await page.goto(`data:text/html,${encodeURIComponent(BARE)}`);
  const found = await dragged(page, '[data-handle="relay"]', WINDOWS.wide.width / 12);
  await page.close();
  return found;
}

/** Drags of the built page behind `address`, each in its own window and view, and of the bare one; ms. */
export async function dragging(browser: Browser, address: string) {
  const bare = await bareDrag(browser);
  const all = await drags(browser, address);
  const p95 = Math.max(...Object.values(all).map((one) => one.p95));
  return { all, bare, worstP95Ms: p95, worstP95OfBare: p95 / bare.p95 };
}
