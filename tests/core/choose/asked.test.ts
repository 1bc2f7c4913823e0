import { describe, expect, it } from 'vitest';
import { type Offered, pairingAt, priceOf } from '../../../core/choose/asked.ts';
import { idsOf, partsAt, toldPrice } from '../../../core/choose/told.ts';
import {
  type Asked,
  DEFAULT_FRONTIER,
  DEFAULT_SORT,
  DEFAULT_SPACES_MM,
  DEFAULT_TOLD,
  MOST_CONSIDERED,
  MOST_TOLD,
} from '../../../core/choosing.ts';
import type { Objective, Relay } from '../../../core/index.ts';

const ten: Objective = { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 };
const twenty: Objective = { magnification: 20, na: 0.4, referenceFocalLengthMm: 200 };
const tube: Relay = { kind: 'tube-lens', focalLengthMm: 200 };
const short: Relay = { kind: 'tube-lens', focalLengthMm: 150 };
const asked: Asked = {
  want: {},
  sensor: { widthMm: 24, heightMm: 16 },
  objectives: [{ part: ten }, { part: twenty, id: 'twenty' }],
  relays: [{ part: tube }, { part: short, id: 'short' }],
  infinitySpacesMm: [30, 60, 90],
  sort: DEFAULT_SORT,
  frontier: DEFAULT_FRONTIER,
  most: DEFAULT_TOLD,
};

describe('one of the pairings that are asked for', () => {
  it('is told by the places of its parts, before the subject where one is wished for', () => {
    expect(pairingAt(asked, [1, 0, 2])).toEqual({ objective: twenty, relay: tube, sensor: asked.sensor, infinitySpaceMm: 90 });
    expect(pairingAt(asked, [0, 1, 0])).not.toHaveProperty('subject');
    const wished = { ...asked, want: { subject: { widthMm: 2, depthMm: 1, shareOfFrame: 0.5 } } };
    expect(pairingAt(wished, [0, 1, 0])).toMatchObject({ relay: short, infinitySpaceMm: 30, subject: { widthMm: 2, depthMm: 1 } });
    expect(pairingAt(wished, [0, 1, 0]).subject).toEqual({ widthMm: 2, depthMm: 1 });
  });

  it('has parts with ids where a shelf knows them', () => {
    expect(idsOf(...partsAt(asked, [1, 1, 0]))).toEqual({ objective: 'twenty', relay: 'short' });
    const bare = idsOf(...partsAt(asked, [0, 0, 0]));
    expect(Object.keys(bare)).toEqual([]);
    expect(Object.keys(idsOf(...partsAt(asked, [1, 0, 0])))).toEqual(['objective']);
    expect(Object.keys(idsOf(...partsAt(asked, [0, 1, 0])))).toEqual(['relay']);
  });
});

describe('the price of an objective and a relay', () => {
  const of = (objective: Partial<Offered<Objective>>, relay: Partial<Offered<Relay>>) =>
    priceOf({ part: ten, ...objective }, { part: tube, ...relay });
  const told = (objective: Partial<Offered<Objective>>, relay: Partial<Offered<Relay>>) => toldPrice(of(objective, relay));

  it('is the sum of what is to be bought; what is owned costs nothing any more', () => {
    expect(of({ price: 300 }, { price: 45 })).toEqual({ known: 345, missing: [] });
    expect(of({ price: 300, owned: true }, { price: 45 })).toEqual({ known: 45, missing: [] });
    expect(of({ price: 300 }, { owned: true })).toEqual({ known: 300, missing: [] });
    expect(of({ owned: true }, { owned: true })).toEqual({ known: 0, missing: [] });
  });

  it('names the parts to be bought whose price is not known', () => {
    expect(of({}, { price: 45 })).toEqual({ known: 45, missing: ['objective'] });
    expect(of({ price: 300 }, {})).toEqual({ known: 300, missing: ['relay'] });
    expect(of({}, {})).toEqual({ known: 0, missing: ['objective', 'relay'] });
  });

  it('is told as far as it is known, and as nothing where nothing is to be paid', () => {
    const exactly = (price: object, due: object): void => {
      expect(price).toEqual(due);
      expect(Object.keys(price)).toEqual(Object.keys(due));
    };
    exactly(told({ price: 300 }, { price: 45 }), { price: 345 });
    exactly(told({ price: 0.5 }, {}), { price: 0.5, priceMissing: ['relay'] });
    exactly(told({ owned: true }, { owned: true }), { price: 0 });
    exactly(told({ owned: true }, {}), { priceMissing: ['relay'] });
    exactly(told({}, {}), { priceMissing: ['objective', 'relay'] });
  });
});

it('is asked with these where nothing else is said: the answer of an empty question hangs on them', () => {
  expect(DEFAULT_SPACES_MM).toEqual([30, 60, 90]);
  expect([DEFAULT_TOLD, MOST_TOLD, MOST_CONSIDERED]).toEqual([24, 200, 250_000]);
});
