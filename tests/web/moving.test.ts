import { afterEach, expect, it } from 'vitest';
import { type Pairing, report } from '../../core/index.ts';
import { complaints, leave, linkOf, OPENING, pairingIn, sentence, useBrowser, visit } from './support.ts';

/** The light path moved by hand, by finger and by keys, as a person does. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

type Page = Awaited<ReturnType<typeof visit>>;

/** A rim narrow enough for the infinity space to matter. */
const NARROW: Pairing = {
  ...OPENING,
  relay: { ...OPENING.relay, clearApertureMm: 22 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 20,
};

const RELAY = '[data-handle=relay]';

const middleOf = async (page: Page, handle: string): Promise<{ x: number; y: number }> => {
  const box = await page.locator(handle).boundingBox();
  if (!box) throw new Error(`${handle} is not on the screen`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

const reads = async (page: Page, handle: string): Promise<number> =>
  Number(await page.locator(handle).first().getAttribute('aria-valuenow'));

/** Everything that must follow: the sentence, both plates, the curves' tables. */
const followers = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    ['.sentence', '.path svg', '.sensor svg', '.seen table', '[aria-labelledby=vary-caption] table'].map(
      (part) => document.querySelector(part)?.innerHTML ?? part,
    ),
  );

/** Tables are filled when they are opened. */
const openTables = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll<HTMLDetailsElement>('.seen details')) fold.open = true;
  });

/** The sweep of other focal lengths comes last. */
const settled = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((ready) => requestAnimationFrame(() => setTimeout(() => setTimeout(ready, 250)))));

const steps = (page: Page): Promise<number> => page.evaluate(() => history.length);

/** Moves what is pressed until the handle says `to`. */
async function pullTo(page: Page, handle: string, to: number, move: (dx: number) => Promise<void>): Promise<void> {
  for (let i = 0; i < 400; i++) {
    const now = await reads(page, handle);
    if (now === to) return;
    await move(Math.sign(to - now) * Math.max(0.4, Math.min(40, Math.abs(to - now) / 2)));
    // A finger's move is on its way until a frame has shown it.
    await page.evaluate(() => new Promise((ready) => requestAnimationFrame(() => setTimeout(ready))));
  }
}

it('by mouse: everything follows while the relay is pulled from 20 to 95 mm, in one step of history', async () => {
  const page = await visit(linkOf(NARROW));
  await openTables(page);
  await settled(page);
  const link = page.url();
  const before = await followers(page);
  const count = await steps(page);
  await page.locator(RELAY).scrollIntoViewIfNeeded();
  let { x, y } = await middleOf(page, RELAY);
  const pull = async (dx: number): Promise<void> => {
    x += dx;
    await page.mouse.move(x, y);
  };
  await page.mouse.move(x, y);
  await page.mouse.down();
  await pull(60);
  await settled(page);
  // In the hand: all but the address has followed, and the rider is under the pointer.
  const between = await followers(page);
  for (const [i, what] of between.entries()) expect(what).not.toBe(before[i]);
  expect(Math.abs((await middleOf(page, RELAY)).x - x)).toBeLessThan(3);
  expect(page.url()).toBe(link);
  await pullTo(page, RELAY, 95, pull);
  await page.mouse.up();
  await settled(page);
  expect(await reads(page, RELAY)).toBe(95);
  expect(await pairingIn(page)).toEqual({ ...NARROW, infinitySpaceMm: 95 });
  expect(await sentence(page)).toBe(report({ ...NARROW, infinitySpaceMm: 95 }).sentence);
  const after = await followers(page);
  for (const [i, what] of after.entries()) expect(what).not.toBe(between[i]);
  expect(await steps(page)).toBe(count + 1);
  expect(await page.inputValue('#plate-relay')).toBe('95');

  await page.goBack();
  await page.waitForFunction((was) => document.querySelector('.sentence')?.innerHTML === was, before[0]);
  expect(await reads(page, RELAY)).toBe(20);

  // Given up, it goes back to where it was, and is no step.
  await page.goForward();
  await page.waitForFunction(() => document.querySelector('[data-handle=relay]')?.getAttribute('aria-valuenow') === '95');
  ({ x, y } = await middleOf(page, RELAY));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await pull(-50);
  expect(await reads(page, RELAY)).toBeLessThan(90);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect(await reads(page, RELAY)).toBe(95);
  expect(await steps(page)).toBe(count + 1);

  // The focal length at the sensor, and the point whose beam is drawn.
  ({ x, y } = await middleOf(page, '[data-handle=focal]'));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await pull(-80);
  await page.mouse.up();
  const { powerDioptre } = (await pairingIn(page)).relay;
  expect(powerDioptre).toBeGreaterThan(5.2);
  expect(await steps(page)).toBe(count + 2);
  const path = await page.innerHTML('.path svg');
  ({ x, y } = await middleOf(page, '.path [data-handle=field]'));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y + 30);
  await page.mouse.up();
  expect(await page.innerHTML('.path svg')).not.toBe(path);
  expect(await page.textContent('#path-caption')).toContain('mm from the middle');
  expect((await pairingIn(page)).relay.powerDioptre).toBe(powerDioptre);
  expect(await steps(page)).toBe(count + 2);
}, 60_000);

