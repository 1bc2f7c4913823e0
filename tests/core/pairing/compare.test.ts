import { describe, expect, it } from 'vitest';
import { compare, type Evaluation, evaluate, type FigureId, figureById, numberIn, type Pairing, report } from '../../../core/index.ts';
import { raw } from '../../../core/pairing/evaluate.ts';
import { GRAPH } from '../../../core/pairing/registry.ts';
import { withInputs } from '../../../core/pairing/spread.ts';
import { random } from '../../support/random.ts';

const pairing: Pairing = {
  objective: {
    magnification: { value: 10, plusMinus: 0.5, origin: 'assumed' },
    na: 0.25,
    referenceFocalLengthMm: 200,
    fieldNumberMm: { value: 22, plusMinus: 2, origin: 'assumed' },
    exitPupilFromShoulderMm: 0,
  },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 54, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 60,
};
const relay = (focalLengthMm: Pairing['relay']['focalLengthMm']) => ({ ...pairing.relay, focalLengthMm });
const width = (a: { low?: number; high?: number }) => (a.high ?? 0) - (a.low ?? 0);

describe('pairings abreast', () => {
  it('tell each pairing as its own report does, and differences against the first', () => {
    const others = [pairing, { ...pairing, relay: relay(250) }, { ...pairing, infinitySpaceMm: 100 }];
    const { reports, differences } = compare(others);
    expect(reports).toEqual(others.map((pairing) => report(pairing)));
    expect(differences.map((d) => [d.from, d.of])).toEqual([
      [0, 1],
      [0, 2],
    ]);
    for (const { of, figures } of differences)
      for (const [id, difference] of Object.entries(figures)) {
        const [a, b] = [reports[0], reports[of]].map((r) => r && numberIn(r.figures[id as FigureId]));
        if (difference.state === 'known') expect(difference.value, id).toBeCloseTo((b as number) - (a as number), 9);
      }
  });
  it('let the ± of what is shared cancel', () => {
    const same = compare([pairing, { ...pairing, infinitySpaceMm: 100 }]).differences[0]?.figures.correctedCircleMm;
    expect(same).toMatchObject({ state: 'known', value: 0, low: 0, high: 0 });
    const longer = compare([pairing, { ...pairing, relay: relay(250) }]).differences[0]?.figures.correctedCircleMm;
    // d = FN (f_b - f_a) / f_ref: 22 ± 2 times a quarter.
    expect(longer).toMatchObject({ value: 5.5, low: 5, high: 6 });
  });
  it('let the ± of what is not shared add', () => {
    const other = { ...pairing, objective: { ...pairing.objective, name: 'another of the same kind' } };
    const apart = compare([pairing, other]).differences[0]?.figures.correctedCircleMm;
    expect(apart).toMatchObject({ state: 'known', value: 0 });
    if (apart?.state === 'known') expect(width(apart)).toBeGreaterThanOrEqual(2 * 2 * Math.SQRT2 - 1e-9);
  });
  it('give no difference where one of the two has no value', () => {
    const { clearApertureMm: _, ...bare } = pairing.relay;
    const figures = compare([pairing, { ...pairing, relay: bare }]).differences[0]?.figures;
    expect(figures?.litCircleMm).toEqual({ state: 'unknown', unit: 'mm', missing: ['/relay/clearApertureMm'] });
    const narrow = { ...pairing, stops: [{ diameterMm: 1, fromShoulderMm: 0 }] };
    expect(compare([narrow, pairing]).differences[0]?.figures.litCircleMm.state).toMatch(/none|known/);
  });

  it('hold nine draws of ten where several stops limit, what is shared moving in both', () => {
    const shared = { magnification: 10, na: 0.3, referenceFocalLengthMm: 200 };
    const sensor = { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 };
    const two: Pairing[] = [
      {
        objective: shared,
        relay: { kind: 'supplementary', powerDioptre: 8, clearApertureMm: { value: 36, plusMinus: 2 } },
        sensor,
        infinitySpaceMm: 70,
      },
      { objective: shared, relay: { kind: 'camera-lens', focalLengthMm: 135, fNumber: 4 }, sensor, infinitySpaceMm: 30 },
    ];
    const [a, b] = two.map((pairing) => evaluate(pairing)) as [Evaluation, Evaluation];
    const r = random(5);
    const draw = (): number => {
      const at = new Map<string, number>();
      const lit = [a, b].map(({ inputs, sheet }) => {
        const values = inputs.map((input) => {
          const common = input.path.startsWith('/objective') || input.path.startsWith('/sensor');
          const known = common ? at.get(input.path) : undefined;
          const x = known ?? r.between(input.least, input.greatest);
          if (common) at.set(input.path, x);
          return x;
        });
        return raw(withInputs(GRAPH, sheet, inputs, values), figureById('litCircleMm')) as number;
      });
      return (lit[1] as number) - (lit[0] as number);
    };
    const told = compare(two).differences[0]?.figures.litCircleMm;
    if (told?.state !== 'known') throw new Error('not known');
    const draws = Array.from({ length: 2000 }, draw);
    expect(draws.filter((d) => d >= (told.low as number) && d <= (told.high as number)).length).toBeGreaterThan(1800);
  });
});
