import type { Page } from 'playwright-core';
import { afterEach, expect, it } from 'vitest';
import { amount, diagonalOf, evaluate, percent, relativeIllumination, scaleOf, short, stopsOf } from '../../core/index.ts';
import { complaints, leave, linkOf, OPENING, useBrowser, visit } from './support.ts';

/** The point of the picture whose beam is drawn, as a person moves it on the sensor. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

const DARK = { ...OPENING, relay: { ...OPENING.relay, clearApertureMm: 24 }, infinitySpaceMm: 150 };
const CORNER = diagonalOf(OPENING.sensor) / 2;
const DIAGONAL = [amount(OPENING.sensor.widthMm), amount(OPENING.sensor.heightMm)] as const;
const HANDLE = '.field-point';

/** Light at a radius, by core. */
const lightAt = (radius: number): number => {
  const stops = stopsOf(evaluate(DARK).sheet);
  return stops ? relativeIllumination(stops.seen, radius / scaleOf(stops.rig)) : Number.NaN;
};

/** Where the point is, as everything tells it: slider, input, place on the drawing. */
async function told(page: Page) {
  return page.evaluate((handle) => {
    const slider = document.querySelector(handle) as HTMLElement;
    const chip = (document.querySelector('.sensor .chip-edge') as SVGElement).getBoundingClientRect();
    const at = slider.getBoundingClientRect();
    const [x, y] = [at.x + at.width / 2 - chip.x - chip.width / 2, chip.y + chip.height / 2 - at.y - at.height / 2];
    return {
      value: Number(slider.getAttribute('aria-valuenow')),
      says: slider.getAttribute('aria-valuetext'),
      input: (document.querySelector('#field-point') as HTMLInputElement).value,
      /** As parts of the way to the corner, across and up. */
      across: (2 * x) / chip.width,
      up: (2 * y) / chip.height,
      size: at.width,
      caption: document.querySelector('#contrast-caption')?.textContent ?? '',
      drawn: document.querySelector('[aria-labelledby=light-caption] canvas')?.getAttribute('aria-label') ?? '',
      history: history.length,
      link: location.hash,
    };
  }, HANDLE);
}

type Told = Awaited<ReturnType<typeof told>>;

/** Everything agrees on one radius. */
function agrees(now: Told, radius: number, within = 0.01): void {
  expect(now.value).toBeGreaterThan(radius - within);
  expect(now.value).toBeLessThan(radius + within);
  expect(Number(now.input)).toBeCloseTo(now.value, 1);
  expect(now.across).toBeCloseTo(now.value / CORNER, 1);
  expect(now.up).toBeCloseTo(now.value / CORNER, 1);
  const light = percent(lightAt(now.value));
  expect(now.says).toBe(
    now.value === 0 ? `the middle: ${light} of the light` : `${short(now.value)} mm from the middle: ${light} of the light`,
  );
  expect(now.drawn).toContain(Math.abs(now.value - CORNER) < 1e-3 ? `the corner: ${light}` : `${short(now.value)} mm: ${light}`);
}

/** From the handle's middle to a radius in another direction, in px of the page. */
async function placeAt(page: Page, radius: number, towards: readonly [number, number]): Promise<[number, number]> {
  const chip = await page.locator('.sensor .chip-edge').boundingBox();
  if (!chip) throw new Error('no sensor');
  const k = chip.width / DIAGONAL[0];
  const length = Math.hypot(...towards);
  return [chip.x + chip.width / 2 + (k * radius * towards[0]) / length, chip.y + chip.height / 2 - (k * radius * towards[1]) / length];
}

