import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LIMIT_NAMES, limitsOf, type Want, wantSchema } from '../../core/choosing.ts';
import { asksOf, clausesIn, complaintOf, textsFrom, wantFrom } from '../../web/subject/blanks.ts';
import { BLANK_OF, BLANKS, blanksIn, FURTHER } from '../../web/subject/clauses.ts';

/** The wish's sentence: what stands in its blanks is the wish, and the wish stands in its blanks. */

const runs = { numRuns: Number(process.env.RUNS ?? 200) };
const number = (least: number, greatest: number) =>
  fc.double({ min: least, max: greatest, noNaN: true }).map((x) => Number(x.toPrecision(6)));
const share = fc.integer({ min: 1, max: 1000 }).map((n) => Math.max(10, n) / 1000);
const pair = (least: number, greatest: number) =>
  fc.tuple(number(least, greatest), number(least, greatest)).map(([a, b]): [number, number] => [Math.min(a, b), Math.max(a, b)]);
const wants: fc.Arbitrary<Want> = fc
  .record(
    {
      subject: fc.record(
        { widthMm: number(0.001, 900), heightMm: number(0.001, 900), depthMm: number(0, 900), shareOfFrame: share },
        { requiredKeys: ['widthMm'] },
      ),
      fieldWidthMm: pair(0.01, 2000),
      magnification: pair(0.1, 900),
      finestDetailUm: number(0.1, 900),
      minWorkingDistanceMm: number(0, 400),
      lightingClearance: fc.record({ depthMm: number(1, 400), minConeDeg: number(1, 80) }),
      minCoveredShare: share,
      minCornerIllumination: share,
      samplingRatio: pair(0.1, 90),
      maxLengthMm: number(20, 8000),
      maxPrice: number(0, 1e6),
      coverGlassMm: number(0, 5),
    },
    { requiredKeys: [] },
  )
  .map((want) => wantSchema.parse(want));

describe('the blanks of a wish', () => {
  it('hold any wish, and give it back', () => {
    fc.assert(
      fc.property(wants, (want) => {
        const texts = textsFrom(want);
        expect(wantFrom(texts)).toEqual({ want });
        const filled = FURTHER.filter((clause) => blanksIn(clause).some(({ path }) => path in texts));
        expect(clausesIn(texts)).toEqual(filled.map(({ name }) => name));
      }),
      runs,
    );
  });
  it('have a place for every number of a wish and for every limit', () => {
    const whole = wantSchema.parse({
      subject: { widthMm: 1, heightMm: 2, depthMm: 3, shareOfFrame: 0.4 },
      fieldWidthMm: [5, 6],
      magnification: [7, 8],
      finestDetailUm: 9,
      minWorkingDistanceMm: 10,
      lightingClearance: { depthMm: 11, minConeDeg: 12 },
      minCoveredShare: 0.13,
      minCornerIllumination: 0.14,
      samplingRatio: [15, 16],
      maxLengthMm: 17,
      maxPrice: 18,
      coverGlassMm: 19,
    });
    expect(Object.keys(textsFrom(whole)).toSorted()).toEqual(BLANKS.map(({ path }) => path).toSorted());
    expect(Object.keys(whole).toSorted()).toEqual(Object.keys(wantSchema.shape).toSorted());
    expect(textsFrom(whole)['/subject/shareOfFrame']).toBe('40');
    for (const name of LIMIT_NAMES)
      expect(
        BLANKS.map(({ path }) => path),
        name,
      ).toContain(BLANK_OF[name]);
    // Each limit's number is the one that stands in its blank.
    for (const limit of limitsOf(whole)) {
      if (limit.name === 'subjectFits' || limit.name === 'subjectCovered') continue;
      const blank = BLANKS.find(({ path }) => path === BLANK_OF[limit.name]);
      expect(Number(textsFrom(whole)[BLANK_OF[limit.name]]) / (blank?.percent ? 100 : 1), limit.name).toBeCloseTo(limit.limit, 12);
    }
  });
  it('leave the other end of a pair open, just at its bound, and that end asks for nothing', () => {
    for (const { path, open, unit } of BLANKS.filter((blank) => blank.open !== undefined)) {
      const [here, beside] = BLANKS.filter(
        (other) => other.path.slice(0, other.path.lastIndexOf('/')) === path.slice(0, path.lastIndexOf('/')),
      );
      const other = here?.path === path ? beside : here;
      const read = wantFrom({ [other?.path ?? '']: '3' });
      expect(read.problems, `${path} ${unit}`).toBeUndefined();
      expect(textsFrom(read.want as Want)).toEqual({ [other?.path ?? '']: '3' });
      expect(limitsOf(read.want as Want).filter(asksOf)).toHaveLength(1);
      // It is the bound itself: a hair beyond it no wish is read.
      const beyond = (open as number) > 1 ? String((open as number) * 1.01) : open === 0 ? '-0.001' : String((open as number) * 0.99);
      expect(wantFrom({ [path]: beyond, [other?.path ?? '']: '3' }).problems?.map((p) => p.path)).toContain(path);
    }
  });
  it('say of each what is wrong with it, in its own unit, and take a comma for a point', () => {
    expect(wantFrom({ '/subject/widthMm': '1,2' })).toEqual({ want: { subject: { widthMm: 1.2 } } });
    expect(wantFrom({ '/finestDetailUm': '  ' })).toEqual({ want: {} });
    const said = (texts: Record<string, string>) => (wantFrom(texts).problems ?? []).map((p) => [p.path, complaintOf(p)]);
    expect(said({ '/subject/widthMm': '1', '/subject/shareOfFrame': '140' })).toEqual([
      ['/subject/shareOfFrame', '140 is too large: put in at most 100 %.'],
    ]);
    expect(said({ '/finestDetailUm': 'fine' })).toEqual([['/finestDetailUm', '"fine" is no number: put one in, or leave it blank.']]);
    expect(said({ '/subject/heightMm': '2' })).toEqual([
      ['/subject/widthMm', 'Fill this in too: what stands beside it tells nothing without it.'],
    ]);
    expect(said({ '/magnification/0': '9', '/magnification/1': '3' })).toEqual([
      ['/magnification/0', 'The smaller of the two comes first.'],
    ]);
    expect(said({ '/lightingClearance/minConeDeg': '95' })).toEqual([
      ['/lightingClearance/minConeDeg', '95 is too large: put in at most 90°.'],
    ]);
    expect(said({ '/maxPrice': '-3' })).toEqual([['/maxPrice', '−3 is too small: put in at least 0 in your money.']]);
  });
});
