import { describe, expect, it } from 'vitest';
import { bitesOf, lineOf, metOf, nameOfLimit, toldIn } from '../../../core/choose/reasons.ts';
import { amountOf } from '../../../core/choose/words.ts';
import type { LimitAnswer } from '../../../core/choosing.ts';

const limit = (surely: boolean, more: Partial<LimitAnswer> = {}): LimitAnswer => ({
  name: 'length',
  figure: 'totalLengthMm',
  state: 'known',
  value: 180,
  limit: 200,
  meets: true,
  surely,
  margin: 0.1,
  ...more,
});
const [sure, open] = [limit(true), limit(false)];

describe('how surely a choice meets what is asked', () => {
  it('is told of one limit, of both, of all of them', () => {
    expect(metOf([])).toBe('Nothing was asked of it.');
    expect(metOf([sure])).toBe('Meets what is asked, surely.');
    expect(metOf([open])).toBe('Meets what is asked, none of it surely.');
    expect(metOf([sure, sure])).toBe('Meets both, surely.');
    expect(metOf([sure, open])).toBe('Meets both, one of them surely.');
    expect(metOf([sure, sure, sure])).toBe('Meets all 3, surely.');
    expect(metOf([sure, sure, open])).toBe('Meets all 3, 2 of them surely.');
    expect(metOf([open, open, open, open])).toBe('Meets all 4, none of it surely.');
  });

  it('names each circle that is not counted once', () => {
    const covered = limit(false, { without: ['sharp'] });
    expect(metOf([covered, covered])).toBe(
      'Meets both, none of it surely. How sharp the relay is off the axis is not known, and not counted.',
    );
    expect(metOf([sure, limit(false, { without: ['corrected', 'sharp'] })])).toBe(
      'Meets both, one of them surely. How far the objective stays corrected and how sharp the relay is off the axis is not known, and not counted.',
    );
  });
});

describe('the line of a choice', () => {
  it('says what bites, and whether it stands on the frontier or ties, where it does', () => {
    const bites = limit(true, { value: 180 });
    const plain = { limits: [sure], bites: undefined, onFrontier: false, tie: false };
    const met = 'Meets what is asked, surely.';
    const tightest = 'Tightest: length, 180 mm where 200 mm is the limit.';
    expect(lineOf(plain)).toBe(met);
    expect(lineOf({ ...plain, bites })).toBe(`${met} ${tightest}`);
    expect(lineOf({ ...plain, onFrontier: true })).toBe(
      `${met} None here is better in one of the figures picked without being worse in another.`,
    );
    expect(lineOf({ ...plain, bites, tie: true })).toBe(`${met} ${tightest} A tie on paper with the one before: photograph both.`);
  });

  it('tells a price in its own numbers', () => {
    const { figure: _, ...price } = limit(true, { name: 'price', value: 1234.5, limit: 1250.25 });
    expect(bitesOf(price)).toBe('Tightest: price, 1234.5 where 1250.25 is the limit.');
    expect([nameOfLimit('price'), nameOfLimit('length'), nameOfLimit('cornerLight')]).toEqual(['price', 'length', 'light in the corners']);
    expect(toldIn({}, 1234567)).toBe('1234570');
  });
});

describe('an amount beside another', () => {
  it('has three digits, and as many more as tell the two apart', () => {
    const length = (value: number, beside?: number) => amountOf({ figure: 'totalLengthMm' }, value, beside);
    expect(length(200.04)).toBe('200 mm');
    expect(length(200.44, 200)).toBe('200.4 mm');
    expect(length(200.044, 200)).toBe('200.04 mm');
    expect(length(200.004, 200)).toBe('200.004 mm');
    // Nearer than six digits tell it reads the same.
    expect(length(200.0004, 200)).toBe('200 mm');
    expect(length(180, 200)).toBe('180 mm');
    expect(length(200, 200)).toBe('200 mm');
    expect(length(200.04, 200.04)).toBe('200 mm');
  });
  it('of a share is a percentage', () => {
    const share = (value: number, beside?: number) => amountOf({ figure: 'coveredShare' }, value, beside);
    expect(share(0.8)).toBe('80 %');
    expect(share(0.8049, 0.8)).toBe('80.49 %');
    expect(share(0.80004, 0.8)).toBe('80.004 %');
    expect(share(0.7, 0.8)).toBe('70 %');
  });
});
