import { figure, Gap, step } from '../../figure.ts';
import { relayFocalLengthMm } from '../../pairing/first-order.ts';
import { principalPlane, sensorOffset } from '../../pairing/leaves.ts';
import { offsetFocusedOn } from '../../paraxial/conjugates.ts';
import { MM_PER_M } from '../../units.ts';
import { chain } from './offset.ts';
import { farThing } from './settings.ts';
import { tubeLongerMm } from './tube.ts';

/** What is left when the relay alone is focused on something far instead of on infinity. */

export const farErrorMm = figure({
  id: 'farErrorMm',
  unit: 'mm',
  symbol: 's_f',
  words: "how far beyond the relay's focus the sensor stands when the relay alone was focused on the far thing",
  source: "conjugates of one lens: f² / (X_H − f), X_H from the thing to the relay's front principal plane",
  needs: [farThing.leaf, principalPlane, relayFocalLengthMm],
  of: (X, h, f) => {
    const offset = offsetFocusedOn(f, X * MM_PER_M + h);
    return Number.isFinite(offset) ? offset : Gap.none("the thing stands nearer than the relay's focal length: it has no picture");
  },
  as: (X, h, f) => `${f}² / (${X} × 1000 + ${h} − ${f})`,
});

/** Against the relay set to infinity itself: wherever the pairing's own sensor stands, the far thing says where this one does. */
export const far = chain({ id: 'far', mark: 'f', when: 'after the relay was focused on the far thing' }, farErrorMm, {
  scale: relayFocalLengthMm,
});

const farthestPlace = step({
  id: 'farthestPlace',
  symbol: 's_b',
  unit: 'mm',
  words: "sensor beyond the relay's focus, with the tube as long as it may be",
  needs: [sensorOffset, tubeLongerMm],
  of: (s, t) => (s + t > 0 ? s + t : Gap.none("the sensor stands before the relay's focus, where it sees nothing sharp however far")),
  as: (s, t) => `${s} + ${t}`,
});

export const nearestThingM = figure({
  id: 'nearestThingM',
  unit: 'm',
  symbol: 'X_0',
  words: "the nearest thing, from the relay's rim, that it may be focused on in the place of infinity",
  source: 'conjugates of one lens, backward: f² / s + f',
  needs: [relayFocalLengthMm, farthestPlace, principalPlane],
  of: (f, s, h) => Math.max(0, (f * f) / s + f - h) / MM_PER_M,
  as: (f, s, h) => `max(0, ${f}² / ${s} + ${f} − ${h}) / 1000`,
});
