import { describe, expect, it } from 'vitest';
import type { Node } from '../../../core/figure.ts';
import { evaluate, type Pairing, pairingSchema, report } from '../../../core/index.ts';
import { raw } from '../../../core/pairing/evaluate.ts';
import { GRAPH, TOLD } from '../../../core/pairing/registry.ts';
import { plain } from '../../../core/pairing/spread.ts';
import { randomPairing } from '../../support/pairings.ts';
import { type Random, random } from '../../support/random.ts';

/**
 * Low and high against propagation of distributions (JCGM 101:2008): every input drawn evenly over its
 * interval, all of them at once, the figures worked out afresh for each draw.
 */
const PAIRINGS = 60;
const DRAWS = 1000;
/** Of so many pairings one in twenty may fall short, figure by figure. */
const MAY_FAIL = PAIRINGS / 20;

function draw(evaluation: ReturnType<typeof evaluate>, r: Random): number[] {
  const leaves = new Map<Node, unknown>(GRAPH.order.filter((n) => n.kind === 'leaf').map((n) => [n, raw(evaluation.sheet, n)] as const));
  for (const input of evaluation.inputs) leaves.set(input.leaf, input.put(leaves.get(input.leaf), r.between(input.least, input.greatest)));
  const sheet = GRAPH.fill(leaves);
  return TOLD.map((figure) => plain(figure, raw(sheet, figure)));
}

function validPairings(count: number, r: Random): Pairing[] {
  const found: Pairing[] = [];
  while (found.length < count) {
    const pairing = randomPairing(r);
    if (pairingSchema.safeParse(pairing).success) found.push(pairing);
  }
  return found;
}

describe('low and high against a Monte Carlo run', () => {
  it('hold 90 % of the draws and are at most twice their central 95 %', { timeout: 60_000 }, () => {
    const r = random(Number(process.env.SEED ?? 4));
    const tally = TOLD.map(({ id }) => ({ id, known: 0, short: 0, wide: 0, moved: 0 }));
    for (const pairing of validPairings(PAIRINGS, r)) {
      const evaluation = evaluate(pairing);
      const draws = Array.from({ length: DRAWS }, () => draw(evaluation, r));
      TOLD.forEach((figure, j) => {
        const answer = evaluation.answers[figure.id];
        const count = tally[j];
        if (answer.state !== 'known' || !count) return;
        const low = answer.low ?? Number.NEGATIVE_INFINITY;
        const high = answer.high ?? Number.POSITIVE_INFINITY;
        const rounding = 1e-9 * Math.max(1e-9, Math.abs(answer.value));
        const sorted = draws.map((d) => d[j] as number).toSorted((a, b) => a - b);
        const quantile = (q: number): number => sorted[Math.min(DRAWS - 1, Math.floor(q * DRAWS))] as number;
        count.known++;
        if (high - low > rounding) count.moved++;
        if (sorted.filter((x) => x >= low - rounding && x <= high + rounding).length < 0.9 * DRAWS) count.short++;
        // A run that sits on a bound (all of the sensor, all of the light) has no central part: then its whole range is what counts.
        const onBound = sorted.filter((x) => figure.bounds.some((b) => Math.abs(x - b) <= rounding)).length > DRAWS / 2;
        const width = onBound ? quantile(1) - quantile(0) : quantile(0.975) - quantile(0.025);
        if (Number.isFinite(high - low) && high - low > 2 * width + rounding) count.wide++;
      });
    }
    for (const { id, known, short, wide } of tally) {
      expect(short, `${id}: too few draws inside, of ${known}`).toBeLessThanOrEqual(MAY_FAIL);
      expect(wide, `${id}: too wide, of ${known}`).toBeLessThanOrEqual(MAY_FAIL);
    }
    // The pairings do have something in doubt: almost every figure moves in many of them.
    expect(tally.filter((t) => t.moved >= 0.3 * PAIRINGS).length).toBeGreaterThanOrEqual(TOLD.length - 6);
  });

  it('gives the corner of the 5x pairing 0.32, from 0.00 to 0.79, for an exit pupil 30 mm either way', () => {
    const corner = report({
      objective: {
        magnification: 10,
        na: 0.28,
        referenceFocalLengthMm: 200,
        fieldNumberMm: 24,
        exitPupilFromShoulderMm: { value: 0, plusMinus: 30 },
      },
      relay: { kind: 'supplementary', focalLengthMm: 100, clearApertureMm: 23 },
      sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 },
      infinitySpaceMm: 90,
    }).figures.cornerIllumination;
    expect(corner).toMatchObject({ state: 'known' });
    if (corner.state !== 'known') return;
    expect(corner.value).toBeCloseTo(0.320446533, 6);
    expect(corner.low).toBeCloseTo(0, 2);
    expect(corner.high).toBeCloseTo(0.79, 2);
  });
});
