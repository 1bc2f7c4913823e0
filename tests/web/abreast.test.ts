import { afterEach, expect, it } from 'vitest';
import {
  COMPARED,
  differing,
  type Evaluation,
  evaluate,
  forOneSubject,
  numberIn,
  type Pairing,
  praiseOf,
  type Row,
  rowsOf,
} from '../../core/index.ts';
import { clean } from './clean.ts';
import { complaints, leave, linkOf, OPENING, put, unfold, useBrowser, visit } from './support.ts';

/** Pairings laid side by side as a person lays them, and their link opened elsewhere. */

useBrowser();
afterEach(async () => {
  await leave();
  expect(complaints.splice(0)).toEqual([]);
});

type Page = Awaited<ReturnType<typeof visit>>;

function expected(pairings: readonly Pairing[]): { rows: Row[]; sentences: string[] } {
  const evaluations = forOneSubject(pairings).pairings.map((pairing) => evaluate(pairing));
  const differ = differing(COMPARED);
  const rows = rowsOf({
    answers: evaluations.map(({ answers }) => answers),
    difference: (from, of) => differ(evaluations[from] as Evaluation, evaluations[of] as Evaluation),
  });
  return { rows, sentences: praiseOf(rows) };
}

const says = (page: Page) => page.evaluate(() => [...document.querySelectorAll('.entry .says')].map((e) => e.textContent));
const table = (page: Page) => page.textContent('.abreast-table tbody');
const entries = (page: Page, count: number) =>
  page.waitForFunction(
    (n) =>
      document.querySelectorAll('.entry').length === n &&
      [...document.querySelectorAll('.entry .says')].every((e) => !e.classList.contains('stale')),
    count,
  );
const behind = (...pairings: unknown[]): string => pairings.map((pairing) => linkOf(pairing).replace('#1', '')).join('');

