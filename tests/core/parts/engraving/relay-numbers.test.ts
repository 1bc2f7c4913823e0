import { describe, expect, it } from 'vitest';
import { readRelay } from '../../../../core/engravings.ts';
import type { Relay } from '../../../../core/index.ts';
import { type Bare, bareIn, meaningsOf } from '../../../../core/parts/engraving/relay-numbers.ts';

/** What bare numbers can mean beside what is told, at the borders of what a relay can be. */

const n = (value: number, more: Partial<Bare> = {}): Bare => ({ value, typed: String(value), at: 0, mm: false, f: '', ...more });
const mm = (value: number) => n(value, { mm: true });
const f = (value: number) => n(value, { f: 'f' });

const SHORT = { supplementary: 'close-up', 'camera-lens': 'camera', 'tube-lens': 'tube' } as const;
const brief = ({ kind, powerDioptre: P, focalLengthMm: length, fNumber: N, maleThread: thread }: Partial<Relay>): string =>
  [kind && SHORT[kind], P && `${P} D`, length && `${length} mm`, N && `f/${N}`, thread?.replace(' x 0.75', ' thread')]
    .filter(Boolean)
    .join(' ');
const means = (told: Partial<Relay>, ...numbers: Bare[]): string[] => meaningsOf(told, numbers).meanings.map(({ part }) => brief(part));
const used = (told: Partial<Relay>, ...numbers: Bare[]): number[] => meaningsOf(told, numbers).used.map(({ value }) => value);
const CLOSE_UP = { kind: 'supplementary' } as const;
const CAMERA = { kind: 'camera-lens' } as const;
const TUBE = { kind: 'tube-lens' } as const;
const lengths = (x: number) => [`close-up ${x} mm`, `camera ${x} mm`, `tube ${x} mm`];

describe('one bare number', () => {
  it('is a power below 25, and from there a thread up to 127 mm or a length', () => {
    expect(means({}, n(24.9))).toEqual(['close-up 24.9 D']);
    expect(means({}, n(25))).toEqual(['close-up 25 thread', ...lengths(25)]);
    expect(means({}, n(127))).toEqual(['close-up 127 thread', ...lengths(127)]);
    expect(means({}, n(128))).toEqual(lengths(128));
  });
  it('is a length from 5 mm on where it is said to be one', () => {
    expect(means({}, mm(5))).toEqual(lengths(5));
    expect(means({}, mm(4.9))).toEqual([]);
    expect(means({}, n(5, { f: 'f=' }))).toEqual(lengths(5));
  });
  it('after an f alone may be the f-number, from 0.7 to 32', () => {
    expect([0.69, 0.7, 4].map((x) => means({}, f(x)))).toEqual([[], ['camera f/0.7'], ['camera f/4']]);
    expect(means({}, f(32))).toEqual(['camera f/32', ...lengths(32)]);
    expect(means({}, f(33))).toEqual(lengths(33));
    expect(means({}, n(8, { f: 'f', mm: true }))).toEqual(lengths(8));
    expect(means({}, n(8, { f: 'f=' }))).toEqual(lengths(8));
    expect(means(CAMERA, f(8))).toEqual(['camera f/8', 'camera 8 mm']);
    expect(means({ ...CAMERA, fNumber: 4 }, f(8))).toEqual(['camera 8 mm']);
    expect(means(TUBE, f(8))).toEqual(['tube 8 mm']);
  });
  it('is what the kind that is told leaves of it', () => {
    expect([means(CLOSE_UP, n(10)), means(CAMERA, n(10)), means(TUBE, n(10))]).toEqual([
      ['close-up 10 D'],
      ['camera 10 mm'],
      ['tube 10 mm'],
    ]);
    expect([means(CAMERA, n(5)), means(CAMERA, n(4.9)), means(TUBE, n(4.9))]).toEqual([['camera 5 mm'], [], []]);
    expect(means(CLOSE_UP, n(58))).toEqual(['close-up 58 thread', 'close-up 58 mm']);
    expect(means({ ...CLOSE_UP, maleThread: '58 x 0.75' }, n(52))).toEqual(['close-up 52 mm']);
    expect(means(CAMERA, n(58))).toEqual(['camera 58 mm']);
    expect(means({ ...CLOSE_UP, fNumber: 4 }, n(10))).toEqual(['close-up 10 mm']);
  });
  it('is typed so that it means nothing else, with the kind where that is not told', () => {
    const texts = (told: Partial<Relay>, one: Bare) => meaningsOf(told, [one]).meanings.map(({ text }) => text);
    expect(texts({}, n(58))).toEqual(['close-up 58 x 0.75', 'close-up f 58 mm', 'camera lens f 58 mm', 'tube lens f 58 mm']);
    expect(texts(CLOSE_UP, n(58))).toEqual(['58 x 0.75', 'f 58 mm']);
  });
  it('beside a power or a length with its f-number is the thread, and beside a length alone nothing', () => {
    const thread = ['58 thread'];
    expect(means({ powerDioptre: 5 }, n(58))).toEqual(thread);
    expect(means({ focalLengthMm: 200, fNumber: 4 }, n(58))).toEqual(thread);
    for (const told of [
      { focalLengthMm: 200 },
      { focalLengthRangeMm: [70, 200] as [number, number] },
      { focalLengthRangeMm: [70, 200] as [number, number], fNumber: 4 },
      { powerDioptre: 5, maleThread: '58 x 0.75' },
    ])
      expect([means(told, n(58)), used(told, n(58))], JSON.stringify(told)).toEqual([[], []]);
    expect([means({ powerDioptre: 5 }, n(24)), means({ powerDioptre: 5 }, n(128))]).toEqual([[], []]);
    expect(means({})).toEqual([]);
  });
});

