import { describe, expect, it } from 'vitest';
import { missOf } from '../../../../core/table/threads/miss.ts';
import { minorDiameter, sameThread, type Thread } from '../../../../core/table/threads/thread.ts';

const thread = (diameterMm: number, pitchMm = 0.75, angleDeg: 55 | 60 = 60): Thread => ({
  label: `${diameterMm} x ${pitchMm}`,
  diameterMm,
  pitchMm,
  angleDeg,
});
const miss = (male: Thread, female: Thread) => missOf({ thread: male, sex: 'male' }, { thread: female, sex: 'female' });
const both = (a: Thread, b: Thread) => missOf({ thread: a, sex: 'male' }, { thread: b, sex: 'male' });

describe('threads of other pitches', () => {
  // 0.07 mm of play are used up within a turn, after two turns, or after more.
  it.each([
    [0.2, 0.1, 'within the first turn'],
    [0.14, 0.07, 'after a turn or two'],
    [0.07, 0.035, 'after a turn or two'],
    [0.07 / 3, (2 * 0.07) / 3, 'after a few turns'],
    [0.04, 0.02, 'after a few turns'],
    [0.75, 0.74, 'after a few turns'],
  ])('of %f and %f mm bind %s', (a, b, when) => expect(miss(thread(25, a), thread(25, b))?.words()).toContain(`start and bind ${when}`));

  it('are told as such where the widths are the same to five thousandths', () => {
    expect(miss(thread(25, 1), thread(25.0049, 0.75))?.kind).toBe('pitch');
    expect(miss(thread(25, 1), thread(25.00502, 0.75))?.kind).toBe('does not hold');
  });
});

describe('threads of other widths', () => {
  it('are not mistaken for each other from more than 6 mm on', () => {
    expect(miss(thread(58), thread(52))?.kind).toBe('does not enter');
    expect(miss(thread(52), thread(58))?.kind).toBe('drops through');
    expect(miss(thread(58), thread(51.5))?.kind).toBe('unlike');
  });
  it('drop through where the male one is as narrow as the female one is open', () => {
    const female = thread(25);
    const open = minorDiameter(female);
    expect(miss(thread(open), female)?.kind).toBe('drops through');
    expect(miss(thread(open + 0.01), female)?.kind).toBe('does not hold');
  });
});

it('is nearest where only a ring of the same thread is missing, then by how far apart two threads are', () => {
  const M25 = thread(25);
  const ranks = [
    both(M25, M25),
    miss(thread(25, 1), M25),
    miss(thread(25, 0.75, 55), M25),
    miss(thread(24.5), M25),
    miss(thread(25.6), M25),
    miss(thread(24), M25),
    miss(thread(26.5), M25),
    miss(thread(20), M25),
    miss(thread(32), M25),
    miss(thread(35), M25),
    both(M25, thread(58)),
  ].map((one) => one?.rank as number);
  expect(ranks.map((rank) => Number(rank.toFixed(9)))).toEqual([0, 1, 1, 1.5, 1.6, 2, 2.5, 6, 17, 20, 100]);
});

describe('a thread by its measures', () => {
  it('is the same to a hundredth of a millimetre of width and a thousandth of pitch', () => {
    expect(sameThread(thread(25.006), thread(25.01))).toBe(true);
    expect(sameThread(thread(25.0149), thread(25.01))).toBe(true);
    expect(sameThread(thread(25.004), thread(25.01))).toBe(false);
    expect(sameThread(thread(25, 0.7499), thread(25, 0.75))).toBe(true);
    expect(sameThread(thread(25, 0.7492), thread(25, 0.75))).toBe(false);
  });
  it('leaves open what its depth on both sides does not take', () => {
    // 1 mm of pitch: the sharp triangle is 0.8660 high, 5/8 of it the thread; of Whitworth's 0.640327.
    expect(minorDiameter(thread(42, 1))).toBeCloseTo(42 - 1.0825, 4);
    expect(minorDiameter(thread(20.32, 25.4 / 36, 55))).toBeCloseTo(19.4164, 4);
  });
});
