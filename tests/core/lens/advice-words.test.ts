import { describe, expect, it } from 'vitest';
import { evaluate } from '../../../core/index.ts';
import { type Advice, adviceOf, pupilDoubt } from '../../../core/lens/advice.ts';
import { type Judging, judgingOf } from '../../../core/lens/judging.ts';
import { type SpacingPoint, spacingPoint } from '../../../core/lens/spacing.ts';
import { percent, short } from '../../../core/words.ts';
import { BENT } from '../contrast/lenses.ts';
import { pairingWith } from './rigs.ts';

/** The real lens where it stands at 85 mm, either way round; the places it is compared with are made up from it. */
const JUDGING: Judging = {
  ...judgingOf(evaluate(pairingWith({ glass: undefined, focalLengthMm: 198 })), BENT),
  frequency: 40,
  magnification: 11,
  criterion: 0.5,
};
const [STANDS, TURNED] = [0, 1].map((i) => spacingPoint(JUDGING, JUDGING.ways[i as 0 | 1], 85)) as [SpacingPoint, SpacingPoint];
const [c, d] = [STANDS.oneFrame, TURNED.oneFrame];

const at = (infinitySpaceMm: number, contrast: number, more: Partial<SpacingPoint> = {}): SpacingPoint => ({
  infinitySpaceMm,
  oneFrame: contrast,
  stack: contrast,
  oneFrameBlurUm: 20,
  stackBlurUm: 15,
  cornerLight: 1,
  ...more,
});
const pair = (listed: SpacingPoint, turned: SpacingPoint): [SpacingPoint, SpacingPoint] => [listed, turned];
const advised = (points: [SpacingPoint, SpacingPoint][], more: Partial<Judging> = {}): Advice =>
  adviceOf({ ...JUDGING, ...more }, points, 85);
const said = (...args: Parameters<typeof advised>): string => advised(...args).sentence;
const keeps = (contrast: number): string => percent(contrast);
const blurs = (point: SpacingPoint): string => short(point.oneFrameBlurUm as number);
// 1000 µm / (40 · 11)
const OF = 'of the contrast of lines 2.3 µm apart at the subject';
const WEAK = 'weak side first, male thread toward the objective';
const STRONG = 'strong side first, male thread toward the camera';

it('the lens that stands here is worth more as listed than turned round', () => {
  expect(c).toBeGreaterThan(0.5);
  expect(c).toBeLessThan(0.95);
  expect(d).toBeLessThan(0.6 * c);
  expect(STANDS.cornerLight).toBe(1);
});

describe('where it stands well', () => {
  // Half of it is gone in 27 and 28 mm: a tenth in a fifth of that, 5.4 and 5.6.
  const good = [pair(at(58, 0.5 * c), at(58, 0.1, { oneFrameBlurUm: 60 })), pair(at(113, 0.5 * c), at(113, 0.1, { oneFrameBlurUm: 40 }))];

  it('it is told so, with the stretch in which it may stand, and what the other way round comes to', () =>
    expect(said(good)).toBe(
      `It stands well: ${WEAK}, 85 mm from the objective's shoulder: the worst point of the picture blurs to ${blurs(STANDS)} µm and keeps ${keeps(c)} ${OF}. ` +
        'Strong side first the blur is 60 to 40 µm anywhere from 58 to 113 mm. Between 80 and 91 mm it is within a tenth of the best.',
    ));

  it('what it is now is a place like the others, the way round in which it stands and no other', () => {
    const { ways, now, better } = advised(good);
    expect(better).toBe(0);
    expect(now).toEqual(STANDS);
    expect(ways[0].best.point).toBe(now);
    expect(ways[0].points.map((p) => p.infinitySpaceMm)).toEqual([58, 113]);
    expect(ways[1].best.point.infinitySpaceMm).toBe(58);
  });

  it('to within a tenth of the best, and then no word is lost on light', () => {
    const nearly = c / 0.9;
    expect(0.9 * nearly).toBe(c);
    expect(said([pair(at(60, nearly, { cornerLight: 0.5 }), at(60, 0.1))])).toMatch(/^It stands well: weak side first/);
    expect(said([pair(at(60, nearly, { cornerLight: 0.5 }), at(60, 0.1))])).not.toContain('corner');
    expect(said([pair(at(60, 1.001 * nearly), at(60, 0.1))])).toMatch(/^Leave it weak side first/);
  });

  it('is softer than what counts as sharp where it is', () => {
    expect(said(good, { criterion: c })).not.toContain('softer');
    expect(said(good, { criterion: c + 0.01 })).toContain(`That is softer than the ${keeps(c + 0.01)} that counts as sharp.`);
    // Judged is what it comes to where it is, not at the best place.
    expect(said([pair(at(60, 1.05 * c), at(60, 0.1))], { criterion: 1.02 * c })).toContain('softer');
  });

  it('a stretch is told where it is one in whole millimetres', () => {
    // 0.4 mm to either side: from 85 to 85.
    expect(said([pair(at(83, 0.5 * c), at(83, 0.1)), pair(at(87, 0.5 * c), at(87, 0.1))])).not.toContain('Between');
    // From the first place to 85.6.
    expect(said([pair(at(88, 0.5 * c), at(88, 0.1))])).toContain('Between 85 and 86 mm it is');
    // From 84.4 to the last place.
    expect(said([pair(at(82, 0.5 * c), at(82, 0.1))])).toContain('Between 84 and 85 mm it is');
  });
});

