import { describe, expect, it } from 'vitest';
import { inSentence, PRAISED } from '../../../core/choose/compared.ts';
import { letters } from '../../../core/choose/praise.ts';
import { type Answer, COMPARED, type ComparedId, praiseOf, rowsOf } from '../../../core/index.ts';

type Known = Extract<Answer, { state: 'known' }>;
const known = (value: number, low = value, high = value, unit: Known['unit'] = 'mm'): Known => ({
  state: 'known',
  value,
  unit,
  low,
  high,
  origin: 'marked',
});
const unknown: Answer = { state: 'unknown', unit: 'mm', missing: [] };

/** A number, an interval, or nothing that is known, of each pairing. */
type Told = number | readonly [low: number, high: number] | 'not known';
const answerOf = (told: Told): Answer =>
  told === 'not known' ? unknown : typeof told === 'number' ? known(told) : known((told[0] + told[1]) / 2, ...told);

/** The sentences of so many pairings that differ in these figures alone. */
function said(count: number, figures: Partial<Record<ComparedId, readonly Told[]>>, otherwise: Told = 1): string[] {
  const of = (place: number): Record<ComparedId, Answer> =>
    Object.fromEntries(COMPARED.map((id) => [id, answerOf(figures[id]?.[place] ?? otherwise)])) as Record<ComparedId, Answer>;
  const answers = Array.from({ length: count }, (_, place) => of(place));
  const less = (a: Answer, b: Answer): Answer =>
    a.state === 'known' && b.state === 'known'
      ? known(a.value - b.value, (a.low as number) - (b.high as number), (a.high as number) - (b.low as number))
      : unknown;
  return praiseOf(
    rowsOf({
      answers,
      difference: (from, of) => {
        const [a, b] = [answers[from], answers[of]] as [Record<ComparedId, Answer>, Record<ComparedId, Answer>];
        return Object.fromEntries(COMPARED.map((id) => [id, less(b[id], a[id])])) as Record<ComparedId, Answer>;
      },
    }),
  );
}

describe('the letters of several', () => {
  it('are listed, three and more in a row as one', () => {
    expect(letters([0])).toBe('A');
    expect(letters([0, 1])).toBe('A and B');
    expect(letters([0, 2])).toBe('A and C');
    expect(letters([0, 1, 2])).toBe('A to C');
    expect(letters([0, 2, 4, 5, 6, 7])).toBe('A, C and E to H');
    expect(letters([1, 3, 5])).toBe('B, D and F');
  });
});

describe('what each of several is praised for', () => {
  it('is named by what sets it apart most, four of them, and the rest counted', () => {
    // From the nearest other: lengths 3/4, field 2/3, detail 1/2, light 3/5, room 1/5, free space 1/10.
    const figures = {
      totalLengthMm: [100, 400, 500],
      objectFieldWidthMm: [30, 10, 2],
      resolvedDetailUm: [1, 2, 30],
      workingFNumber: [4, 10, 12],
      lightConeDeg: [50, 40, 1],
      clearWorkingDistanceMm: [10, 9, 0.1],
    };
    const names = (count: number): string => {
      const kept = Object.fromEntries(Object.entries(figures).slice(0, count));
      return said(3, kept)[0]?.split(' of the three')[0] as string;
    };
    const four = 'Shortest (100 mm), widest field (30 mm), most light on the sensor (f/4)';
    expect(names(4)).toBe(`${four} and finest detail (1 mm)`);
    expect(names(5)).toBe(`${four}, finest detail (1 mm) and one more`);
    expect(names(6)).toBe(`${four}, finest detail (1 mm) and two more`);
    expect(names(3)).toBe('Shortest (100 mm), widest field (30 mm) and finest detail (1 mm)');
  });

  it('is how far the nearest other is, whatever the sign', () => {
    // The working distances are half apart, the lengths three fifths.
    const [first] = said(2, { clearWorkingDistanceMm: [-5, -10], totalLengthMm: [40, 100] });
    expect(first).toMatch(/^Shortest \(40 mm\) and most free space to the subject \(−5 mm\) of the two/);
    const [other] = said(2, { clearWorkingDistanceMm: [-5, -10], totalLengthMm: [60, 100] });
    expect(other).toMatch(/^Most free space to the subject \(−5 mm\) and shortest \(60 mm\) of the two/);
  });

  it('is never the depth of a frame, which the frames tell', () => {
    expect(said(3, { depthOfFieldUm: [9, 2, 1], totalLengthMm: [1, 2, 3] })[0]).toBe('Shortest (1 mm) of the three; worst in nothing.');
    const shared = said(3, { depthOfFieldUm: [9, 9, 1], totalLengthMm: [1, 2, 3] })[0];
    expect(shared).toBe('Shortest (1 mm) of the three; worst in nothing.');
  });

  it('is both ends where it is first and last', () => {
    const [a, b] = said(2, { totalLengthMm: [1, 2], objectFieldWidthMm: [1, 3] });
    expect(a).toBe('Shortest (1 mm) of the two; narrowest field (1 mm).');
    expect(b).toBe('Widest field (3 mm) of the two; longest (2 mm).');
  });

  it('is nothing in the middle, without a tie where it ties with nobody', () => {
    expect(said(3, { totalLengthMm: [1, 2, 3] })[1]).toBe('Nowhere alone best or worst of the three.');
  });

  it('is nothing where nothing is known: that is no tie', () => {
    expect(said(2, {}, 'not known')).toEqual(['Nowhere alone best or worst of the two.', 'Nowhere alone best or worst of the two.']);
    // One figure alike and nothing else known is one.
    expect(said(2, { totalLengthMm: [1, 1] }, 'not known')[0]).toBe('A tie on paper with B: photograph both.');
    expect(said(3, { totalLengthMm: [1, 1, 2] }, 'not known')[0]).toMatch(
      /^Nowhere alone best or worst of the three; on paper a tie with B: photograph both/,
    );
    expect(praiseOf([])).toEqual([]);
  });
});

