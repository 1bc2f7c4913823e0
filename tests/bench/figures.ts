import { pairingSchema } from '../../core/index.ts';
import { inputsOf } from '../../core/pairing/inputs.ts';
import { GRAPH } from '../../core/pairing/registry.ts';
import opening from '../../data/opening.json' with { type: 'json' };
import { faster } from '../measure/timed.ts';
import { straightLine } from './straight-line.ts';

/** The graph of figures against the same figures written down in a row. */
export function figures() {
  const pairing = pairingSchema.parse(opening.pairing);
  const { values } = inputsOf(pairing);
  return faster(
    () => GRAPH.fill(values),
    () => straightLine(pairing),
  );
}
