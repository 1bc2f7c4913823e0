import { expect, it } from 'vitest';
import { type Asked, choosing, wantSchema } from '../../../core/choosing.ts';
import { evaluate, numberIn } from '../../../core/index.ts';
import { OBJECTIVES, PLAIN_RELAYS, SENSORS } from './catalogue.ts';

/** How often each limit stops, held to each pairing worked out by itself. */

const priced = OBJECTIVES.slice(0, 4).map((entry, i) => ({ ...entry, price: 100 * i }));
const relays = PLAIN_RELAYS.slice(0, 4).map((entry) => ({ ...entry, owned: true }));
const sensor = SENSORS[0]?.part as Asked['sensor'];

it('counts for each limit the pairings that it stops, alone or with others', () => {
  const asked: Asked = {
    want: wantSchema.parse({ finestDetailUm: 2, maxLengthMm: 260, maxPrice: 250, minCornerIllumination: 0.01 }),
    sensor,
    objectives: priced,
    relays,
    infinitySpacesMm: [60],
    sort: { by: 'resolvedDetailUm', first: 'least' },
    frontier: ['resolvedDetailUm', 'goodFieldMm'],
    most: 3,
  };
  const due = { finestDetail: 0, length: 0, price: 0, cornerLight: 0 };
  for (const { part: objective, price } of priced)
    for (const { part: relay } of relays)
      for (const infinitySpaceMm of asked.infinitySpacesMm) {
        const { answers } = evaluate({ objective, relay, sensor, infinitySpaceMm });
        if (!((numberIn(answers.resolvedDetailUm) ?? 9) <= 2)) due.finestDetail++;
        if (!((numberIn(answers.totalLengthMm) ?? 999) <= 260)) due.length++;
        if (price > 250) due.price++;
        if (!((numberIn(answers.cornerIllumination) ?? 0) >= 0.01)) due.cornerLight++;
      }
  const steps = choosing(asked);
  let step = steps.next();
  while (!step.done) step = steps.next();
  const { stopped, considered } = step.value;
  expect(considered).toBe(16);
  expect({ cornerLight: 0, ...stopped }).toEqual(due);
  for (const name of ['finestDetail', 'length', 'price'] as const) expect(due[name], name).toBeGreaterThan(0);
});
