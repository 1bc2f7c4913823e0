import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { complaints, go, input, leave, linkOf, OPENING, pairingIn, pick, put, sentence, unfold, useBrowser, visit } from './support.ts';

/** Bad input as a person meets it: said beside the field, the last answer kept, nothing lost. */

useBrowser();
let page: Page;
beforeAll(async () => {
  page = await visit(linkOf(fitted));
  await unfold(page);
});
afterAll(leave);
afterEach(() => expect(complaints.splice(0)).toEqual([]));

const fitted = {
  ...OPENING,
  relay: { kind: 'supplementary' as const, focalLengthMm: 200, clearApertureMm: 54 },
  sensor: { widthMm: 36, heightMm: 24, columns: 8256, rows: 5504 },
  stops: [{ diameterMm: 30, fromShoulderMm: 20 }],
};

/** The words beside an input, found by what the input says describes it. */
async function beside(path: string): Promise<string> {
  const field = page.locator(input(path));
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  const id = await field.getAttribute('aria-describedby');
  return (await page.textContent(`#${id}`)) ?? '';
}

/** Types something bad, reads what is said of it, and puts things right again. */
async function refused(path: string, text: string, right: string): Promise<string> {
  const said = await sentence(page);
  const link = page.url();
  await put(page, path, text);
  const words = await beside(path);
  expect(await sentence(page)).toBe(said);
  expect(page.url()).toBe(link);
  // What was typed stays; a number may be written another way.
  const kept = await page.inputValue(input(path));
  expect(Object.is(Number(kept), Number(text)) || kept === text).toBe(true);
  expect(await page.textContent('.answer .notice')).toContain('still answers what stood here before');
  await put(page, path, right);
  expect(await page.locator('[aria-invalid=true]').count()).toBe(0);
  expect(await page.locator('.answer .notice').count()).toBe(0);
  return words;
}

describe('one field', () => {
  it.each([
    ['negative', '-3', 'too small'],
    ['zero', '0', 'too small'],
    ['the smallest number', '5e-324', 'too small'],
    ['the largest', '1e308', 'too large'],
    ['not a number', 'NaN', 'is no number'],
    ['text', 'wide open', 'is no number'],
  ])('%s', async (_, text, words) => {
    const told = await refused('/relay/clearApertureMm', text, '54');
    expect(told).toContain(words);
    expect(told).toContain('from 0.1 to 500 mm');
  });

  it('empty where a number must be, and a stop of no diameter', async () => {
    expect(await refused('/objective/na', '', '0.25')).toContain('Is missing: give a number from 0.001 to 1.7');
    expect(await refused('/stops/0/diameterMm', '0', '30')).toContain('too small');
  });

  it('says nothing of half-typed input until the field is left, or after a while', async () => {
    await page.fill(input('/infinitySpaceMm'), '-');
    expect(await page.locator('[aria-invalid=true]').count()).toBe(0);
    await page.waitForSelector(`${input('/infinitySpaceMm')}[aria-invalid=true]`, { timeout: 2_000 });
    await page.reload();
    await page.waitForSelector('.sentence');
    expect(await page.inputValue(input('/infinitySpaceMm'))).toBe('-');
    expect(await beside('/infinitySpaceMm')).toContain('is no number');
    await put(page, '/infinitySpaceMm', '60');
    await unfold(page);
  });
});

describe('fields that contradict each other', () => {
  it('aperture above the index, and a relay with neither, or with both and apart', async () => {
    const tooWide = await refused('/objective/na', '1.2', '0.25');
    expect(tooWide).toContain('no light leaves at such an angle');
    expect(tooWide).toContain('less than 1, or an index of what it dips in');
    expect(await refused('/relay/focalLengthMm', '', '200')).toContain('a power in dioptres');
    const both = await (async () => {
      await put(page, '/relay/powerDioptre', '4');
      const words = await beside('/relay/focalLengthMm');
      await put(page, '/relay/powerDioptre', '');
      return words;
    })();
    expect(both).toContain('250 mm');
    expect(both).toContain('What would do: 250, or only one of the two');
  });

  it('rows against pitch', async () => {
    expect(await refused('/sensor/rows', '4000', '5504')).toContain('about 5504');
    expect(await refused('/sensor/pixelPitchUm', '6', '')).toContain('4.36 µm');
  });
});

it('an engraved line that cannot be read', async () => {
  await go(page, linkOf(OPENING));
  const said = await sentence(page);
  await page.fill('#engraved-objective', '10x/0.25 frog');
  await page.locator('#engraved-objective').blur();
  const words = await page.textContent('#engraved-objective-hint');
  expect(words).toContain('‘frog’');
  expect(words).toContain('Still needed: the tube lens that the engraving is for');
  expect(await page.inputValue('#engraved-objective')).toBe('10x/0.25 frog');
  expect(await sentence(page)).toBe(said);
  // A pick puts another part in its place, and its line with it.
  await pick(page, 'objective', '5x/0.14');
  expect(await page.inputValue('#engraved-objective')).toMatch(/^\d+x\/0\.\d+ /);
  expect(await page.locator('#engraved-objective[aria-invalid=true]').count()).toBe(0);
  await page.fill('#engraved-objective', '10x/0.25 180');
  expect((await pairingIn(page)).objective).toEqual({ magnification: 10, na: 0.25, referenceFocalLengthMm: 180 });
  expect(await sentence(page)).toContain('At 11.1×');
});

it('a beam that is cut whole is answered, with no light, in words', async () => {
  await go(
    page,
    linkOf({
      ...fitted,
      stops: [],
      objective: { ...OPENING.objective, exitPupilFromShoulderMm: { value: 0, plusMinus: 0, origin: 'measured' } },
      relay: { kind: 'supplementary', focalLengthMm: 100, clearApertureMm: 12 },
      infinitySpaceMm: 300,
    }),
  );
  expect(await sentence(page)).toContain('no light');
  expect(await page.textContent('#sensor-caption')).toContain('The corner gets no light');
  expect(await page.textContent('#path-caption')).toContain(
    "Nothing of the beam of the corner (dotted) gets through: it is stopped by the relay's rim",
  );
  expect(await page.locator('.path .field .lost').count()).toBe(1);
  expect(await page.locator('.path .field > .tone').count()).toBe(0);
  expect(await page.locator('[data-figure=cornerIllumination] .number').textContent()).toBe('0');
  expect(await page.textContent('main')).not.toMatch(/NaN|undefined|Infinity(?! space)/);
});