describe('a shared place', () => {
  it('is told with whom and in what, first and last', () => {
    const rows = said(4, { totalLengthMm: [1, 1, 3, 3], objectFieldWidthMm: [5, 2, 5, 2], workingFNumber: [4, 4, 8, 8] });
    expect(rows[0]).toBe(
      'Nowhere alone best or worst of the four; on paper it shares the first place with C in field, with B in f-number and length.',
    );
    expect(rows[1]).toBe(
      'Nowhere alone best or worst of the four; on paper it shares the first place with A in f-number and length, and the last place with D in field.',
    );
    expect(rows[3]).toBe(
      'Nowhere alone best or worst of the four; on paper it shares the last place with B in field, with C in f-number and length.',
    );
  });

  it('takes from who is best the word that it is worst in nothing', () => {
    const [, b] = said(3, { totalLengthMm: [1, 3, 3], objectFieldWidthMm: [3, 9, 5] });
    expect(b).toBe('Widest field (9 mm) of the three; on paper it shares the last place with C in length.');
    const [, d] = said(3, { totalLengthMm: [3, 1, 1], objectFieldWidthMm: [5, 3, 9] });
    expect(d).toBe('Narrowest field (3 mm) of the three; on paper it shares the first place with C in length.');
  });
});

describe('who is best or worst in nothing', () => {
  it('is said where both ends of every figure are settled', () => {
    expect(said(3, { totalLengthMm: [3, 2, 1] })[0]).toBe('Longest (3 mm) of the three; best in nothing.');
    expect(said(3, { totalLengthMm: [1, 2, 3] })[0]).toBe('Shortest (1 mm) of the three; worst in nothing.');
  });

  it('is not said while that end is open, and is said though the other is', () => {
    // A is level with B and C in width, and B is wider than C; D is narrowest beyond doubt, or widest.
    const three = [
      [232, 268],
      [262, 299],
      [216, 245],
    ] as const;
    const firstOpen = said(4, { objectFieldWidthMm: [...three, 10], totalLengthMm: [2, 3, 2.5, 1] });
    expect(firstOpen[1]).toBe('Longest (3 mm) of the four.');
    expect(firstOpen[0]).toMatch(/^Nowhere alone/);
    const alone = said(4, { objectFieldWidthMm: [...three, 10], totalLengthMm: [2, 1, 2.5, 3] });
    expect(alone[1]).toBe('Shortest (1 mm) of the four; worst in nothing.');
    const lastOpen = said(4, { objectFieldWidthMm: [...three, 900], totalLengthMm: [2, 1, 2.5, 3] });
    expect(lastOpen[1]).toBe('Shortest (1 mm) of the four.');
    const longest = said(4, { objectFieldWidthMm: [...three, 900], totalLengthMm: [2, 3, 2.5, 1] });
    expect(longest[1]).toBe('Longest (3 mm) of the four; best in nothing.');
  });
});

describe('a figure in a sentence', () => {
  it('is a share in words where it is all or nothing', () => {
    for (const id of ['coveredShare', 'cornerIllumination'] as const) {
      const share = (value: number): string => inSentence(id, known(value, value, value, '1'));
      expect([1, 0.9995, 0.9994, 0.5, 0.0005, 0.0004, 0].map(share)).toEqual(['all', 'all', '100 %', '50 %', '0.05 %', 'none', 'none']);
      // A hundredth more than all that reads as all does not count for it.
      expect(share(1.005)).toBe('all');
    }
  });
  it('has the digits that it earns, three at most, and its unit', () => {
    expect(inSentence('totalLengthMm', known(212.34))).toBe('212 mm');
    expect(inSentence('totalLengthMm', known(212.34, 190, 234))).toBe('212 mm');
    expect(inSentence('totalLengthMm', known(212.34, 112, 312))).toBe('210 mm');
    expect(inSentence('totalLengthMm', known(1234))).toBe('1230 mm');
    expect(inSentence('workingFNumber', known(11.3, 11.3, 11.3, '1'))).toBe('f/11.3');
    expect(inSentence('lightConeDeg', known(30, 30, 30, '°'))).toBe('30°');
    expect(inSentence('framesForSubject', known(120, 120, 120, '1'))).toBe('120');
  });
  it('is praised where one way is better and no other figure says the same', () => {
    expect(PRAISED).toHaveLength(10);
    for (const id of ['systemMagnification', 'samplingRatio', 'depthOfFieldUm']) expect(PRAISED).not.toContain(id);
  });
});
