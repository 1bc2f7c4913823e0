import { afterEach, expect, it } from 'vitest';
import { byConvention, evaluateTable, lightSentence, stackByObjective, stackSentence } from '../../core/table.ts';
import objectives from '../../data/objectives.json' with { type: 'json' };
import { clean } from './clean.ts';
import { complaints, leave, linkOf, OPENING, put, unfold, useBrowser, visit } from './support.ts';

/** Frames for this subject, and room for light, as a person meets them: on a desk and on a phone. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

const PHONE = { viewport: { width: 390, height: 844 } };

it('says frames and light as core does, follows what is set, and lays the objectives side by side', async () => {
  const page = await visit(`?view=table${linkOf(OPENING)}`, {}, '#table-light');
  const says = (part: string): Promise<string | null> => page.textContent(`.${part}-part .sentence`);
  expect(await says('stack')).toBe(stackSentence(evaluateTable(OPENING, {})));
  expect(await says('light')).toBe(lightSentence(evaluateTable(OPENING, {})));

  const set = { railErrorUm: 2, railIncrementUm: 1.25, exposureS: 0.5, diffuserDiameterMm: 20, diffuserHeightMm: 6 };
  for (const [key, value] of Object.entries(set)) await put(page, `/${key}`, String(value));
  await put(page, '/subject/depthMm', '0.6');
  const deeper = { ...OPENING, subject: { ...OPENING.subject, depthMm: 0.6 } };
  const evaluation = evaluateTable(deeper, set);
  expect(await says('stack')).toBe(stackSentence(evaluation));
  expect(await says('light')).toBe(lightSentence(evaluation));
  expect(await says('light')).toContain('a diffuser of 20 mm fits with 4.5 mm to spare');
  expect(await page.locator('.side-plate .diffuser path').count()).toBe(2);

  const lines = await page.getAttribute('.stack-plate .frames', 'd');
  const { value: frames } = evaluation.answers.framesInAll as { value: number };
  expect(lines?.split('M').length).toBe(frames + 1);

  const known = objectives.parts.map(({ part }) => part as never);
  const due = stackByObjective(deeper, set, [deeper.objective, ...known]);
  const rows = await page
    .locator('.objectives tbody tr')
    .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent)));
  expect(rows.map((cells) => cells[4])).toEqual(due.map((row) => (row.frames === undefined ? '–' : String(row.frames))));
  expect(rows.filter((cells) => cells[0]?.includes('in this pairing'))).toHaveLength(1);
  const seen = () => page.locator('.objectives tbody tr:visible').count();
  expect(await seen()).toBe(8);
  await page.click(`.by-objective >> text="All ${due.length} objectives"`);
  expect(await seen()).toBe(due.length);
  // Each reason why there are no frames once, under the table.
  const whys = new Set(due.flatMap(({ why }) => why ?? []));
  expect(whys.size).toBeGreaterThan(0);
  for (const why of whys) expect(await page.locator('.by-objective').getByText(why).count()).toBe(1);

  await put(page, '/railIncrementUm', '500');
  expect(await says('stack')).toContain('This rail is too coarse');
  expect(await page.locator('.stack-part .list').getByText('too coarse').count()).toBe(0);
  await put(page, '/railIncrementUm', '1.25');

  await unfold(page);
  const depths = await page.locator('.conventions tbody tr').evaluateAll((all) => all.map((row) => row.children[2]?.textContent));
  expect(depths).toEqual(byConvention(evaluation).map((one) => String(one.frames ?? '–')));
  for (const within of ['.stack-part', '.light-part']) await clean(page, { within });
});

it('stands on a phone without sliding sideways', async () => {
  const page = await visit(`?view=table${linkOf(OPENING)}`, PHONE, '#table-light');
  await unfold(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  const ends = await page
    .locator('.objectives, .stack-plate svg, .side-plate svg')
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().right));
  expect(ends).toHaveLength(3);
  for (const end of ends) expect(end).toBeLessThanOrEqual(390);
});
