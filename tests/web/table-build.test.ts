import { afterEach, expect, it } from 'vitest';
import { amount } from '../../core/index.ts';
import { buildEffects, buildSheet, buildWords, evaluateTable } from '../../core/table.ts';
import { clean } from './clean.ts';
import { complaints, leave, OPENING, pairingIn, useBrowser, visit } from './support.ts';

/** What to screw together, as a person finds it: the list, a ring of one's own, the drawing from the flange, a ring that becomes a stop. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

const SECTION = 'section[aria-labelledby=table-build]';

it('lists the parts in order, takes a ring that one has, keeps it in the address, and counts the narrowest as a stop', async () => {
  const page = await visit('?view=table', {}, '#table-build');
  const evaluation = evaluateTable(OPENING, {});
  const sheet = buildSheet(evaluation);
  const says = () => page.textContent(`${SECTION} .sentence`);
  const rows = () => page.locator(`${SECTION} table.parts tbody tr`);
  const words = buildWords(evaluation, sheet, buildEffects(evaluation, sheet));
  const [answer, ...rest] = words.map(({ text }) => text);
  expect(await says()).toBe(answer);
  // What qualifies the answer and what the list tells as well stand below the drawing.
  expect(rest.length).toBeGreaterThan(2);
  expect(await page.textContent(`${SECTION} figure.rig + .rest`)).toBe(rest.join(' '));
  expect(await rows().count()).toBe(sheet.parts.length);
  expect(await rows().nth(1).textContent()).toContain('female M25 x 0.75');
  expect(await page.locator('figure.threads .spigot').count()).toBe(
    sheet.parts.flatMap(({ front, rear }) => [front, rear]).filter((end) => end?.startsWith('male')).length,
  );

  await page.check('input[name=counted][value=flange]');
  expect(await page.textContent('figure.rig svg')).toContain('to the relay’s seat 154 mm');
  await page.check('input[name=counted][value=parts]');
  expect(await page.textContent('figure.rig svg')).toContain('infinity space 60 mm');
  // To scale: the tube is as long against the infinity space as it is in millimetres.
  const drawn = await page.evaluate(() =>
    [...document.querySelectorAll('figure.rig .dimension')].map((path) => {
      const [, from, to] = path.getAttribute('d')?.match(/^M([\d.]+) [\d.]+H([\d.]+)/) ?? [];
      return Number(to) - Number(from);
    }),
  );
  const [, , space, , tube] = drawn as [number, number, number, number, number];
  expect(tube / space).toBeCloseTo((sheet.tubeMm?.value as number) / 60, 3);

  await page.click('summary:has-text("Rings and tubes that you have")');
  await page.click('text="Add a ring that you have"');
  const rings = () => page.evaluate(() => new URLSearchParams(location.search).get('rings') ?? '');
  const thread = page.getByLabel('Thread on one side');
  await thread.fill('M26');
  await page.getByLabel('That side is').selectOption('female');
  await page.getByLabel('Thread on the other').fill('M42 x 1');
  // Nothing is supposed of it: it counts once it is told in full.
  expect(await page.textContent('fieldset.ring')).toContain('It counts once both threads are told');
  expect(await rings()).toBe('');
  await page.getByLabel('The other side is').selectOption('male');
  await page.waitForSelector('text=/M26 x 36 TPI or M26 x 0.75/');
  await thread.fill('M25');
  await thread.press('Enter');
  const opening = page.locator('fieldset.ring').getByLabel('Opening');
  await opening.fill('9');
  await opening.press('Enter');
  const has = {
    adapters: [
      {
        ends: [
          { thread: 'M25', sex: 'female' },
          { thread: 'M42 x 1', sex: 'male' },
        ],
        clearMm: 9,
      },
    ],
  };
  const address = (await rings()).replace(/^1\./, '');
  expect(JSON.parse(Buffer.from(address, 'base64url').toString('utf8'))).toEqual(has);
  await page.check('text="Only what I have"');
  await page.waitForFunction(
    (s) => /one piece goes on, and a ring with .* is missing/.test(document.querySelector(s)?.textContent ?? ''),
    `${SECTION} .sentence`,
  );
  expect(await page.locator('figure.threads .bites').count()).toBe(2);
  expect(await page.locator(`${SECTION} tr[data-part=missing]`).count()).toBe(2);
  await page.uncheck('text="Only what I have"');

  await page.click('text="Count them as stops of the pairing"');
  await page.waitForFunction((s) => !document.querySelector(s)?.textContent?.includes('Count them'), SECTION);
  const { stops = [] } = await pairingIn(page);
  expect(stops.map(({ diameterMm }) => amount(diameterMm).toFixed(1))).toEqual(['9.0', '38.9']);

  // A tube built 5 mm too long, and the sensor taken where it then stands.
  const built = (sheet.tubeMm?.value ?? Number.NaN) + 5;
  await page.click('summary:has-text("Threads and lengths of the parts")');
  const field = page.getByLabel('Tube as built', { exact: true });
  await field.fill(String(built));
  await field.press('Enter');
  await page.waitForSelector('text=as you built it is 5 mm too long');
  await page.click('text="Work with the sensor where it stands"');
  expect((await pairingIn(page)).sensorOffsetMm).toBeCloseTo(5, 9);
  await clean(page, { within: SECTION });
});
