import { describe, expect, it } from 'vitest';
import { evaluate, rankable, standingOf } from '../../../core/index.ts';
import { differenceOf } from '../../../core/pairing/difference.ts';
import { OBJECTIVES, PLAIN_RELAYS, SENSORS } from './catalogue.ts';

const part = <P>(list: readonly { id: string; part: P }[], id: string): P => (list.find((one) => one.id === id) as { part: P }).part;

describe('a figure that takes the smallest of the known circles', () => {
  const { fieldNumberMm: _, ...bare } = part(OBJECTIVES, 'lwd-apo-10x-0-28');
  const pairingOf = (objective: typeof bare) => ({
    objective,
    relay: part(PLAIN_RELAYS, 'tube-lens-200'),
    sensor: part(SENSORS, 'full-frame-61mp'),
    infinitySpaceMm: 40,
  });
  const known = evaluate(pairingOf(part(OBJECTIVES, 'lwd-apo-10x-0-28')));
  const unknown = evaluate(pairingOf(bare));

  it('wins nothing while the field is not known: it is larger, and held against nothing', () => {
    for (const id of ['coveredShare', 'goodFieldMm', 'recordedDetailMegapixels'] as const) {
      const difference = differenceOf(known, unknown, [id])[id];
      expect(difference.state === 'known' && difference.value > 0, id).toBe(true);
      const [a, b] = [rankable(known.answers, id), rankable(unknown.answers, id)];
      expect(a).toEqual(known.answers[id]);
      expect(b).toEqual({
        state: 'unknown',
        unit: known.answers[id].unit,
        missing: ['/objective/fieldNumberMm'],
      });
      expect(standingOf(difference, a, b)).toBe('not known');
    }
  });

  it('leaves every other figure as it is', () => {
    expect(rankable(unknown.answers, 'cornerIllumination')).toEqual(unknown.answers.cornerIllumination);
    expect(rankable(unknown.answers, 'correctedCircleMm')).toMatchObject({ state: 'unknown' });
  });
});
