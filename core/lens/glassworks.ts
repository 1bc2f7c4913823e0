import type { Problem } from '../errors.ts';
import type { GlassRelay, Glassworks } from '../pairing/glassworks.ts';
import { BOUNDS } from '../parts/quantity.ts';
import type { Relay } from '../parts/relay.ts';
import { rangeOf } from '../trace/lens.ts';
import { glassRelay } from './glass-relay.ts';
import { lensOfRelay } from './relay-lens.ts';

/** What works with glass, to be handed to `evaluate` and its like. Keeps what it made of the last relays. */
export function glassworks(): Glassworks {
  const kept = new WeakMap<Relay, Map<number, GlassRelay | readonly Problem[]>>();
  return {
    relay(relay, wavelengthNm) {
      const byWavelength = kept.get(relay) ?? new Map<number, GlassRelay | readonly Problem[]>();
      kept.set(relay, byWavelength);
      const before = byWavelength.get(wavelengthNm);
      if (before) return before;
      const made = madeOf(relay, wavelengthNm);
      byWavelength.set(wavelengthNm, made);
      return made;
    },
  };
}

function madeOf(relay: Relay, wavelengthNm: number): GlassRelay | readonly Problem[] {
  const { lens, problems } = lensOfRelay(relay);
  if (problems) return problems;
  const [least, greatest] = rangeOf(lens);
  if (wavelengthNm < least || wavelengthNm > greatest)
    return [
      {
        path: '/wavelengthNm',
        code: 'outOfRange',
        message: "lies outside what is known of the relay's glass",
        given: String(wavelengthNm),
        expected: `${least} to ${greatest} nm`,
      },
    ];
  const made = glassRelay(lens, wavelengthNm);
  const [shortest, longest] = BOUNDS.focalLengthMm;
  if (made.focalLengthMm >= shortest && made.focalLengthMm <= longest) return made;
  const f = Number(made.focalLengthMm.toPrecision(4));
  return [
    {
      path: '/relay/glass',
      code: 'noFocus',
      message: Number.isFinite(f) ? `comes to a focal length of ${f} mm` : 'has no power at all',
      given: 'these surfaces',
      expected: `a lens that gathers light, of ${shortest} to ${longest} mm`,
    },
  ];
}
