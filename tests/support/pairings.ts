import type { Pairing, QuantityInput } from '../../core/index.ts';
import { type Random, random } from './random.ts';

/** A value whose interval is up to `share` of it, at random measured, assumed or marked and bare. */
function about(r: Random, value: number, share: number): QuantityInput {
  if (r.chance(0.4)) return value;
  return { value, plusMinus: Math.abs(value) * r.between(0.1, 1) * share, origin: r.oneOf(['measured', 'assumed', 'marked'] as const) };
}

/**
 * Pairings such as people own, many of them near a kink: rims about as wide as the beam, fields about as
 * wide as the sensor, rings that may or may not limit the aperture.
 */
export function randomPairing(r: Random): Pairing {
  const reference = r.oneOf([200, 180, 165, 164.5]);
  const magnification = r.oneOf([2, 4, 5, 7.5, 10, 20, 40]);
  const na = Math.min(0.9, magnification * r.between(0.012, 0.03));
  const f = r.between(80, 420);
  const [widthMm, heightMm, pixelPitchUm] = r.oneOf([
    [36, 24, 4.35],
    [23.5, 15.6, 3.9],
    [17.3, 13, 3.3],
    [43.8, 32.9, 3.76],
  ] as const);
  const diagonal = Math.hypot(widthMm, heightMm);
  const pupil = (2 * na * reference) / magnification;
  const space = r.between(20, 180);
  const kind = r.oneOf(['supplementary', 'supplementary', 'tube-lens', 'camera-lens'] as const);
  const beam = pupil + (space * diagonal) / f;
  const stops = Array.from({ length: r.integer(0, 3) }, () =>
    r.chance(0.6)
      ? { diameterMm: about(r, pupil * r.between(0.8, 2.5), 0.15), fromShoulderMm: about(r, r.between(0, 0.9 * space), 0.1) }
      : { diameterMm: about(r, diagonal * r.between(0.7, 1.3), 0.05), fromSensorMm: about(r, r.between(10, 0.6 * f), 0.05) },
  );
  // Drawn apart, so that the rest of a seed's pairings stay what they are.
  const own = random(Math.floor(f * 1e6));
  const bench = {
    workingDistanceMm: about(own, own.between(5, 40), 0.2),
    parfocalDistanceMm: about(own, own.between(45, 95), 0.02),
    ...(own.chance(0.5) ? { noseDiameterMm: about(own, own.between(12, 34), 0.1) } : {}),
  };
  return {
    objective: {
      magnification: about(r, magnification, 0.05),
      na: about(r, na, 0.05),
      referenceFocalLengthMm: reference,
      ...bench,
      fieldNumberMm: about(r, (diagonal * reference * r.between(0.6, 1.3)) / f, 0.15),
      ...(r.chance(0.5)
        ? { exitPupilFromShoulderMm: { value: r.between(-30, 10), plusMinus: r.between(1, 30), origin: 'assumed' as const } }
        : {}),
    },
    relay: {
      kind,
      focalLengthMm: about(r, f, 0.05),
      clearApertureMm: about(r, beam * r.between(0.6, 1.3), 0.1),
      ...(kind === 'camera-lens'
        ? { entrancePupilDiameterMm: about(r, beam * r.between(0.6, 1.3), 0.1), entrancePupilDepthMm: about(r, r.between(20, 110), 0.3) }
        : {}),
      ...(r.chance(0.4) ? { imageCircleMm: about(r, diagonal * r.between(0.7, 1.3), 0.1) } : {}),
    },
    sensor: { widthMm, heightMm, pixelPitchUm },
    infinitySpaceMm: about(r, space, 0.1),
    ...(stops.length > 0 ? { stops } : {}),
    subject: { widthMm: own.between(0.2, 6), heightMm: own.between(0.2, 6), depthMm: own.between(0.05, 2) },
    ...(r.chance(0.15) ? { sensorOffsetMm: about(r, r.between(-3, 8), 0.5) } : {}),
  };
}
