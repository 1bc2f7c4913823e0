import { describe, expect, it } from 'vitest';
import type { TableEvaluation } from '../../../../core/table/evaluate.ts';
import { lightCautions } from '../../../../core/table/light/cautions.ts';

const known = (value: number, low?: number) => ({
  state: 'known',
  unit: 'mm',
  value,
  ...(low === undefined ? {} : { low }),
  origin: 'marked',
});
const UNKNOWN = { state: 'unknown', unit: 'mm', missing: [] };
const said = (noseClearanceMm: object, coverGlassMm?: number): string[] =>
  lightCautions({ answers: { noseClearanceMm }, pairing: { objective: { coverGlassMm } } } as unknown as TableEvaluation);

describe('cautions of light', () => {
  const NEAR = /^The nose comes within ([\d.]+) mm of the subject, and may come closer/;
  const STRIKES = /^The nose would strike the subject/;

  it('are of the eyes and of what is alive, always', () => {
    expect(said(UNKNOWN)).toEqual([expect.stringMatching(/harm eyes/), expect.stringMatching(/alive/)]);
    expect(said(known(5, 4)).length).toBe(2);
  });

  it('are of a nose that may come within a millimetre', () => {
    expect(said(known(3, 1))[0]).toMatch(NEAR);
    expect(said(known(3, 1))[0]?.match(NEAR)?.[1]).toBe('3');
    expect(said(known(3, 1.01)).length).toBe(2);
    expect(said(known(0.5))[0]?.match(NEAR)?.[1]).toBe('0.5');
    expect(said(known(0.5)).length).toBe(3);
    expect(said(known(1.5)).length).toBe(2);
    expect(said(known(1.5, -2))[0]).toMatch(NEAR);
  });

  it('are of a nose that would strike', () => {
    for (const clearance of [known(0, -1), known(-0.5, -1), known(0)]) {
      expect(said(clearance)[0]).toMatch(STRIKES);
      expect(said(clearance).length).toBe(3);
    }
    expect(said(known(0.5, 0.2)).join(' ')).not.toMatch(/would strike/);
  });

  it('are of a working distance that is counted from a cover glass or from under it', () => {
    expect(said(UNKNOWN, 0.17)[0]).toMatch(/^Engraved for a cover glass of 0\.17 mm/);
    expect(said(UNKNOWN, 1.2)[0]).toMatch(/^Engraved for a cover glass of 1\.2 mm/);
    expect(said(UNKNOWN, 0).length).toBe(2);
  });
});
