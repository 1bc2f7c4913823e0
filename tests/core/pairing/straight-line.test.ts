import { expect, it } from 'vitest';
import { evaluate, pairingSchema } from '../../../core/index.ts';
import { numberIn } from '../../../core/pairing/answer.ts';
import opening from '../../../data/opening.json' with { type: 'json' };
import { straightLine } from '../../bench/straight-line.ts';

it('every number of the opening example is what one works out in a row, and nothing else is worked out there', () => {
  const pairing = pairingSchema.parse(opening.pairing);
  const figures = Object.values(evaluate(pairing).answers).flatMap((answer) => numberIn(answer) ?? []);
  const close = (x: number) => expect.closeTo(x, 9);
  const up = (a: number, b: number): number => a - b;
  expect(
    straightLine(pairing)
      .map((x) => x + 0)
      .toSorted(up),
  ).toEqual(figures.toSorted(up).map(close));
});
