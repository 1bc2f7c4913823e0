import { describe, expect, it } from 'vitest';
import {
  type Answer,
  differenceOf,
  differing,
  type Evaluation,
  evaluate,
  FIGURE_IDS,
  numberIn,
  type Pairing,
} from '../../../core/index.ts';
import { evaluatePart } from '../../../core/pairing/evaluate.ts';
import { planFor } from '../../../core/pairing/registry.ts';
import { randomPairing } from '../../support/pairings.ts';
import { type Random, random } from '../../support/random.ts';
import { fullPairing } from '../support/full-pairing.ts';

const SEED = Number(process.env.SEED ?? 11);
const known = (told: Answer): Extract<Answer, { state: 'known' }> | undefined => (told.state === 'known' ? told : undefined);

/** Two pairings with one objective and one camera. */
function two(r: Random, one: (r: Random) => Pairing): [Pairing, Pairing] {
  const [a, b] = [one(r), one(r)];
  return [a, { ...b, objective: a.objective, sensor: a.sensor }];
}

/** A pairing with each number drawn from its interval: the same part of the interval wherever `at` has been asked before. */
function drawn(value: unknown, path: string, at: (path: string) => number): unknown {
  if (Array.isArray(value)) return value.map((item, i) => drawn(item, `${path}/${i}`, at));
  if (typeof value !== 'object' || value === null) return value;
  if ('value' in value) {
    const { value: middle, plusMinus = 0 } = value as { value: number; plusMinus?: number };
    return { value: middle + plusMinus * at(path), origin: 'measured' };
  }
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, drawn(inner, `${path}/${key}`, at)]));
}

describe('the difference of two pairings', () => {
  it('holds nine draws of ten, shared inputs drawn once for both', () => {
    const r = random(SEED);
    const ids = ['objectFieldWidthMm', 'correctedCircleMm', 'workingFNumber', 'depthOfFieldUm', 'samplingRatio', 'rayleighUm'] as const;
    const plan = planFor(ids);
    let [checked, narrower, held] = [0, 0, 0];
    for (let k = 0; k < 8; k++) {
      const pair = two(r, fullPairing);
      const told = differenceOf(...(pair.map((pairing) => evaluate(pairing)) as [Evaluation, Evaluation]), ids);
      const draws = Array.from({ length: 80 }, () => {
        const shared = new Map<string, number>();
        const evaluations = pair.map((pairing) =>
          evaluatePart(
            drawn(pairing, '', (path) => {
              const part = r.between(-1, 1);
              if (!/^\/(objective|sensor)/.test(path)) return part;
              const before = shared.get(path) ?? part;
              shared.set(path, before);
              return before;
            }) as Pairing,
            plan,
          ),
        );
        return (id: (typeof ids)[number]): number => {
          const [a, b] = evaluations.map(({ answers }) => numberIn(answers[id] as Answer));
          return (b as number) - (a as number);
        };
      });
      for (const id of ids) {
        const answer = known(told[id]);
        if (answer?.low === undefined || answer.high === undefined || answer.high - answer.low < 1e-9) continue;
        const { low, high } = answer;
        const seen = draws.map((draw) => draw(id)).toSorted((x, y) => x - y);
        const inside = seen.filter((d) => d >= low && d <= high).length / seen.length;
        expect(inside, `${id} of pair ${k}`).toBeGreaterThan(0.75);
        if (inside >= 0.84) held++;
        // Nor is it far wider than what is seen.
        const width = (seen.at(-1) as number) - (seen[0] as number);
        if (high - low < 2.5 * width) narrower++;
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(25);
    expect(held / checked).toBeGreaterThan(0.9);
    expect(narrower / checked).toBeGreaterThan(0.9);
  });

  it('is nothing, with no ±, of a pairing and itself', () => {
    const r = random(SEED + 1);
    for (let k = 0; k < 10; k++) {
      const pairing = randomPairing(r);
      for (const [id, told] of Object.entries(differenceOf(evaluate(pairing), evaluate(structuredClone(pairing)), FIGURE_IDS)))
        if (told.state === 'known') expect(told, id).toMatchObject({ value: 0, low: 0, high: 0 });
    }
  });

  it('is the opposite the other way round', () => {
    const r = random(SEED + 2);
    const differ = differing(FIGURE_IDS);
    let checked = 0;
    for (let k = 0; k < 20; k++) {
      const [a, b] = two(r, randomPairing).map((pairing) => evaluate(pairing)) as [Evaluation, Evaluation];
      const [there, back] = [differ(a, b), differ(b, a)];
      for (const id of FIGURE_IDS) {
        const [x, y] = [there[id], back[id]];
        if (x.state !== 'known' || y.state !== 'known') {
          expect(y, id).toEqual(x);
          continue;
        }
        expect([y.value + 0, y.low && y.low + 0, y.high && y.high + 0], id).toEqual([
          0 - x.value,
          x.high === undefined ? undefined : 0 - x.high,
          x.low === undefined ? undefined : 0 - x.low,
        ]);
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(300);
  });

  it('is the same whichever figures are asked for with it', () => {
    const r = random(SEED + 3);
    const [a, b] = two(r, randomPairing).map((pairing) => evaluate(pairing)) as [Evaluation, Evaluation];
    const all = differenceOf(a, b, FIGURE_IDS);
    for (const id of ['coveredShare', 'cornerIllumination', 'depthOfFieldUm'] as const)
      expect(differenceOf(a, b, [id])).toEqual({ [id]: all[id] });
  });
});
