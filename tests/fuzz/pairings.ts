import fc from 'fast-check';
import { benchPairing, boundsPairing } from '../api/arbitrary-pairing.ts';
import { OBJECTIVES, PLAIN_RELAYS, SENSORS } from '../core/choose/catalogue.ts';
import { pairingWith } from '../core/lens/rigs.ts';
import { fullPairing } from '../core/support/full-pairing.ts';
import { randomPairing } from '../support/pairings.ts';
import type { Random } from '../support/random.ts';

/** Pairings that get through, written in all the ways in which a request may. */

export type Body = Record<string, unknown>;
export type Maker = (r: Random) => Body;

/** Drawn once: these are slower to draw than to answer. */
const STOCK = { seed: 20_262, numRuns: 60 };
const BENCH = fc.sample(benchPairing, STOCK);
const BOUNDS = fc.sample(boundsPairing, STOCK);

export const id = (r: Random, list: readonly { id: string }[]): string => r.oneOf(list).id;

export function listed(r: Random): Body {
  const part = (list: readonly { id: string }[], differs: Body): unknown =>
    r.chance(0.6) ? id(r, list) : { from: id(r, list), ...(r.chance(0.5) ? differs : {}) };
  return {
    objective: part(OBJECTIVES, { exitPupilFromShoulderMm: { value: r.between(-20, 5), plusMinus: 2, origin: 'measured' } }),
    relay: part(PLAIN_RELAYS, { clearApertureMm: r.between(30, 60) }),
    sensor: part(SENSORS, { pixelPitchUm: { value: r.between(3, 6), plusMinus: 0.01 } }),
    infinitySpaceMm: r.between(20, 150),
    ...(r.chance(0.5) ? { subject: { widthMm: r.between(0.3, 4), depthMm: r.between(0.05, 1) } } : {}),
  };
}

/** With glass that is traced, a hundred times as slow as the rest. */
const glazed = (r: Random): Body =>
  pairingWith(
    { reversed: r.chance(0.5) },
    { infinitySpaceMm: r.between(20, 120), sharp: { spectrum: 'one wavelength', focus: r.oneOf(['one frame', 'stack']) } },
  );

export function soundPairing(r: Random): Body {
  if (r.chance(0.02)) return glazed(r);
  return r.oneOf<Maker>([
    listed,
    listed,
    fullPairing as never,
    randomPairing as never,
    () => r.oneOf(BENCH) as never,
    () => r.oneOf(BOUNDS) as never,
  ])(r);
}
