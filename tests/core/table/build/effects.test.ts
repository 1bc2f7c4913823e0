import { describe, expect, it } from 'vitest';
import type { Pairing } from '../../../../core/index.ts';
import { type BuildEffects, buildEffects, darkens } from '../../../../core/table/build/effects.ts';
import type { SheetRun, SheetStop } from '../../../../core/table/build/joined.ts';
import type { BuildSheet } from '../../../../core/table/build/sheet.ts';
import type { TableEvaluation } from '../../../../core/table/evaluate.ts';
import { OPENING } from './on-the-table.ts';

const UNKNOWN = { state: 'unknown', unit: 'mm', missing: [] };
const known = (value: number) => ({ state: 'known', unit: 'mm', value, origin: 'marked' });
const run = (narrowest?: SheetStop): SheetRun => ({
  state: 'joined',
  parts: 1,
  lengthMm: 60,
  leastMm: 60,
  mostMm: 60,
  toBuy: 0,
  ...(narrowest ? { narrowest } : {}),
});
const NOTHING: SheetRun = { state: 'nothing', why: '' };
const effects = (front: SheetRun, back: SheetRun, stops?: Pairing['stops'], builtTooLongMm: object = UNKNOWN) =>
  buildEffects(
    { pairing: stops ? { ...OPENING, stops } : OPENING, settings: {}, answers: { builtTooLongMm } } as unknown as TableEvaluation,
    { parts: [], front, back } as BuildSheet,
  );

const NARROW: SheetStop = { label: 'narrow', diameterMm: 9, fromShoulderMm: 2.5 };
const BEHIND: SheetStop = { label: 'behind', diameterMm: 30, fromSensorMm: 100 };

describe('the rings that are not among the stops', () => {
  it('are the narrowest of either run, and do nothing where there are none', () => {
    expect(effects(run(NARROW), run(BEHIND)).fresh).toEqual([NARROW, BEHIND]);
    expect(effects(NOTHING, run(BEHIND)).fresh).toEqual([BEHIND]);
    const bare = effects(run(), NOTHING);
    expect(bare.fresh).toEqual([]);
    expect(bare).not.toHaveProperty('corner');
    expect(effects(run(NARROW), NOTHING, [{ ...NARROW }]).fresh).toEqual([]);
  });

  it('darken the corner, one alone or both', () => {
    const one = effects(run(NARROW), NOTHING);
    expect(one.corner?.ringed).toBeLessThan(one.corner?.bare as number);
    expect(darkens(one)).toBe(true);
  });

  it('are not judged where the pairing takes no more stops, or where they contradict it', () => {
    const wide = (n: number) => Array.from({ length: n }, (_, i) => ({ label: `ring ${i}`, diameterMm: 60, fromShoulderMm: 5 + i }));
    expect(effects(run(NARROW), run(BEHIND), wide(6))).toHaveProperty('corner');
    expect(effects(run(NARROW), run(BEHIND), wide(7))).not.toHaveProperty('corner');
    expect(effects(run({ ...NARROW, fromShoulderMm: 5000 }), NOTHING)).not.toHaveProperty('corner');
  });

  it('are said to darken it from half of a hundredth of a stop on', () => {
    const by = (bare: number) => darkens({ longestSpace: UNKNOWN, fresh: [], corner: { bare, ringed: 0 } } as unknown as BuildEffects);
    // 2^-0.005 leaves 0.9965.
    expect(1 - 2 ** -0.005).toBeCloseTo(0.0035, 4);
    expect([0.0034, 0.0035, 0.00352].map(by)).toEqual([false, false, true]);
  });
});

describe('a tube as it was built', () => {
  const tube = (value: number) => effects(NOTHING, NOTHING, undefined, known(value)).tube;
  it('is judged up to 200 mm off, and not where that is not known', () => {
    expect(effects(NOTHING, NOTHING)).not.toHaveProperty('tube');
    for (const by of [-200, 10, 200]) expect(tube(by)).toBeDefined();
    for (const by of [-200.1, 200.1]) expect(tube(by)).toBeUndefined();
    expect(tube(10)?.magnificationChange).toBeGreaterThan(0);
    expect(tube(-10)?.magnificationChange).toBeLessThan(0);
  });
  it('leaves the middle the sharper the less it is off', () => {
    const [near, far] = [tube(1)?.strehl, tube(40)?.strehl] as [number, number];
    expect(near).toBeLessThanOrEqual(1);
    expect(far).toBeLessThan(near);
  });
});