describe('an f-number beside other numbers', () => {
  it('is one beside a length that is told or may be told', () => {
    expect(means({ focalLengthMm: 200 }, f(4))).toEqual(['camera f/4']);
    expect(means({ focalLengthRangeMm: [70, 200] }, f(4))).toEqual(['camera f/4']);
    expect(means({}, n(200), f(4))).toEqual(['camera 200 mm f/4']);
    expect(means(TUBE, n(200), f(4))).toEqual(['tube 200 mm f/4']);
    expect(used({}, n(200), f(4))).toEqual([200, 4]);
    expect(means({ focalLengthMm: 200 }, f(4), n(77))).toEqual(['camera f/4 77 thread']);
    expect(meaningsOf({}, [n(200), f(4)]).meanings[0]?.text).toBe('f 200 mm f/4');
  });
  it('is none beside another one, nor beyond what f-numbers are', () => {
    expect(means({ focalLengthMm: 200, fNumber: 4 }, f(8))).toEqual([]);
    expect(means({ focalLengthMm: 200 }, f(33))).toEqual([]);
  });
});

describe('two bare numbers', () => {
  it('are power and thread, power and its length, length and f-number, in either order', () => {
    expect(means({}, n(5), n(58))).toEqual(['close-up 5 D 58 thread', 'camera 58 mm f/5']);
    expect(means({}, n(58), n(5))).toEqual(['close-up 5 D 58 thread', 'camera 58 mm f/5']);
    expect(means(CLOSE_UP, n(5), n(58))).toEqual(['close-up 5 D 58 thread']);
    expect(means(CAMERA, n(5), n(58))).toEqual(['camera 58 mm f/5']);
    expect(means({}, n(4), n(135))).toEqual(['camera 135 mm f/4']);
    expect(used({}, n(5), n(58), n(77))).toEqual([5, 58]);
  });
  it('are power and its length where both agree to 1 %', () => {
    expect([used(CLOSE_UP, n(5), n(201.9)), used(CLOSE_UP, n(5), n(202.1))]).toEqual([[5, 201.9], [5]]);
    expect([used(CLOSE_UP, n(5), n(198.1)), used(CLOSE_UP, n(5), n(197.9))]).toEqual([[5, 198.1], [5]]);
    expect(means({}, n(5), n(200))).toEqual(['close-up 5 D', 'camera 200 mm f/5']);
    expect(means(CAMERA, n(5), n(200))).toEqual(['camera 200 mm f/5']);
    // A length in mm is no power, even one whose reciprocal would fit.
    expect(means(CLOSE_UP, mm(20), n(50))).toEqual(['close-up 20 mm']);
  });
  it('have no second thread and no second f-number', () => {
    expect(means({ ...CLOSE_UP, maleThread: '52 x 0.75' }, n(5), n(58))).toEqual(['close-up 5 D']);
    expect(means({ ...CAMERA, fNumber: 2.8 }, n(4), n(135))).toEqual([]);
    expect(means({ ...CLOSE_UP, fNumber: 4 }, n(5), n(200))).toEqual(['close-up 5 mm']);
  });
  it('are a length and a thread, either way where both could be', () => {
    const ways = (kind: string) => [`${kind} 77 mm 58 thread`, `${kind} 58 mm 77 thread`];
    expect(means({}, n(58), n(77))).toEqual([...ways('close-up'), ...ways('camera')]);
    expect(means(CAMERA, n(58), n(200))).toEqual(['camera 200 mm 58 thread']);
    expect(means(CAMERA, n(77), n(58))).toEqual(ways('camera'));
    expect(means(TUBE, n(58), n(77))).toEqual(['tube 58 mm']);
    expect(means({ ...CLOSE_UP, maleThread: '52 x 0.75' }, n(58), n(200))).toEqual(['close-up 58 mm']);
    expect(means(CLOSE_UP, n(130), n(200))).toEqual(['close-up 130 mm']);
    expect(meaningsOf({}, [n(58), n(200)]).meanings.map(({ text }) => text)).toEqual(
      ['close-up', 'camera lens'].map((kind) => `${kind} f 200 mm 58 x 0.75`),
    );
    expect(meaningsOf(CAMERA, [n(58), n(200)]).meanings[0]?.text).toBe('f 200 mm 58 x 0.75');
  });
  it('below 25 are no length, and a small length no f-number', () => {
    expect(means(CAMERA, n(24), n(30))).toEqual(['camera 30 mm f/24']);
    expect(means(CAMERA, n(25), n(300))).toEqual(['camera 300 mm 25 thread']);
    expect(means(CAMERA, n(4), n(20))).toEqual([]);
  });
});