it('moves by mouse, keys and number; drawing, curve and contrast follow, history and link do not', async () => {
  const page = await visit(linkOf(DARK));
  await page.waitForSelector('[aria-labelledby=light-caption] canvas[width]');
  const first = await told(page);
  agrees(first, CORNER);

  await page.locator(HANDLE).scrollIntoViewIfNeeded();
  await page.mouse.move(...(await placeAt(page, CORNER, DIAGONAL)));
  await page.mouse.down();
  // Round the middle at 11 mm: only the distance counts.
  for (const towards of [
    [3, 2],
    [1, 0],
    [0, -1],
    [-1, 1],
  ] as const) {
    await page.mouse.move(...(await placeAt(page, 11, towards)));
    agrees(await told(page), 11, 0.1);
  }
  await page.mouse.move(...(await placeAt(page, 40, [1, 0])));
  agrees(await told(page), CORNER);
  await page.mouse.move(...(await placeAt(page, 9.4, [-1, 0])));
  await page.mouse.up();
  const dragged = await told(page);
  agrees(dragged, 9.4, 0.1);
  expect(dragged.caption).toContain(`Where the beam is cut, ${short(dragged.value)} mm from the middle`);
  expect(dragged.caption).not.toBe(first.caption);
  // Let go, it stays.
  await page.mouse.move(...(await placeAt(page, 3, [1, 0])));
  agrees(await told(page), dragged.value);

  await page.focus(HANDLE);
  await page.keyboard.press('Home');
  agrees(await told(page), 0);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowUp');
  agrees(await told(page), 1);
  await page.keyboard.press('PageUp');
  await page.keyboard.press('Shift+ArrowUp');
  await page.keyboard.press('ArrowLeft');
  agrees(await told(page), 4.5);
  await page.keyboard.press('Shift+ArrowLeft');
  await page.keyboard.press('PageDown');
  agrees(await told(page), 0.5);
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  agrees(await told(page), 0);
  await page.keyboard.press('End');
  await page.keyboard.press('ArrowUp');
  agrees(await told(page), CORNER);

  await page.fill('#field-point', '10,3');
  const typed = await told(page);
  expect(typed.value).toBeCloseTo(10.3, 12);
  expect(typed.says).toBe(`10.3 mm from the middle: ${percent(lightAt(10.3))} of the light`);
  await page.fill('#field-point', 'far');
  expect((await told(page)).value).toBeCloseTo(10.3, 12);
  await page.locator('#field-point').blur();
  agrees(await told(page), 10.3);
  await page.fill('#field-point', '99');
  await page.locator('#field-point').blur();
  const last = await told(page);
  agrees(last, CORNER);
  expect([last.history, last.link]).toEqual([first.history, first.link]);
});

it('moves under a finger at 390 px, where curves are folded to what they say', async () => {
  const page = await visit(linkOf(DARK), { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  expect(await page.locator('.seen .canvas').count()).toBe(0);
  const fold = page.locator('[aria-labelledby=light-caption] summary');
  expect(await fold.textContent()).toBe('See the curve');
  await fold.click();
  await page.waitForSelector('[aria-labelledby=light-caption] canvas[width]');
  expect(await page.locator('[aria-labelledby=light-caption] tbody tr').count()).toBeGreaterThan(20);

  await page.locator(HANDLE).scrollIntoViewIfNeeded();
  const start = await told(page);
  expect(start.size).toBeGreaterThanOrEqual(44);
  agrees(start, CORNER);
  const finger = await page.context().newCDPSession(page);
  const touch = async (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: [number, number]) =>
    finger.send('Input.dispatchTouchEvent', { type, touchPoints: at ? [{ x: at[0], y: at[1] }] : [] });
  const scrolled = await page.evaluate(() => scrollY);
  await touch('touchStart', await placeAt(page, CORNER, DIAGONAL));
  for (const radius of [13, 11, 8, 6]) {
    await touch('touchMove', await placeAt(page, radius, [1, 1]));
    // A finger's moves come with the frames.
    await page.waitForFunction(([handle, r]) => Math.abs(Number(document.querySelector(handle)?.getAttribute('aria-valuenow')) - r) < 0.3, [
      HANDLE,
      radius,
    ] as const);
    agrees(await told(page), radius, 0.3);
  }
  await touch('touchEnd');
  expect(await page.evaluate(() => scrollY)).toBe(scrolled);
  agrees(await told(page), 6, 0.3);
});
