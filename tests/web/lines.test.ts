import { afterEach, expect, it } from 'vitest';
import { clean } from './clean.ts';
import { complaints, leave, linkOf, OPENING, pairingIn, pick, sentence, useBrowser, visit } from './support.ts';

/** The engraved lines as a person uses them: by keyboard alone, by mouse, by touch on a phone. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

type Page = Awaited<ReturnType<typeof visit>>;

const READY = '#in-sensor-widthMm';
const steps = (page: Page): Promise<number> => page.evaluate(() => history.length);
const active = (page: Page, line: string) =>
  page.evaluate((id) => {
    const at = document.getElementById(id)?.getAttribute('aria-activedescendant');
    return at ? document.getElementById(at)?.textContent : null;
  }, `engraved-${line}`);
const options = (page: Page, line: string) => page.locator(`#engraved-${line}-list [role=option]`);
/** Where what stands below the lines begins. */
const below = (page: Page) => page.evaluate(() => document.querySelector('.lines')?.getBoundingClientRect().bottom);

it('by keyboard alone: from the list, from what is asked, given up, left', async () => {
  const page = await visit('', {}, READY);
  const first = await sentence(page);
  const began = await steps(page);
  const stood = await below(page);
  const press = async (...keys: string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key);
  };
  await page.focus('#engraved-relay');
  await press('ArrowDown');
  await expect.poll(() => options(page, 'relay').count()).toBe(23);
  expect(await page.getAttribute('#engraved-relay', 'aria-expanded')).toBe('true');
  expect(await active(page, 'relay')).toContain('+2 D');
  await press('ArrowDown', 'ArrowDown', 'ArrowUp', 'ArrowUp', 'ArrowUp');
  expect(await active(page, 'relay')).toContain('Dedicated tube lens 200 mm');
  // Inside the text the keys move the cursor, and no option is taken by Enter then.
  await press('Home', 'Escape');
  expect(await options(page, 'relay').count()).toBe(0);
  expect([await sentence(page), await steps(page), await below(page)]).toEqual([first, began, stood]);

  // The picked part is one step, and marked as the present one afterwards.
  await press('ArrowUp', 'Enter');
  expect((await pairingIn(page)).relay).toMatchObject({ kind: 'tube-lens', focalLengthMm: 200 });
  expect(await page.inputValue('#engraved-relay')).toBe('tube lens 200 mm Ø 24');
  expect(await page.textContent('#engraved-relay-hint')).toBe('Dedicated tube lens 200 mm');
  expect(await steps(page)).toBe(began + 1);
  await press('ArrowDown');
  expect(await active(page, 'relay')).toContain('Dedicated tube lens 200 mm');
  expect(await page.locator('#engraved-relay-list [aria-selected=true]').textContent()).toContain('Dedicated tube lens 200 mm');

  // What can mean two things is asked; the answer stays until one is chosen.
  const told = await sentence(page);
  await page.fill('#engraved-relay', '4 52');
  await expect.poll(() => options(page, 'relay').first().textContent()).toContain('4 D and a thread of 52 mm');
  expect(await sentence(page)).toBe(told);
  await clean(page, { within: '.lines' });
  await press('Tab');
  expect(await page.textContent('#engraved-relay-hint')).toContain('Still needed: what ‘4 52’ is');
  expect(await page.getAttribute('#engraved-relay', 'aria-invalid')).toBe('true');
  expect([await sentence(page), await steps(page)]).toEqual([told, began + 1]);
  await page.focus('#engraved-relay');
  await press('ArrowDown', 'ArrowDown', 'Enter');
  expect((await pairingIn(page)).relay).toEqual({ kind: 'camera-lens', focalLengthMm: 52, fNumber: 4 });
  expect(await page.inputValue('#engraved-relay')).toBe('52 mm f/4');
  expect(await page.locator('#engraved-relay[aria-invalid]').count()).toBe(0);
  expect(await steps(page)).toBe(began + 2);

  // Typed and given up: all as before. Typed and left: one step.
  const before = await pairingIn(page);
  await page.fill('#engraved-objective', '20x/0.4 180');
  expect((await pairingIn(page)).objective.magnification).toBe(20);
  expect(await page.textContent('.offer .read')).toBe('read as: 20×, aperture 0.4, for a tube lens of 180 mm');
  await page.focus('#engraved-objective');
  await press('Escape');
  expect(await pairingIn(page)).toEqual(before);
  expect(await page.inputValue('#engraved-objective')).toContain('10x/0.25 ∞/0.17 f 200');
  await page.fill('#engraved-objective', '');
  await page.locator('#engraved-objective').pressSequentially('20x/0.4 180');
  await press('Tab');
  expect(await steps(page)).toBe(began + 3);
  await page.goBack();
  await expect.poll(async () => (await pairingIn(page)).objective.magnification).toBe(10);
  expect(await page.inputValue('#engraved-objective')).toContain('10x/0.25');
}, 60_000);

