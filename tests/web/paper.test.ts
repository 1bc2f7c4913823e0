import { afterEach, expect, it } from 'vitest';
import { complaints, leave, useBrowser, visit } from './support.ts';

/** The page on paper, magnified, and on screens as narrow and as wide as there are. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

it('prints on two or three sheets, ink on white, with nothing to press', async () => {
  const page = await visit('', { colorScheme: 'dark' });
  for (const format of ['A4', 'Letter']) {
    const sheets = (await page.pdf({ format })).toString('latin1').match(/\/Type\s*\/Page\b/g)?.length;
    expect(sheets, format).toBeGreaterThanOrEqual(2);
    expect(sheets, format).toBeLessThanOrEqual(3);
  }
  await page.emulateMedia({ media: 'print' });
  const shown = (what: string): Promise<number> => page.locator(what).filter({ visible: true }).count();
  expect(await shown('button:not(.lead), nav, summary, .notes, [role=slider]')).toBe(0);
  expect(await shown('.sentence, .plate svg, .figure')).toBeGreaterThan(20);
  const colours = await page.evaluate(() => {
    const { backgroundColor, color } = getComputedStyle(document.documentElement);
    return [backgroundColor, color];
  });
  expect(colours).toEqual(['rgb(255, 255, 255)', 'rgb(0, 0, 0)']);
});

it.each([
  ['Pairing', '', '#vary-caption'],
  ['The glass', '?view=glass', '#glass-title'],
])('%s is never wider than the window: 320 px, 1280 magnified twice, 1920', async (_, view, ready) => {
  const page = await visit(view, {}, ready);
  for (const width of [320, 640, 1920]) {
    await page.setViewportSize({ width, height: 800 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth), String(width)).toBeLessThanOrEqual(width);
  }
});
