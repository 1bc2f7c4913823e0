import AxeBuilder from '@axe-core/playwright';
import { afterEach, describe, expect, it } from 'vitest';
import { leave, linkOf, OPENING, put, sentence, unfold, useBrowser, visit } from './support.ts';

/** No accessibility fault that axe can find, on every state, in light and dark, wide and narrow. */

useBrowser();
afterEach(leave);

type Page = Awaited<ReturnType<typeof visit>>;

async function clean(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map((v) => `${v.id}: ${v.nodes[0]?.html.slice(0, 160)} ${v.nodes[0]?.failureSummary ?? ''}`)).toEqual([]);
}

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

describe.each(['light', 'dark'] as const)('%s', (colorScheme) => {
  it.each([1280, 390])('%i px: opening, error, working, every fold', async (width) => {
    const page = await visit('', { colorScheme, viewport: { width, height: 900 } });
    await page.waitForSelector('.canvas canvas[width]');
    await clean(page);
    await page.click('[data-figure=cornerIllumination] .show');
    await unfold(page);
    await put(page, '/relay/clearApertureMm', '-1');
    await page.fill('#engraved-sensor', 'frog');
    await page.locator('#engraved-sensor').blur();
    expect(await page.locator('.complaint').count()).toBe(2);
    await clean(page);
  });

  it.each(Object.keys(VERDICTS) as (keyof typeof VERDICTS)[])('the verdict %s', async (verdict) => {
    const page = await visit(linkOf(VERDICTS[verdict]), { colorScheme });
    expect(await sentence(page)).toContain(SAYS[verdict]);
    await clean(page);
  });
});

it('a broken link, and forced colours', async () => {
  const page = await visit('#1.x', { forcedColors: 'active' });
  await clean(page);
});
