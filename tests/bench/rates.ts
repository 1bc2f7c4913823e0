import { familyOf, spacings } from '../../core/glassworks.ts';
import { evaluate, pairingSchema, report, sweep } from '../../core/index.ts';
import opening from '../../data/opening.json' with { type: 'json' };
import { rate } from '../measure/timed.ts';
import { GLASSED, JUDGING, WORKS } from './relay.ts';

/** What else one waits for, times a second: told without floors, because no ratio says what they ought to be. */
export function rates(): Record<string, number> {
  const pairing = pairingSchema.parse(opening.pairing);
  const all = {
    'report, ± and 128 points': () => report(pairing),
    'figures with ±': () => evaluate(pairing),
    'vary the relay, 60 values': () => sweep({ pairing, vary: '/relay/focalLengthMm', from: 100, to: 400, steps: 60 }),
    'search, 2 × 60 spacings': () => [...spacings(JUDGING, { fromMm: 20, toMm: 150, count: 60 })],
    'a class of 16 cemented lenses': () => familyOf('cemented-achromat', 200, 54),
    'report of a relay with glass': () => report({ ...GLASSED }, WORKS),
  };
  return Object.fromEntries(Object.entries(all).map(([name, of]) => [name, Number(rate(of).toPrecision(3))]));
}
