import { describe, expect, it } from 'vitest';
import { limitAnswers } from '../../../core/choose/limit-answers.ts';
import type { Want } from '../../../core/choosing.ts';
import type { Answer, FigureId } from '../../../core/index.ts';

const known = (value: number, low = value, high = value): Answer => ({ state: 'known', value, unit: 'mm', low, high, origin: 'marked' });
const circles = { correctedCircleMm: known(33), litCircleMm: { state: 'unlimited', unit: 'mm' }, sharpCircleMm: known(40) } as const;
const FREE = { known: 0, missing: [] };
type Answers = Partial<Record<FigureId, Answer>>;
const one = (want: Want, answers: Answers) => {
  const told = limitAnswers(want, { ...circles, ...answers }, FREE);
  expect(told).toHaveLength(1);
  return told[0];
};

describe('how a limit fares', () => {
  const length = (answer: Answer) => one({ maxLengthMm: 200 }, { totalLengthMm: answer });

  it('is met or missed by a part of itself, surely where its ± say so as well', () => {
    const base = { name: 'length', figure: 'totalLengthMm', state: 'known', limit: 200 };
    expect(length(known(150, 140, 160))).toEqual({ ...base, value: 150, margin: 0.25, meets: true, surely: true });
    expect(length(known(150, 140, 201))).toEqual({ ...base, value: 150, margin: 0.25, meets: true, surely: false });
    expect(length(known(250, 240, 260))).toEqual({ ...base, value: 250, margin: -0.25, meets: false, surely: true });
    expect(length(known(250, 199, 260))).toEqual({ ...base, value: 250, margin: -0.25, meets: false, surely: false });
    // What is known of one side alone.
    expect(length(known(250, 199, 201))).toMatchObject({ meets: false, surely: false });
    const near = one({ minWorkingDistanceMm: 20 }, { clearWorkingDistanceMm: known(30, 10, 40) });
    expect(near).toMatchObject({ name: 'workingDistance', margin: 0.5, meets: true, surely: false });
  });

  it('is met by what has no limit, without a number', () => {
    const answer = one({ minWorkingDistanceMm: 20 }, { clearWorkingDistanceMm: { state: 'unlimited', unit: 'mm' } });
    expect(answer).toEqual({
      name: 'workingDistance',
      figure: 'clearWorkingDistanceMm',
      state: 'unlimited',
      limit: 20,
      meets: true,
      surely: true,
    });
    expect(Object.keys(answer as object)).not.toContain('value');
  });

  it('is not met by what is not known, nor by what there is not: of that one is sure', () => {
    const unknown = length({ state: 'unknown', unit: 'mm', missing: ['/relay/rimToSensorMm'] });
    expect(unknown).toEqual({
      name: 'length',
      figure: 'totalLengthMm',
      state: 'unknown',
      limit: 200,
      meets: false,
      surely: false,
      missing: ['/relay/rimToSensorMm'],
    });
    const none = length({ state: 'none', unit: 'mm', why: 'there is none' });
    expect(none).toEqual({ name: 'length', figure: 'totalLengthMm', state: 'none', limit: 200, meets: false, surely: true });
  });
});

describe('a limit on what the circles cover', () => {
  const unknown: Answer = { state: 'unknown', unit: 'mm', missing: ['/objective/fieldNumberMm'] };
  const covered = (answers: Answers, value = 0.9) => one({ minCoveredShare: 0.8 }, { coveredShare: known(value), ...answers });

  it('is surely met where all circles are known, or without limit', () => {
    const answer = covered({});
    expect(answer).toMatchObject({ meets: true, surely: true });
    expect(answer).not.toHaveProperty('without');
  });

  it('is not surely met while a circle is not known, and surely missed nevertheless', () => {
    expect(covered({ correctedCircleMm: unknown })).toMatchObject({ meets: true, surely: false, without: ['corrected'] });
    expect(covered({ sharpCircleMm: unknown, litCircleMm: unknown })).toMatchObject({ surely: false, without: ['lit', 'sharp'] });
    expect(covered({ sharpCircleMm: { state: 'none', unit: 'mm', why: 'there is none' } })).toMatchObject({ without: ['sharp'] });
    expect(covered({ correctedCircleMm: unknown }, 0.7)).toMatchObject({ meets: false, surely: true, without: ['corrected'] });
  });

  it('alone counts them: any other limit is sure without', () => {
    const length = one({ maxLengthMm: 200 }, { totalLengthMm: known(150), correctedCircleMm: unknown });
    expect(length).toMatchObject({ meets: true, surely: true });
    expect(length).not.toHaveProperty('without');
  });
});

describe('a budget', () => {
  const budget = (maxPrice: number, price: Parameters<typeof limitAnswers>[2]) => limitAnswers({ maxPrice }, {}, price);

  it('is a limit of no figure, told last; none is told where none is set', () => {
    expect(limitAnswers({}, {}, FREE)).toEqual([]);
    const both = limitAnswers({ maxLengthMm: 200, maxPrice: 100 }, { ...circles, totalLengthMm: known(150) }, FREE);
    expect(both.map(({ name }) => name)).toEqual(['length', 'price']);
  });

  it('is judged by what is known of the price, surely where all is known or it is too much already', () => {
    const told = { name: 'price', limit: 400 };
    expect(budget(400, { known: 300, missing: [] })).toEqual([
      { ...told, state: 'known', value: 300, margin: 0.25, meets: true, surely: true },
    ]);
    expect(budget(400, { known: 300, missing: ['relay'] })).toEqual([
      { ...told, state: 'unknown', value: 300, margin: 0.25, meets: true, surely: false },
    ]);
    expect(budget(400, { known: 500, missing: ['relay'] })).toEqual([
      { ...told, state: 'unknown', value: 500, margin: -0.25, meets: false, surely: true },
    ]);
    expect(budget(400, { known: 500, missing: [] })).toEqual([
      { ...told, state: 'known', value: 500, margin: -0.25, meets: false, surely: true },
    ]);
  });
});