it('by finger at 390 px: a sideways pull moves the relay, an upright one scrolls', async () => {
  const page = await visit(linkOf(NARROW), { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  await settled(page);
  await openTables(page);
  await settled(page);
  const before = await followers(page);
  const count = await steps(page);
  await page.locator(RELAY).evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const touch = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', x = 0, y = 0): Promise<unknown> =>
    touch.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] });
  const box = await page.locator(RELAY).boundingBox();
  expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
  let { x, y } = await middleOf(page, RELAY);
  await send('touchStart', x, y);
  const pull = async (dx: number): Promise<void> => {
    x += dx;
    await send('touchMove', x, y);
  };
  await pull(20);
  await pullTo(page, RELAY, 95, pull);
  expect(await page.textContent('.reading')).toBe('95 mm');
  await send('touchEnd');
  await settled(page);
  expect(await pairingIn(page)).toEqual({ ...NARROW, infinitySpaceMm: 95 });
  expect(await sentence(page)).toBe(report({ ...NARROW, infinitySpaceMm: 95 }).sentence);
  const after = await followers(page);
  for (const [i, what] of after.entries()) expect(what).not.toBe(before[i]);
  expect(await steps(page)).toBe(count + 1);

  const top = await page.evaluate(() => scrollY);
  ({ x, y } = await middleOf(page, RELAY));
  await send('touchStart', x, y);
  for (let i = 1; i <= 12; i++) await send('touchMove', x, y - 12 * i);
  await send('touchEnd');
  // A page that is still gliding takes a tap as a wish to stop.
  await page.evaluate(async () => {
    for (let last = -1; scrollY !== last; ) {
      last = scrollY;
      await new Promise((ready) => setTimeout(ready, 200));
    }
  });
  expect(await page.evaluate(() => scrollY)).toBeGreaterThan(top + 40);
  expect(await reads(page, RELAY)).toBe(95);

  // A millimetre at a time, beside the number.
  await page.tap('button[aria-label="Infinity space, shoulder to relay: 1 mm more"]');
  await page.waitForFunction(() => document.querySelector('[data-handle=relay]')?.getAttribute('aria-valuenow') === '96');
  expect((await pairingIn(page)).infinitySpaceMm).toBe(96);
  expect(await steps(page)).toBe(count + 2);
}, 60_000);

it('by keys alone: the rider, its number, the ends, and one step for a run of keys', async () => {
  const page = await visit(linkOf(NARROW));
  const count = await steps(page);
  await page.focus(RELAY);
  for (let i = 0; i < 7; i++) await page.keyboard.press('PageUp');
  for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
  expect(await reads(page, RELAY)).toBe(95);
  expect(await page.getAttribute(RELAY, 'aria-valuetext')).toBe('95 mm');
  await page.waitForFunction((n) => history.length === n, count + 1);
  expect(await pairingIn(page)).toEqual({ ...NARROW, infinitySpaceMm: 95 });
  expect(await sentence(page)).toBe(report({ ...NARROW, infinitySpaceMm: 95 }).sentence);

  // The number that belongs to it comes next.
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('plate-relay');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('40');
  await page.keyboard.press('Enter');
  expect((await pairingIn(page)).infinitySpaceMm).toBe(40);
  expect(await steps(page)).toBe(count + 2);
  await page.keyboard.press('Control+A');
  await page.keyboard.type('-4');
  await page.keyboard.press('Tab');
  expect(await page.textContent('#plate-relay-wrong')).toContain('too small');
  expect((await pairingIn(page)).infinitySpaceMm).toBe(40);
  await page.fill('#plate-relay', '50');
  await page.focus('.path [data-handle=field]');
  await page.keyboard.press('Home');
  expect(await reads(page, '.path [data-handle=field]')).toBe(0);
  await page.keyboard.press('End');
  expect(await reads(page, '.path [data-handle=field]')).toBeCloseTo(21.63, 1);
}, 60_000);
