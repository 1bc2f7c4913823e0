import { expect, it } from 'vitest';
import { whole, wholes } from '../../web/typeset.ts';
import { useBrowser, visit } from './support.ts';

useBrowser();

const shown = (text: string): string => text.replaceAll('\u00a0', '_');

it('keeps a number with its unit, its ± and what it is multiplied by, and nothing else', () => {
  expect(shown(whole('the middle 20.4 × 13.5 mm, 1.9 mm short; 196 ± 2 mm, 32 % of it'))).toBe(
    'the middle 20.4_×_13.5_mm, 1.9_mm short; 196_±_2_mm, 32_% of it',
  );
  expect(shown(whole('at 2 steps of 3 more, Ø 24, 40 µm/s, 5 D, 3 hands'))).toBe('at 2 steps of 3 more, Ø_24, 40_µm/s, 5_D, 3 hands');
  expect(wholes(['from ', '12.5', ' mm to ', 3, ' % ', null]).map((piece) => (typeof piece === 'string' ? shown(piece) : piece))).toEqual([
    'from ',
    '12.5',
    '_mm to ',
    3,
    '_% ',
    null,
  ]);
});

it('does so in what the page says', async () => {
  const page = await visit('');
  // The text as it stands in the document: what tests read of it has plain spaces.
  const parted = await page.evaluate(() => {
    const walk = document.createTreeWalker(document.querySelector('main') as Node, NodeFilter.SHOW_TEXT);
    const texts: string[] = [];
    while (walk.nextNode()) texts.push((walk.currentNode as Text).data);
    return {
      all: texts.length,
      wrong: texts.filter((text) => /\d (mm|µm|%|×)(?!\w)/.test(text)),
      kept: texts.filter((text) => /\d\u00a0mm/.test(text)).length,
    };
  });
  expect(parted.wrong).toEqual([]);
  expect(parted.all).toBeGreaterThan(100);
  expect(parted.kept).toBeGreaterThan(3);
});
