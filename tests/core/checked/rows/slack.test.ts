import { expect, it } from 'vitest';
import type { Check, Value } from '../../../../core/checked/check.ts';
import { CONJUGATES } from '../../../../core/checked/rows/conjugates.ts';
import { GLASS } from '../../../../core/checked/rows/glass.ts';
import { SAMPLING } from '../../../../core/checked/rows/sampling.ts';

/** What the rounding of a source's inputs may add, worked out another way: too wide a slack would hold anything. */
const numberOf = (checks: readonly Check[], id: string, what?: string): Value =>
  checks.find((check) => check.id === id)?.values.find((value) => value.what === what) as Value;
const slackOf = (value: Value): number => value.slack?.of() as number;

it('a limit that was rounded before it was multiplied adds half its last digit so often', () => {
  for (const [id, limit] of [
    ['PIX-101', 0.05],
    ['PIX-104', 4 * 0.05],
    ['PIX-108', 10 * 0.005],
    ['PIX-117', 100 * 0.005],
  ] as const) {
    expect(slackOf(numberOf(SAMPLING, id, 'the same on the sensor, µm')), id).toBeCloseTo(limit, 12);
    expect(slackOf(numberOf(SAMPLING, id, 'pixel that just samples it, µm')), id).toBeCloseTo(limit / 2, 12);
  }
});

it('180 mm, known to half a millimetre, lie as far off as 180.5 mm: x = f²/x′', () => {
  expect(slackOf(numberOf(CONJUGATES, 'WD-003', '1/x'))).toBeCloseTo(180.5 / 36 - 180 / 36, 12);
});

it('normal lines are printed to 1e-4 and their slopes to 1e-6: half of that, at V_d = 60.4', () => {
  expect(slackOf(numberOf(GLASS, 'GLS-001', 'C,t')) * 1e4).toBeCloseTo(0.5 + 0.5 * 0.604, 9);
});