it('lays three abreast, says what each is best at, keeps them in the link, and takes one away as one step back', async () => {
  const page = await visit('', { permissions: ['clipboard-read', 'clipboard-write'] });
  const steps = () => page.evaluate(() => history.length);
  const before = await steps();
  await page.click('text="Lay it abreast"');
  await page.waitForSelector('text="Laid abreast as A."');
  expect(await steps()).toBe(before + 1);
  await unfold(page);
  const others: Pairing[] = [];
  for (const space of [150, 30]) {
    await put(page, '/infinitySpaceMm', String(space));
    others.push({ ...OPENING, infinitySpaceMm: space });
  }
  await page.click('text="Lay it abreast"');
  await page.waitForSelector('text="See it abreast"');
  await page.click('text="See it abreast"');
  const three = [OPENING, others[1] as Pairing, others[0] as Pairing];
  await entries(page, 2);
  // The present one lies there already; another comes from a link.
  await page.click('text="Lay the present pairing here"');
  await page.waitForSelector('text="It lies abreast already, as B."');
  await page.evaluate((more) => {
    location.hash += more;
  }, behind(three[2]));
  await entries(page, 3);

  const { rows, sentences } = expected(three);
  expect(await says(page)).toEqual(sentences);
  const bold = await page.evaluate(() =>
    [...document.querySelectorAll('.abreast-table tr[data-row]')].map((tr) =>
      [...tr.querySelectorAll('td')].findIndex((td) => td.querySelector('b')),
    ),
  );
  expect(bold).toEqual(rows.map(({ best }) => best ?? -1));
  expect(bold.some((place) => place >= 0)).toBe(true);
  expect(await page.locator('[data-field] .edge').count()).toBe(3);
  const share = await page.evaluate(() => {
    const [circle, edge] = ['.good', '.edge'].map((part) => document.querySelector(`[data-field=A] ${part}`));
    return (2 * Number(circle?.getAttribute('r'))) / Number(edge?.getAttribute('width'));
  });
  const { goodFieldMm, objectFieldWidthMm } = evaluate(OPENING).answers;
  expect(share).toBeCloseTo((numberIn(goodFieldMm) as number) / (numberIn(objectFieldWidthMm) as number), 4);
  expect(await page.textContent('[data-row=systemMagnification]')).toContain('level with');
  const lengths = await page.textContent('[data-row=totalLengthMm]');
  expect(lengths).toContain('30 mm less');
  expect(lengths).toContain('90 mm more');
  await page.selectOption('#abreast-base', '-1');
  expect(await page.locator('.abreast-table .less').count()).toBe(0);
  await clean(page, { within: 'main' });

  // The whole link goes on the clipboard, and shows the same to whoever opens it.
  await page.click('text="Copy link"');
  await page.waitForSelector('text="Copied."');
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toBe(page.url());
  expect(copied).toContain(behind(...three));
  const numbers = await table(page);
  const phone = await visit(
    new URL(copied).search + new URL(copied).hash,
    { viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
    '.abreast-table',
  );
  await entries(phone, 3);
  expect(await says(phone)).toEqual(sentences);
  await phone.selectOption('#abreast-base', '-1');
  expect(await table(phone)).toBe(numbers);
  expect(await phone.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  await clean(phone, { within: 'main', sameColours: true });

  const laid = await steps();
  await page.click('[aria-label="Take B away"]');
  await entries(page, 2);
  expect(await steps()).toBe(laid + 1);
  expect(await says(page)).toEqual(expected([OPENING, three[2] as Pairing]).sentences);
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Lay the present pairing here');
  await page.goBack();
  await entries(page, 3);
  expect(await says(page)).toEqual(sentences);

  // One depth for all counts the frames, and a word that is none is told so.
  await page.fill('#abreast-depth', 'deep');
  await page.waitForSelector('#abreast-depth-wrong');
  await page.fill('#abreast-depth', '2');
  const deep = expected(three.map((pairing) => ({ ...pairing, subject: { ...pairing.subject, depthMm: 2 } })));
  const frames = deep.rows.find(({ id }) => id === 'framesForSubject')?.answers[0];
  await page.waitForFunction(
    (n) => document.querySelector('[data-row=framesForSubject] .number')?.textContent === String(n),
    frames?.state === 'known' && frames.value,
  );
  await page.click('[aria-label="Make B the pairing"]');
  await page.waitForSelector('.verdict');
  expect(await page.inputValue('#in-infinitySpaceMm')).toBe('30');
});

it('says of a link that is cut or hostile what is wrong, waits for glass, and shows the rest', async () => {
  const glass = { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] };
  const traced = { ...OPENING, relay: { kind: 'supplementary', clearApertureMm: 54, glass } };
  const crooked = { ...OPENING, stops: [{ diameterMm: 20, fromShoulderMm: 500 }] };
  const link = `?view=abreast${linkOf(OPENING)}${behind({ ...OPENING, infinitySpaceMm: '<img src=x>' }, traced, crooked, OPENING)}.eyJvYmpl`;
  const page = await visit(link, {}, '.abreast-table');
  await entries(page, 2);
  const told = await page.evaluate(() => [...document.querySelectorAll('main [role=alert] li')].map((e) => e.textContent ?? ''));
  expect(told).toHaveLength(3);
  expect(told[0]).toMatch(/^What lies at place 1 could not be shown: infinity space/i);
  expect(told[2]).toMatch(/^What lies at place 5 could not be shown: it is cut short or damaged\./);
  expect(told[1]).toMatch(/^What lies at place 3 could not be shown: ring 1, from the shoulder/);
  expect(await page.locator('img').count()).toBe(0);
  expect(await page.textContent('.entry')).toMatch(/^A.*close-up 198\.\d mm/);
  await page.locator('main [role=alert] button').first().click();
  await page.waitForFunction(() => document.querySelectorAll('main [role=alert] li').length === 2);
  await entries(page, 2);
});
