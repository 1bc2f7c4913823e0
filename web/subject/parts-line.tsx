import type { Pairing } from '../../core/index.ts';
import { engravedObjective, engravedRelay } from '../fields/engrave.ts';

/** The two parts of an entry by their names, and below as they would be engraved. */
export function PartsLine({ pairing: { objective, relay }, at }: { pairing: Pairing; at: string }) {
  const [o, r] = [engravedObjective(objective), engravedRelay(relay)];
  return (
    <>
      <h3>
        {objective.name ?? o} <i>with</i> {relay.name ?? r} <span class="at">{at}</span>
      </h3>
      <p class="parts-line">
        {o} · {r}
        {relay.reversed ? ', turned round' : ''}
      </p>
    </>
  );
}

/** A pairing in a few words, for those who hear the page. */
export const inWords = ({ objective, relay }: Pairing): string =>
  `${objective.name ?? engravedObjective(objective)} with ${relay.name ?? engravedRelay(relay)}`;
