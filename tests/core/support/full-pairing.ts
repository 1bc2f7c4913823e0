import type { Pairing, QuantityInput } from '../../../core/index.ts';
import type { Random } from '../../support/random.ts';

/** A value with an interval of its own, so that no class stands in for either. */
const about = (r: Random, value: number): QuantityInput =>
  r.chance(0.5)
    ? { value, plusMinus: 0 }
    : { value, plusMinus: Math.abs(value) * r.between(0, 0.03), origin: r.oneOf(['measured', 'assumed', 'marked']) };

/** A pairing with every number stated that a class could stand in for; many are cut, some are not. */
export function fullPairing(r: Random): Pairing {
  const reference = r.oneOf([200, 180, 165, 164.5]);
  const magnification = r.oneOf([2, 4, 5, 10, 20]);
  const na = magnification * r.between(0.015, 0.035);
  const pupil = (2 * na * reference) / magnification;
  const f = r.between(90, 400);
  const space = r.between(30, 160);
  const width = r.between(15, 40);
  const height = width * r.oneOf([2 / 3, 3 / 4]);
  const kind = r.oneOf(['supplementary', 'tube-lens', 'camera-lens'] as const);
  const wide = (): number => pupil * r.between(0.9, 2.5);
  const columns = r.integer(3000, 9000);
  return {
    objective: {
      magnification: about(r, magnification),
      na: about(r, na),
      referenceFocalLengthMm: reference,
      exitPupilFromShoulderMm: about(r, r.between(-30, 10)),
      ...(r.chance(0.8) ? { fieldNumberMm: about(r, r.between(15, 40)) } : {}),
      workingDistanceMm: about(r, r.between(5, 40)),
      parfocalDistanceMm: about(r, r.between(45, 95)),
      noseDiameterMm: about(r, r.between(12, 34)),
      coverGlassMm: magnification > 4 ? { value: 0.17, plusMinus: 0.01 } : 0,
      ...(r.chance(0.2) ? { testedFieldMm: about(r, r.between(15, 40)) } : {}),
    },
    relay: {
      kind,
      ...(r.chance(0.6) ? { focalLengthMm: about(r, f) } : { powerDioptre: about(r, 1000 / f) }),
      clearApertureMm: about(r, wide()),
      frontPrincipalPlaneFromRimMm: about(r, r.between(-10, 40)),
      ...(kind === 'camera-lens' ? { entrancePupilDepthMm: about(r, r.between(20, 90)), rimToSensorMm: about(r, r.between(80, 400)) } : {}),
      ...(kind !== 'camera-lens' ? {} : r.chance(0.5) ? { entrancePupilDiameterMm: about(r, wide()) } : { fNumber: about(r, f / wide()) }),
      ...(r.chance(0.5) ? { imageCircleMm: about(r, r.between(20, 60)) } : {}),
    },
    sensor: {
      widthMm: width,
      heightMm: height,
      ...(r.chance(0.5) ? { pixelPitchUm: about(r, (1000 * width) / columns) } : { columns, rows: Math.round((columns * height) / width) }),
      ...(r.chance(0.3) ? { registerMm: about(r, r.between(16, 45)), throatDiameterMm: about(r, r.between(30, 55)) } : { registerMm: 18 }),
    },
    infinitySpaceMm: about(r, space),
    stops: Array.from({ length: r.integer(0, 3) }, () =>
      r.chance(0.6)
        ? { diameterMm: about(r, wide()), fromShoulderMm: about(r, r.between(0, 0.9 * space)) }
        : { diameterMm: about(r, r.between(15, 40)), fromSensorMm: about(r, r.between(10, 0.5 * f)) },
    ),
    wavelengthNm: r.between(450, 650),
    ...(r.chance(0.3) ? { sensorOffsetMm: about(r, r.between(-3, 6)) } : {}),
    ...(r.chance(0.3) ? { litThreshold: r.between(0.2, 0.8) } : {}),
    ...(r.chance(0.5)
      ? {
          depth: {
            convention: r.oneOf(['wave-and-pixel', 'half-wave-term', 'double-wave-term', 'high-aperture'] as const),
            ...(r.chance(0.5) ? { blurUm: r.between(2, 20) } : {}),
          },
        }
      : {}),
    ...(r.chance(0.6)
      ? {
          subject: {
            ...(r.chance(0.4) ? { index: r.between(1.2, 1.5) } : {}),
            widthMm: r.between(0.2, 6),
            ...(r.chance(0.5) ? { heightMm: r.between(0.2, 6) } : {}),
            depthMm: r.between(0.01, 2),
          },
        }
      : {}),
  };
}

/** The same pairing with every length `k` times as large, wavelength and pixels included; dioptres fall. */
export function scaled(pairing: Pairing, k: number): Pairing {
  const visit = (value: unknown, power: number): unknown => {
    if (typeof value === 'number') return value * k ** power;
    if (Array.isArray(value)) return value.map((item) => visit(item, power));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, visit(inner, powerOf(key) ?? power)]));
  };
  return visit(pairing, 0) as Pairing;
}

const powerOf = (key: string): number | undefined => (/(Mm|Um|Nm)$/.test(key) ? 1 : key === 'powerDioptre' ? -1 : undefined);
