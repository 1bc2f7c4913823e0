import { afterEach, expect, it } from 'vitest';
import { evaluateTable, infinitySays, infinitySteps, stillnessSays } from '../../core/table.ts';
import { clean } from './clean.ts';
import { complaints, leave, linkOf, OPENING, put, useBrowser, visit } from './support.ts';

/** Setting infinity, and light and stillness: answered before they are asked, and again as things are set. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

it('says how wrong the tube may be and how still it must stand, follows what is set, and keeps it in the address', async () => {
  const page = await visit(`?view=table${linkOf(OPENING)}`, {}, '#rule-caption');
  const says = (id: string) => page.textContent(`[aria-labelledby="table-${id}"] .sentence`);
  const expected = (settings: Parameters<typeof evaluateTable>[1]) => evaluateTable(OPENING, settings);
  expect(await says('infinity')).toBe(infinitySays(expected({})));
  expect(await says('stillness')).toBe(stillnessSays(expected({})));

  await put(page, '/tubeErrorMm', '-40');
  await put(page, '/magnificationTolerance', '0.3');
  await put(page, '/exposureS', '0.5');
  await put(page, '/swingUm', '2');
  await put(page, '/swingHz', '30');
  const settings = { tubeErrorMm: -40, magnificationTolerance: 0.3, exposureS: 0.5, swingUm: 2, swingHz: 30 };
  await page.waitForFunction(
    (text) => document.querySelector('[aria-labelledby="table-stillness"] .sentence')?.textContent === text,
    stillnessSays(expected(settings)),
  );
  expect(await says('infinity')).toBe(infinitySays(expected(settings)));
  expect(await page.textContent('.tube-rule .rider')).toBe('40 mm too short');
  expect(await page.textContent('#rule-caption')).toMatch(
    /^With a tube 40 mm too short the magnification is [\d.]+ instead of [\d.]+, .* on axis the picture is /,
  );
  expect(await page.locator('.infinity-steps li').allTextContents()).toEqual([...infinitySteps(expected(settings))]);
  // The dimension that is drawn ends where the scale has what is allowed.
  const { x, tick } = await page.evaluate(() => {
    const band = document.querySelector('.tube-rule .dimension')?.getAttribute('d') ?? '';
    const ten = [...document.querySelectorAll('.tube-rule .tick')].filter((t) => t.textContent === '+30');
    return {
      x: band.match(/H([\d.]+)/)?.[1],
      tick: ten[0]
        ?.querySelector('path')
        ?.getAttribute('d')
        ?.match(/M([\d.]+)/)?.[1],
    };
  });
  expect(Number(x)).toBeGreaterThan(Number(tick));

  await page.click('[data-figure="tubeStrehl"] .show');
  expect(await page.textContent('[data-figure="tubeStrehl"] .working')).toMatch(/Abbe's sine condition/);
  expect(await page.textContent('[aria-labelledby="table-infinity"] .cautions')).toMatch(/by the sun/);

  const again = await visit(`${new URL(page.url()).search}${new URL(page.url()).hash}`, {}, '#rule-caption');
  expect(await again.textContent('.tube-rule .rider')).toBe('40 mm too short');
  await clean(page);
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
});
