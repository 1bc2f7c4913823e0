import { describe, expect, it } from 'vitest';
import { startOf, wishIn, wishTo } from '../../web/state/wish.ts';
import { questionOf } from '../../web/subject/asked.ts';
import { spacesFrom } from '../../web/subject/spaces-read.ts';
import { OPENING } from './a-choice.ts';

describe('the wish in the address', () => {
  const start = startOf(OPENING);
  it('comes back as it was', () => {
    const { sensor } = OPENING;
    for (const wish of [
      start,
      { ...start, sensor, objectives: 'owned' as const, relays: 'pairing' as const, infinitySpacesMm: [45] },
      {
        ...start,
        sort: { by: 'price' as const, first: 'greatest' as const },
        frontier: ['totalLengthMm' as const, 'coveredShare' as const],
      },
    ])
      expect(wishIn(wishTo(wish))).toEqual({ wish });
  });
  it('is refused in words where it is none', () => {
    const text = (value: unknown): string => `1.${Buffer.from(JSON.stringify(value)).toString('base64url')}`;
    const fault = (given: string): string => wishIn(given).fault ?? '';
    expect(fault('')).toBe('it holds none');
    expect(fault('2.e30')).toBe('it comes from another version of this page');
    expect(fault('1.%%%')).toBe('it is cut short or damaged');
    expect(fault(wishTo(start).slice(0, 60))).toBe('it is cut short or damaged');
    expect(fault(`1.${'A'.repeat(20_000)}`)).toBe('it is far too long');
    for (const broken of [
      null,
      [],
      7,
      { ...start, more: 1 },
      { ...start, want: { finestDetailUm: -1 } },
      { ...start, want: { finestDetailUm: Number.NaN } },
      { ...start, frontier: ['goodFieldMm'] },
      { ...start, frontier: ['goodFieldMm', 'goodFieldMm'] },
      { ...start, frontier: ['goodFieldMm', '__proto__'] },
      { ...start, infinitySpacesMm: [] },
      { ...start, infinitySpacesMm: Array.from({ length: 9 }, (_, i) => i) },
      { ...start, sort: { by: 'constructor', first: 'least' } },
      { ...start, objectives: 'everything' },
    ])
      expect(fault(text(broken)), JSON.stringify(broken)).not.toBe('');
  });
  it('starts from the subject of the pairing', () => {
    expect(start.want).toEqual({ subject: { widthMm: 0.9, heightMm: 1.6, depthMm: 0.4 } });
    const { subject: _, ...bare } = OPENING;
    expect(startOf(bare).want).toEqual({});
    expect(startOf({ ...OPENING, subject: { heightMm: 3 } }).want).toEqual({ subject: { widthMm: 3, heightMm: 3 } });
  });
});

describe('the parts that are chosen from', () => {
  const { objective, relay } = OPENING;
  const own = (owned: boolean, price?: number) => ({ owned, version: 1, ...(price === undefined ? {} : { price }) });
  const shelf = {
    objectives: [
      { id: 'mine', part: objective, own: own(true) },
      { id: 'dear', part: objective, own: own(false, 900) },
      { id: 'listed', part: objective },
    ],
    relays: [{ id: 'any', part: relay }],
  };
  const start = startOf(OPENING);
  it('are all, those that are owned, or the pairing’s alone, each with what it still costs', () => {
    const all = questionOf(start, shelf, OPENING);
    if (typeof all === 'string') throw new Error(all);
    expect(all.asked.objectives.map(({ id, owned, price }) => [id, owned, price])).toEqual([
      ['mine', true, undefined],
      ['dear', undefined, 900],
      ['listed', undefined, undefined],
    ]);
    expect(all.more?.relays).toHaveLength(1);
    const mine = questionOf({ ...start, objectives: 'owned' }, shelf, OPENING);
    expect(typeof mine === 'string' ? mine : mine.asked.objectives.map(({ id }) => id)).toEqual(['mine']);
    expect(questionOf({ ...start, relays: 'owned' }, shelf, OPENING)).toBe('no relay');
    const here = questionOf({ ...start, objectives: 'pairing', relays: 'pairing' }, undefined, OPENING);
    expect(typeof here === 'string' ? here : here.asked.objectives).toEqual([{ part: objective, owned: true }]);
    expect(typeof here === 'string' ? here : here.more).toBeUndefined();
    expect(questionOf(start, { objectives: [], relays: [] }, OPENING)).toBe('no objective');
    const many = Array.from({ length: 300 }, (_, i) => ({ id: `r${i}`, part: relay }));
    expect(questionOf(start, { objectives: many.map(({ id }) => ({ id, part: objective })), relays: many }, OPENING)).toBe('too many');
  });
  it('stand at spacings that are typed as a line', () => {
    expect(spacesFrom('30, 60, 90')).toEqual({ spaces: [30, 60, 90] });
    expect(spacesFrom(' 30 or 45.5 mm;45.5')).toEqual({ spaces: [30, 45.5] });
    for (const [text, words] of [
      ['', 'Put in one length'],
      ['30, far', '‘far’ is no length'],
      ['-3', '‘-3’ is no length'],
      ['1 2 3 4 5 6 7 8 9', '9 lengths are too many'],
      ['99999', 'Put in lengths from 0 to 2000 mm'],
    ] as const)
      expect(spacesFrom(text).fault, text).toContain(words);
  });
});
