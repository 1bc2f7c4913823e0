import { afterEach, expect, it } from 'vitest';
import { clean } from './clean.ts';
import { go, leave, linkOf, OPENING, put, sentence, unfold, useBrowser, visit } from './support.ts';

/** No accessibility fault that axe can find, on every state, in light and dark, wide and narrow. */

useBrowser();
afterEach(leave);

type Page = Awaited<ReturnType<typeof visit>>;

const sure = (value: number) => ({ value, plusMinus: 0, origin: 'measured' as const });
const VERDICTS = {
  covers: {
    ...OPENING,
    objective: { ...OPENING.objective, fieldNumberMm: 26 },
    relay: { kind: 'supplementary', focalLengthMm: 300, clearApertureMm: 60 },
  },
  misses: { ...OPENING, relay: { kind: 'supplementary', focalLengthMm: sure(60), clearApertureMm: 20 }, infinitySpaceMm: 200 },
  undecided: {
    ...OPENING,
    relay: { kind: 'supplementary', powerDioptre: 5 },
    objective: { ...OPENING.objective, fieldNumberMm: undefined },
  },
};
const SAYS = { covers: 'is covered to the corners', misses: 'misses the sensor', undecided: 'is open' };

it('light: opening, verdicts, error, working and every fold, at both widths', async () => {
  const page = await visit();
  await page.waitForSelector('.canvas canvas[width]');
  await clean(page);
  for (const verdict of Object.keys(VERDICTS) as (keyof typeof VERDICTS)[]) {
    await go(page, linkOf(VERDICTS[verdict]));
    expect(await sentence(page)).toContain(SAYS[verdict]);
    for (const within of verdict === 'misses' ? ['.answer', '.path-section', '.seen'] : ['.answer']) await clean(page, { within });
  }
  await go(page, linkOf(OPENING));
  await trouble(page);
  await clean(page);
  await page.evaluate(() => {
    for (const show of document.querySelectorAll<HTMLElement>('[data-figure] .show[aria-expanded=false]')) show.click();
  });
  await page.waitForSelector('#working-depthOfFieldUm .working');
  await clean(page, { within: '.groups', sameColours: true });
  await page.setViewportSize({ width: 390, height: 844 });
  for (const within of ['.answer', '.lines']) await clean(page, { within });
  // Narrow, the sensor's drawing stands elsewhere and the numbers of the path in a list.
  const narrow = await visit(linkOf(VERDICTS.misses), { viewport: { width: 390, height: 844 } });
  for (const within of ['.answer', '.on-sensor', '.path-section']) await clean(narrow, { within });
  await go(narrow, linkOf(VERDICTS.undecided));
  for (const within of ['.answer', '.on-sensor']) await clean(narrow, { within });
}, 60_000);

it('dark: a miss shows every colour that verdicts have; and the same trouble', async () => {
  const page = await visit(linkOf(VERDICTS.misses), { colorScheme: 'dark' });
  await clean(page, { rules: ['color-contrast'] });
  await go(page, linkOf(OPENING));
  await trouble(page);
  await clean(page, { rules: ['color-contrast'] });
}, 60_000);

it('a broken link, narrow, in forced colours', async () => {
  const page = await visit('#1.x', { forcedColors: 'active', viewport: { width: 390, height: 844 } });
  await clean(page);
});

/** Every fold and a working open, an input and an engraved line wrong. */
async function trouble(page: Page): Promise<void> {
  await page.click('[data-figure=cornerIllumination] .show');
  await unfold(page);
  await put(page, '/relay/clearApertureMm', '-1');
  await page.fill('#engraved-sensor', 'frog');
  await page.locator('#engraved-sensor').blur();
  // Beside both inputs, and under the plate that the opening is a number of too.
  expect(await page.locator('.complaint').count()).toBe(3);
}
