import { describe, expect, it } from 'vitest';
import { briefOf, type Coverage } from '../../../core/index.ts';
import { minutesFor, nameOf, resolving } from '../../../core/pairing/phrases.ts';
import { coverageOf } from '../../../core/pairing/verdict.ts';
import { type Pull, told } from './told.ts';

type Answers = Parameters<typeof told>[0];

describe('a verdict at its borders, on a diagonal of 50', () => {
  const of = (answers: Answers, more: Parameters<typeof told>[1] = {}) => coverageOf(told(answers, more));
  it('covers from the diagonal on, and crops from half of it on', () => {
    const at = (correctedCircleMm: number) => {
      const { verdict, bites } = of({ correctedCircleMm });
      return [verdict, bites];
    };
    expect([50, 49.99, 25.1, 25, 24.99].map(at)).toEqual([
      ['covers', undefined],
      ['crops', 'corrected'],
      ['crops', 'corrected'],
      ['crops', 'corrected'],
      ['misses', 'corrected'],
    ]);
  });
  it('tells the grounds, no margin as reached', () => {
    expect(of({ correctedCircleMm: 50, litCircleMm: Number.POSITIVE_INFINITY, sharpCircleMm: [40, 30, 60] }).reasons).toEqual([
      "the objective's corrected field reaches 0 mm past the corners",
      'the light is not limited',
      "the relay's rated circle ends 5 mm short of the corners, which its ± leaves open",
    ]);
  });
  it('is open where nothing is known', () => {
    expect(of({})).toMatchObject({ verdict: 'undecided', hangsOn: [], largestCropMm: [40, 30], unknown: ['corrected', 'lit', 'sharp'] });
  });
  it('hangs on what moves the circle at least a tenth as much as what moves it most, that first', () => {
    const pull = (path: string, up: number, down = 0): Pull => ({ path, of: 'correctedCircleMm', up, down });
    const doubtful = (pulls: Pull[]) => of({ correctedCircleMm: [45, 30, 60], sharpCircleMm: 70 }, { pulls });
    expect(doubtful([pull('/a', 0.1), pull('/b', 0, 1), pull('/c', 0.095), pull('/d', 0), pull('/e', 0.5, 0.2)])).toMatchObject({
      verdict: 'undecided',
      bites: 'corrected',
      hangsOn: ['/b', '/e', '/a'],
      between: ['crops', 'covers'],
    });
    expect(doubtful([pull('/d', 0)]).hangsOn).toEqual([]);
    expect(doubtful([]).hangsOn).toEqual([]);
  });
  it('judges a subject as large as the picture as one that fits', () => {
    const subject = (widthMm: number, heightMm: number, m?: number) =>
      of(m === undefined ? { correctedCircleMm: 60 } : { correctedCircleMm: 60, systemMagnification: m }, {
        pairing: { subject: { widthMm, heightMm } },
      }).subject;
    expect(subject(4, 3, 10)).toMatchObject({ fits: true, diagonalMm: 50, verdict: 'covers' });
    expect(subject(4.01, 3, 10)).toMatchObject({ fits: false, diagonalMm: 50 });
    expect(subject(4, 3.01, 10)).toMatchObject({ fits: false, diagonalMm: 50 });
    expect(subject(4, 3)).toBeUndefined();
  });
});

describe('the answer in one line at its borders', () => {
  const brief = (verdict: Coverage['verdict'], answers: Answers, more: Partial<Coverage> = {}) =>
    briefOf(told({ systemMagnification: 10, ...answers }), {
      verdict,
      hangsOn: [],
      unknown: [],
      largestCropMm: [20, 15],
      reasons: [],
      ...more,
    });
  it('tells a margin below a hundred millimetres, of the nearest circle', () => {
    expect(brief('covers', { correctedCircleMm: 300, sharpCircleMm: 60 })).toBe('10×: covers, 5 mm to spare');
    expect(brief('covers', { correctedCircleMm: 249 })).toBe('10×: covers, 100 mm to spare');
    expect(brief('covers', { correctedCircleMm: 250 })).toBe('10×: covers');
    expect(brief('covers', {})).toBe('10×: covers');
    expect(brief('covers', { correctedCircleMm: 49.9999 })).toBe('10×: covers, 0 mm to spare');
  });
  it('tells how much light a miss leaves, or how short it ends', () => {
    const light = (E: number) => brief('misses', { cornerIllumination: E }, { bites: 'lit' });
    expect([0.0009, 0.001, 0.4, 0.9994, 0.9995, 1].map(light)).toEqual(
      ['no light', '0.1 %', '40 %', '99 %', 'all the light', 'all the light'].map((said) => `10×: misses, corners get ${said}`),
    );
    expect(brief('misses', {}, { bites: 'lit' })).toBe("10×: misses, the corners' light is not known");
    expect(brief('misses', { sharpCircleMm: 0 }, { bites: 'sharp' })).toBe('10×: misses, sharp nowhere');
    expect(brief('misses', { sharpCircleMm: 1 }, { bites: 'sharp' })).toBe('10×: misses, sharpness ends 24.5 mm short');
    expect(brief('misses', {})).toBe('10×: misses');
  });
  it('tells what is open by what it hangs on, else by what bites, else by what is not known', () => {
    const circles = { correctedCircleMm: 30 };
    expect(brief('undecided', circles, { hangsOn: ['/objective/na', '/relay/fNumber'], bites: 'corrected' })).toBe(
      '10×: undecided, hangs on the aperture',
    );
    expect(brief('undecided', circles, { hangsOn: ['/objective/nothing'] })).toBe('10×: undecided, hangs on a guess');
    expect(brief('undecided', circles, { bites: 'corrected', unknown: ['sharp'] })).toBe('10×: undecided, the field ends 10 mm short');
    expect(brief('undecided', circles, { unknown: ['sharp', 'lit'] })).toBe('10×: undecided, sharpness is not known');
    expect(brief('undecided', circles)).toBe('10×: undecided, the field is not known');
  });
});

describe('what an input is called', () => {
  it('is its own name, the subject in two, and a path that nobody named itself', () => {
    expect([nameOf('/subject/widthMm'), nameOf('/subject/depthMm'), nameOf('/stops/3/diameterMm'), nameOf('/a/b')]).toEqual([
      "the subject's size",
      "the subject's depth",
      "a ring's opening",
      '/a/b',
    ]);
    expect([resolving('/subject/depthMm'), resolving('/relay/fNumber'), resolving('/a/b')]).toEqual([
      "say the subject's size",
      'check the f-number',
      'settle /a/b',
    ]);
  });
  it('takes two minutes to find out, or five, or ten where something must be set up', () => {
    const minutes = (at: string, names: string) => names.split(' ').map((name) => minutesFor(`/${at}/${name}`));
    const all = (words: string, count: number) => Array.from({ length: count }, () => words);
    expect(minutes('objective', 'magnification na exitPupilFromShoulderMm')).toEqual(all('five minutes', 3));
    expect(minutes('relay', 'focalLengthMm powerDioptre entrancePupilDepthMm imageCircleMm')).toEqual(all('five minutes', 4));
    expect(minutesFor('/sensorOffsetMm')).toBe('five minutes');
    expect([...minutes('objective', 'testedFieldMm'), ...minutes('relay', 'frontPrincipalPlaneFromRimMm')]).toEqual(all('ten minutes', 2));
    expect([minutesFor('/relay/fNumber'), minutesFor('/a/b')]).toEqual(all('two minutes', 2));
  });
});