it('by mouse: the marker, a press beside the list, and every number below the row', async () => {
  const page = await visit(linkOf(OPENING), { colorScheme: 'dark' }, READY);
  const stood = await below(page);
  await page.click('.engraved:has(#engraved-sensor) .marker');
  await expect.poll(() => options(page, 'sensor').count()).toBe(14);
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('engraved-sensor');
  expect(await below(page)).toBe(stood);
  await clean(page, { within: '.lines', rules: ['color-contrast'] });
  await page.click('.sentence');
  expect(await options(page, 'sensor').count()).toBe(0);
  await pick(page, 'objective', '20x/0.42');
  expect((await pairingIn(page)).objective).toMatchObject({ magnification: 20, na: 0.42 });
  const tops = () => page.evaluate(() => [...document.querySelectorAll('.line')].map((line) => line.getBoundingClientRect().top));
  const row = await tops();
  expect(new Set(row).size).toBe(1);
  await page.click('text=every number of the relay');
  expect(await page.isVisible('#in-relay-clearApertureMm')).toBe(true);
  expect(await tops()).toEqual(row);

  // An input method's half-made text is left alone until it is done.
  const composed = (type: 'input' | 'compositionend') =>
    page.evaluate((kind) => {
      const field = document.getElementById('engraved-relay') as HTMLInputElement;
      if (kind === 'input') field.value = '3 D 77 mm';
      field.dispatchEvent(
        kind === 'input' ? new InputEvent(kind, { bubbles: true, isComposing: true }) : new CompositionEvent(kind, { bubbles: true }),
      );
    }, type);
  await composed('input');
  expect((await pairingIn(page)).relay).toEqual(OPENING.relay);
  await composed('compositionend');
  expect((await pairingIn(page)).relay).toEqual({ kind: 'supplementary', powerDioptre: 3, maleThread: '77 x 0.75' });

  // Whoever types before what reads the line has come is heard when it comes.
  let come = (): void => undefined;
  const coming = new Promise<void>((resolve) => {
    come = resolve;
  });
  await page.route('**/piece-*.js', async (route) => {
    await coming;
    await route.continue();
  });
  await page.reload();
  await page.fill('#engraved-relay', '4 D 52 mm');
  await page.locator('#engraved-relay').blur();
  expect(await page.textContent('#engraved-relay-hint')).toContain('still to be fetched');
  expect(await page.inputValue('#engraved-relay')).toBe('4 D 52 mm');
  come();
  await expect.poll(async () => (await pairingIn(page)).relay).toEqual({ kind: 'supplementary', powerDioptre: 4, maleThread: '52 x 0.75' });
  expect(await page.locator('#engraved-relay[aria-invalid]').count()).toBe(0);
  expect(await page.locator('.offer').count()).toBe(0);
}, 60_000);

it('by touch at 390 px: the list stays in the window, its options are large enough, what is asked takes one tap', async () => {
  const page = await visit('', { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }, READY);
  await page.locator('.engraved:has(#engraved-relay) .marker').tap();
  await expect.poll(() => options(page, 'relay').count()).toBe(23);
  const sizes = await page.evaluate(() => {
    const box = document.querySelector('.offer')?.getBoundingClientRect() ?? new DOMRect();
    const heights = [...document.querySelectorAll('[role=option], .marker')].map((one) => one.getBoundingClientRect().height);
    return { ...box.toJSON(), least: Math.min(...heights), over: document.documentElement.scrollWidth - innerWidth, high: innerHeight };
  });
  expect(sizes.left).toBeGreaterThanOrEqual(0);
  expect(sizes.right).toBeLessThanOrEqual(390);
  expect(sizes.top).toBeGreaterThanOrEqual(0);
  expect(sizes.bottom).toBeLessThanOrEqual(sizes.high);
  expect(sizes.least).toBeGreaterThanOrEqual(44);
  expect(sizes.over).toBe(0);
  await clean(page, { within: '.lines' });
  await options(page, 'relay').filter({ hasText: '135 mm f/2.8' }).tap();
  expect((await pairingIn(page)).relay).toMatchObject({ kind: 'camera-lens', focalLengthMm: 135 });
  await page.fill('#engraved-objective', '10x/0.25 1');
  await options(page, 'objective')
    .filter({ hasText: /^165\smm/ })
    .tap();
  expect((await pairingIn(page)).objective).toEqual({ magnification: 10, na: 0.25, referenceFocalLengthMm: 165 });
  expect(await page.inputValue('#engraved-objective')).toBe('10x/0.25 f 165');
  await page.fill('#engraved-sensor', 'full frame 24');
  await options(page, 'sensor').filter({ hasText: '24 MP: millions of pixels' }).tap();
  expect((await pairingIn(page)).sensor).toMatchObject({ widthMm: 36, heightMm: 24, pixelPitchUm: { value: 6 } });
  expect(await sentence(page)).toContain('At 8.18×');
}, 60_000);
