import { describe, expect, it } from 'vitest';
import { glassworks, hurrying } from '../../../core/glassworks.ts';
import { evaluate, type Glassworks, type Pairing, pairingSchema } from '../../../core/index.ts';
import opening from '../../../data/opening.json';
import relays from '../../../data/relays.json';

const OPENING = pairingSchema.parse(opening.pairing);
const glassed = (id: string, infinitySpaceMm: number): Pairing =>
  pairingSchema.parse({ ...OPENING, relay: relays.parts.find((entry) => entry.id === id)?.part, infinitySpaceMm });

/** Glassworks that count how often a sharp circle is traced. */
function counting(): { works: Glassworks; traced(): number } {
  const inner = glassworks();
  let n = 0;
  return {
    works: {
      relay(relay, nm) {
        const glass = inner.relay(relay, nm);
        if (!('focalLengthMm' in glass)) return glass;
        return {
          ...glass,
          sharpRadiusMm(question) {
            n++;
            return glass.sharpRadiusMm(question);
          },
        };
      },
    },
    traced: () => n,
  };
}

describe('glass in a hurry', () => {
  it('is exact where it has traced, near to it between, and traces little', () => {
    const { works, traced } = counting();
    const { exact, hurried } = hurrying(works);
    const first = evaluate(glassed('close-up-5d-58-glass', 60), exact);
    expect(first.answers).toEqual(evaluate(glassed('close-up-5d-58-glass', 60), glassworks()).answers);
    const spaces = [61, 64, 70, 78, 85, 92];
    for (const space of spaces) {
      const pairing = glassed('close-up-5d-58-glass', space);
      const before = traced();
      const quick = evaluate(pairing, hurried).answers.sharpCircleMm;
      expect(traced() - before).toBeLessThanOrEqual(3);
      const slow = evaluate(pairing, glassworks()).answers.sharpCircleMm;
      if (quick.state !== 'known' || slow.state !== 'known') throw new Error('the sharp circle is known');
      for (const [a, b] of [
        [quick.value, slow.value],
        [quick.low, slow.low],
        [quick.high, slow.high],
      ] as const)
        expect(Math.abs((a as number) / (b as number) - 1)).toBeLessThan(0.01);
    }
  }, 20_000);

  it('tells two lenses apart, and the two ways round', () => {
    const { hurried } = hurrying(glassworks());
    const at = (pairing: Pairing) => evaluate(pairing, hurried).answers.sharpCircleMm;
    const one = glassed('close-up-5d-58-glass', 60);
    const turned = { ...one, relay: { ...one.relay, reversed: !one.relay.reversed } };
    expect(at(one)).not.toEqual(at(turned));
    expect(at(one)).toEqual(at(one));
  });
});

describe('glass in a hurry where a stop cuts', () => {
  it('is exact, ± and all, whatever was learnt elsewhere, and learns nothing false', () => {
    const { exact, hurried } = hurrying(glassworks());
    const at = (infinitySpaceMm: number): Pairing => {
      const pairing = glassed('close-up-5d-58-glass', infinitySpaceMm);
      return { ...pairing, relay: { ...pairing.relay, clearApertureMm: { value: 24, plusMinus: 2, origin: 'assumed' } } };
    };
    const circle = (pairing: Pairing, works: Glassworks) => {
      const answer = evaluate(pairing, works).answers.sharpCircleMm;
      if (answer.state !== 'known') throw new Error('the sharp circle is known');
      return answer;
    };
    circle(at(120), exact);
    for (const space of [135, 150]) {
      const [quick, slow] = [circle(at(space), hurried), circle(at(space), glassworks())];
      expect(quick.value).toBeCloseTo(slow.value, 9);
      for (const end of ['low', 'high'] as const) expect(Math.abs((quick[end] as number) / (slow[end] as number) - 1)).toBeLessThan(0.012);
    }
    // Back where nothing cuts it is near what it was.
    const wide = glassed('close-up-5d-58-glass', 100);
    expect(Math.abs(circle(wide, hurried).value / circle(wide, glassworks()).value - 1)).toBeLessThan(0.012);
  }, 20_000);
});
