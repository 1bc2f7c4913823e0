import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endSchema } from '../../../../core/table/threads/adapter.ts';
import { KNOWN_THREADS, USUAL_THREADS } from '../../../../core/table/threads/known.ts';
import { bindsAfter, missOf } from '../../../../core/table/threads/miss.ts';
import { readThread } from '../../../../core/table/threads/read.ts';
import { type End, mates, type Sex, sameThread, type Thread } from '../../../../core/table/threads/thread.ts';

const read = (text: string): Thread => {
  const found = readThread(text);
  if ('fault' in found) throw new Error(`${text} ${found.fault}`);
  return found.thread;
};
const end = (text: string, sex: Sex): End => ({ thread: read(text), sex });

describe('a thread as people write it', () => {
  it.each([
    ['M25', 'M25 x 0.75'],
    ['25 x 0.75', 'M25 x 0.75'],
    ['m25×0,75', 'M25 x 0.75'],
    ['58', 'M58 x 0.75'],
    ['58 mm', 'M58 x 0.75'],
    ['40.5', 'M40.5 x 0.5'],
    ['RMS', 'RMS'],
    ['RMS (0.8 in x 36 TPI)', 'RMS'],
    ['W 0.8" x 1/36"', 'RMS'],
    ['W 20.32 x 1/36″', 'RMS'],
    ['M26-36TPI', 'M26 x 36 TPI'],
    ['M26 x 36 TPI', 'M26 x 36 TPI'],
    ['26 x 0.7056', 'M26 x 36 TPI'],
    ['C', 'C (1 in x 32 TPI)'],
    ['C-mount', 'C (1 in x 32 TPI)'],
    ['1-32 UN 2A', 'C (1 in x 32 TPI)'],
    ['T', 'M42 x 0.75'],
    ['M42 x 1', 'M42 x 1'],
    ['60 x 0.75', 'M60 x 0.75'],
  ])('%s is %s', (text, label) => expect(read(text).label).toBe(label));

  it('asks what is meant by a seat that is not where its thread has it, and by a sex that is written otherwise', () => {
    expect(readThread('CS')).toMatchObject({ fault: expect.stringContaining('5 mm nearer') });
    expect(readThread('C')).toMatchObject({ thread: { diameterMm: 25.4 } });
    const end = (thread: string, sex: Sex) => endSchema.safeParse({ thread, sex });
    expect(end('RMS female', 'female').success).toBe(true);
    expect(end('RMS female', 'male').error?.issues[0]).toMatchObject({
      path: ['sex'],
      message: 'is male, and the thread is written as female',
    });
  });

  it('tells its sex where it is said', () => {
    expect(readThread('female M25')).toMatchObject({ sex: 'female', thread: { diameterMm: 25 } });
    expect(readThread('58 male')).toMatchObject({ sex: 'male', thread: { diameterMm: 58 } });
    expect(readThread('58')).not.toHaveProperty('sex');
  });

  it.each([
    ['M26', /M26 x 36 TPI or M26 x 0.75, which do not screw together/],
    ['M42', /M42 x 0.75 or M42 x 1/],
    ['M39', /M39 x 26 TPI or M39 x 1 or M39 x 0.75/],
    ['26 x 0.7', /near that of M26 x 36 TPI/],
    ['60', /its pitch is needed/],
    ['49-52', /a pitch of 52 mm/],
    ['4000 x 0.75', /4000 mm wide/],
    ['10 x 3', /a pitch of 3 mm at 10 mm/],
    ['bayonet', /names no thread/],
    ['', /names no thread/],
  ])('%s is asked about', (text, fault) => {
    const found = readThread(text);
    expect('fault' in found && found.fault).toMatch(fault);
    expect('fault' in found && found.expected.length).toBeGreaterThan(5);
  });

  it('is read back from its own label, each known thread by itself', () => {
    for (const known of KNOWN_THREADS) expect(sameThread(read(known.label), known), known.label).toBe(true);
    expect(new Set(KNOWN_THREADS.map(({ label }) => label)).size).toBe(KNOWN_THREADS.length);
    for (const { origin, use } of KNOWN_THREADS) expect(`${origin} ${use}`).toMatch(/memory|without source/);
    expect(USUAL_THREADS.length).toBeGreaterThanOrEqual(30);
  });

  it('never throws, whatever is typed', () => {
    const piece = fc.constantFrom(
      'M',
      '25',
      'x',
      '0.75',
      ' ',
      '1/36"',
      'tpi',
      'RMS',
      'C',
      '-',
      '.',
      ',',
      'male',
      '\u2033',
      'ø',
      '1e9',
      '\n',
      'un',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(piece, { maxLength: 8 }).map((p) => p.join('')),
        ),
        (text) => {
          const found = readThread(text);
          if ('thread' in found) {
            expect(found.thread.diameterMm).toBeGreaterThanOrEqual(5);
            expect(found.thread.pitchMm).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 300, seed: 72_001 },
    );
  });
});

describe('two ends', () => {
  it('mate only where both are the same thread, one male and one female: among all that are known', () => {
    for (const a of KNOWN_THREADS)
      for (const b of KNOWN_THREADS) {
        const alike = a.diameterMm === b.diameterMm && a.pitchMm === b.pitchMm;
        expect(mates({ thread: a, sex: 'male' }, { thread: b, sex: 'female' }), `${a.label} in ${b.label}`).toBe(alike);
        expect(mates({ thread: a, sex: 'male' }, { thread: b, sex: 'male' })).toBe(false);
        expect(missOf({ thread: a, sex: 'male' }, { thread: b, sex: 'female' }) === undefined).toBe(alike);
      }
  });

  it.each([
    ['RMS', 'M25', 'drops through', /male RMS drops through female M25 x 0.75: 20.32 mm goes through the 24.19 mm/],
    ['M26 x 36 TPI', 'M26 x 0.75', 'pitch', /pitches are 0.7056 and 0.75 mm: they start and bind after a turn or two/],
    ['M42 x 1', 'M42 x 0.75', 'pitch', /bind within the first turn/],
    ['58 x 0.5', '58', 'pitch', /within the first turn/],
    ['M25', 'C', 'does not hold', /0.4 mm too narrow/],
    ['C', 'M25', 'does not enter', /0.4 mm too wide/],
    ['W 25 x 0.75', 'M25', 'flanks', /55° and 60°/],
    ['RMS', '58', 'unlike', /different sizes/],
  ] as const)('male %s and female %s are told apart: %s', (male, female, kind, words) => {
    const miss = missOf(end(male, 'male'), end(female, 'female'));
    expect(miss?.kind).toBe(kind);
    expect(miss?.words()).toMatch(words);
    // Whichever of the two is held in which hand.
    const other = missOf(end(female, 'female'), end(male, 'male'));
    expect([other?.kind, other?.rank, other?.words()]).toEqual([miss?.kind, miss?.rank, miss?.words()]);
  });

  it('of the same sex need a ring between them', () => expect(missOf(end('58', 'male'), end('58', 'male'))?.kind).toBe('same sex'));

  it('bind the sooner the more their pitches differ', () => {
    // 0.07 mm of play over the 0.0444 mm by which each turn of 36 to the inch falls behind one of 0.75 mm.
    expect(bindsAfter(0.75, 25.4 / 36)).toBeCloseTo(1.575, 3);
    expect(bindsAfter(1, 0.75)).toBeCloseTo(0.28, 9);
  });
});
