import { expect, it } from 'vitest';
import { runBetween } from '../../../../core/table/build/run.ts';
import { adapterOf, tubeOf } from '../../../../core/table/threads/adapter.ts';
import { M25 } from '../../../../core/table/threads/known.ts';
import { stockOf } from '../../../../core/table/threads/stock.ts';

it('screws on nothing twice that is owned once, before the tubes and behind them', () => {
  const plate = adapterOf({
    ends: [
      { thread: 'M25', sex: 'female' },
      { thread: 'M42 x 1', sex: 'male' },
    ],
    lengthMm: 5,
  });
  const coupler = adapterOf({
    ends: [
      { thread: 'M42 x 1', sex: 'female' },
      { thread: 'M42 x 1', sex: 'female' },
    ],
    lengthMm: 5,
  });
  const objective = { thread: M25, sex: 'male' } as const;
  const between = (...rings: (typeof plate)[]) =>
    runBetween(
      objective,
      objective,
      { value: 45, low: 45, high: 45 },
      { rings: stockOf(rings), tubes: [tubeOf({ thread: 'M42 x 1', lengthMm: 30 })], taken: new Set(), preferOwned: false },
    );
  expect(between(plate, coupler)).toHaveProperty('miss');
  expect(between(plate, { ...plate }, coupler)).toMatchObject({ lengthMm: 45, toBuy: 0 });
});