describe('bare numbers in a line', () => {
  it('keep what stands about them', () => {
    expect(bareIn('f = 200 f 4 58 mm, 5').numbers).toEqual([
      { value: 200, typed: 'f = 200', at: 0, mm: false, f: 'f=' },
      { value: 4, typed: 'f 4', at: 8, mm: false, f: 'f' },
      { value: 58, typed: '58 mm', at: 12, mm: true, f: '' },
      { value: 5, typed: '5', at: 19, mm: false, f: '' },
    ]);
    expect(bareIn('a 5 b').rest).toBe('a   b');
  });
});

describe('a line of a relay at its borders', () => {
  const part = (text: string) => brief(readRelay(text).part);
  it('reads an older lens as length over f-number only within what lenses are', () => {
    expect([part('135/0.7'), part('135/32'), part('5/4'), part('33/32')]).toEqual([
      'camera 135 mm f/0.7',
      'camera 135 mm f/32',
      'camera 5 mm f/4',
      'camera 33 mm f/32',
    ]);
    for (const text of ['135/0.6', '135/33', '4.9/4', '8/8', 'close-up 200/4'])
      expect([text, readRelay(text).part.fNumber]).toEqual([text, undefined]);
  });
  it('reads a zoom that runs forward', () => {
    expect(readRelay('70-200 mm').part.focalLengthRangeMm).toEqual([70, 200]);
    expect([readRelay('200-200 mm').part.focalLengthRangeMm, readRelay('200-70 mm').part.focalLengthRangeMm]).toEqual([
      undefined,
      undefined,
    ]);
  });
  it('takes a lens of a power for a close-up lens, unless it says otherwise', () => {
    expect([part('5 D'), part('tube lens 5 D'), readRelay('58 x 0.75').part.kind]).toEqual(['close-up 5 D', 'tube 5 D', undefined]);
  });
  it('asks what a lens of a length is, and what stands across it where threads are so wide', () => {
    const asks = (text: string) =>
      readRelay(text).asks.map(({ question, answers }) => [question, ...answers.map((answer) => answer.words)]);
    expect(asks('tube lens 180 mm')).toEqual([]);
    expect(asks('f 200 mm')[0]).toHaveLength(4);
    for (const across of [37, 39, 40.5, 43, 46, 49, 52, 55, 58, 62, 67, 72, 77, 82, 86, 95, 105, 112])
      expect(asks(`5 D Ø ${across}`)).toEqual([[`what ‘Ø ${across}’ is`, `${across} mm: its thread`, `${across} mm: its clear opening`]]);
    for (const text of ['5 D Ø 54', '5 D 52 x 0.75 Ø 58', '200 mm f/4 M52 Ø 58', 'tube lens 200 mm Ø 58', '5 D clear 58'])
      expect([text, asks(text)]).toEqual([text, []]);
    expect([readRelay('5 D Ø 58').part.clearApertureMm, readRelay('5 D Ø 54').part.clearApertureMm]).toEqual([undefined, 54]);
  });
});
