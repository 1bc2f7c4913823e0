import { afterEach, expect, it } from 'vitest';
import { shiftsOf } from '../support/stillness.ts';
import { address, blank, leave, useBrowser } from './support.ts';

/** Once something stands on the page it stays where it is, however slowly the rest arrives. */

useBrowser();
afterEach(leave);

it.each([
  [1280, 900],
  [390, 844],
])('nothing moves by itself at %i x %i', async (width, height) => {
  const page = await blank({ viewport: { width, height } });
  const shifts = await shiftsOf(page, address());
  // The last of the page was there to be moved.
  expect(await page.locator('footer.foot').count()).toBe(1);
  expect(shifts).toEqual([]);
});
