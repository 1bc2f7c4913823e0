import { engravedObjective, engravedRelay, engravedSensor, impliedBy } from './fields/engrave.ts';
import { answered } from './state/draft.ts';

/** On a phone, where the lines stand a screen below: what the answer is of, in one line, each part leading to its own. */
export function Gear() {
  const { objective, relay, sensor } = answered.value.pairing;
  const parts = [
    ['objective', engravedObjective(objective)],
    ['relay', engravedRelay({ ...impliedBy(answered.value), ...relay })],
    ['sensor', engravedSensor(sensor)],
  ] as const;
  return (
    <p class="gear">
      {parts.map(([name, text], i) => (
        <span key={name}>
          {i > 0 && ' · '}
          <button type="button" class="lead" onClick={() => document.getElementById(`engraved-${name}`)?.focus()}>
            {text}
          </button>
        </span>
      ))}
    </p>
  );
}