describe('where another place is better', () => {
  it('it is left as it is and set there', () =>
    expect(said([pair(at(60, 0.999, { cornerLight: 0.5 }), at(60, 0.1, { oneFrameBlurUm: 31 }))])).toBe(
      `Leave it ${WEAK}, and set it 60 mm from the objective's shoulder: the worst point of the picture blurs to 20 µm and keeps 100 % ${OF}. ` +
        `At 85 mm it blurs to ${blurs(STANDS)} µm and keeps ${keeps(STANDS.oneFrame)} of it. Strong side first the blur is 31 µm at 60 mm. ` +
        `Between 60 and ${Math.round(60 + (25 * 0.0999) / (0.999 - c))} mm it is within a tenth of the best. The corner gets 50 % of the light there, 100 % now.`,
    ));

  it('it is turned round first where that is better', () => {
    const told = advised([pair(at(60, 0.999), at(60, 0.8 * d, { oneFrameBlurUm: 55 }))], { reversed: true });
    expect(told.now).toEqual(TURNED);
    expect(told.better).toBe(0);
    expect(told.sentence).toBe(
      `Turn it round, ${WEAK}, and set it 60 mm from the objective's shoulder: the worst point of the picture blurs to 20 µm and keeps 100 % ${OF}. ` +
        `As it stands it blurs to ${blurs(TURNED)} µm and keeps ${keeps(d)} of it. Strong side first the blur is 55 µm at 60 mm.`,
    );
  });

  it('that may be strong side first', () => {
    const told = advised([
      pair(at(60, 0.3, { oneFrameBlurUm: 44.01 }), at(60, 0.999)),
      pair(at(70, 0.3, { oneFrameBlurUm: 44.04 }), at(70, 0.4)),
    ]);
    expect(told.better).toBe(1);
    expect(told.sentence).toMatch(new RegExp(`^Turn it round, ${STRONG}, and set it 60 mm`));
    expect(told.sentence).toContain('Weak side first the blur is 44 µm anywhere from 60 to 70 mm.');
  });

  it('it is turned round even where it would stand well by its contrast', () => {
    // Less than a tenth, and more than the fiftieth that is as good.
    expect(said([pair(at(60, 0.1), at(60, 1.05 * c))])).toMatch(/^Turn it round/);
  });

  it('light is worth a word from a hundredth of the middle’s on', () => {
    const of = (cornerLight: number): string => said([pair(at(60, 0.999, { cornerLight }), at(60, 0.1))]);
    expect(of(0.9905)).not.toContain('corner');
    expect(of(0.98995)).toContain('The corner gets 99 % of the light there');
  });

  it('a place without a blur is told by its contrast', () =>
    expect(said([pair(at(60, 0.999, { oneFrameBlurUm: undefined as never }), at(60, 0.1))])).toContain(
      `shoulder: the worst point of the picture keeps 100 % ${OF}.`,
    ));

  it('in a stack it is told by the blur of a stack', () =>
    expect(said([pair(at(60, 0.999), at(60, 0.1))], { reversed: true, focus: 'stack' })).toContain('blurs to 15 µm and keeps 100 %'));
});

describe('the other way round', () => {
  it('is as good where it comes within a fiftieth, and then nothing is turned', () => {
    const best = 0.999;
    const even = (1 - 0.02) * best;
    expect(said([pair(at(60, best), at(60, even))])).toContain('The other way round is as good.');
    expect(said([pair(at(60, best), at(60, 0.9799 * best))])).not.toContain('as good');
    // Better, but not by enough: it stays as it stands, at the best place of that way round.
    expect(said([pair(at(60, even), at(70, best))])).toMatch(new RegExp(`^Leave it ${WEAK}, and set it 60 mm`));
    expect(said([pair(at(60, best), at(70, even))], { reversed: true })).toMatch(new RegExp(`^Leave it ${STRONG}, and set it 70 mm`));
  });

  it('of two that are the same the one as listed is the better', () =>
    expect(advised([pair(at(60, 0.999), at(60, 0.999))]).better).toBe(0));

  it('is told by the places that get light', () => {
    const dark = { oneFrameBlurUm: undefined as never };
    const places = (turned: SpacingPoint[]): string => said(turned.map((p) => pair(at(p.infinitySpaceMm, 0.2), p)));
    expect(places([at(50, 0, dark), at(60, 0.1), at(65, 0.1), at(70, 0.1, { oneFrameBlurUm: 30 }), at(80, 0, dark)])).toContain(
      'Strong side first the blur is 30 to 20 µm anywhere from 60 to 70 mm.',
    );
    expect(places([at(50, 0, dark), at(60, 0.1)])).toContain('Strong side first the blur is 20 µm at 60 mm.');
    expect(places([at(50, 0, dark)])).not.toContain('Strong side');
  });
});

it('where nothing gets light anywhere it is told so', () => {
  const dark = at(60, 0, { oneFrameBlurUm: undefined as never });
  expect(said([pair(dark, dark)], { cornerMm: 5000, over: 'subject' })).toMatch(/^At none of these places all of the subject gets light/);
});

describe('doubt of the exit pupil', () => {
  it('is worth a word from 5 mm on, in two digits', () => {
    expect(pupilDoubt(4.99)).toBe('');
    expect(pupilDoubt(5)).toContain('±5 mm');
    expect(pupilDoubt(5.5)).toContain('±5.5 mm');
    expect(pupilDoubt(12.34)).toContain('known to ±12 mm only');
  });
  it('is said with the advice', () => {
    const points = [pair(at(60, 0.999), at(60, 0.1))];
    expect(said(points, { pupilDoubtMm: 30 })).toContain('±30 mm');
    expect(said(points, { pupilDoubtMm: 1 })).not.toContain('±');
  });
});
