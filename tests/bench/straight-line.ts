import {
  AIRY_ZERO,
  circleInRectangle,
  cutoffSlope,
  diffractionMtf,
  onsetSlope,
  type Pairing,
  relativeIllumination,
  seenStops,
  slopeAtShare,
} from '../../core/index.ts';
import { clearingSpans } from '../../core/pupil/spaces.ts';

const plain = (q: unknown): number => (typeof q === 'number' ? q : (q as { value: number }).value);

/** The figures of a pairing with a close-up lens in focus at infinity, as one would write them down in a row: the bench's yardstick. */
export function straightLine({ objective, relay, sensor, infinitySpaceMm }: Pairing): number[] {
  const M = plain(objective.magnification);
  const NA = plain(objective.na);
  const reference = plain(objective.referenceFocalLengthMm);
  const field = plain(objective.fieldNumberMm);
  const W = plain(sensor.widthMm);
  const H = plain(sensor.heightMm);
  const p = plain(sensor.pixelPitchUm) / 1000;
  const S = plain(infinitySpaceMm);
  const l = 550e-6;
  const fo = reference / M;
  const f = 1000 / plain(relay.powerDioptre);
  const m = f / fo;
  const Dp = 2 * NA * fo;
  const d = Math.sqrt(W * W + H * H);
  const rig = {
    stops: [
      { label: '', path: '', diameterMm: Dp, place: 'pupil' as const, atMm: 0 },
      { label: '', path: '', diameterMm: plain(relay.clearApertureMm), place: 'relay' as const, atMm: 0 },
    ],
    infinitySpaceMm: S,
    exitPupilFromShoulderMm: -19.75,
    principalPlaneFromRimMm: 0,
    relayFocalLengthMm: f,
    sensorOffsetMm: 0,
  };
  const seen = seenStops(rig);
  const r0 = seen.radius[seen.limiting] as number;
  const na = r0 / fo;
  const N = m / (2 * na);
  const t = d / 2 / f;
  const E = relativeIllumination(seen, t);
  const half = slopeAtShare(seen, 0.5);
  const corrected = (field * f) / reference;
  const lit = 2 * f * half;
  const shares = [corrected, lit].map((c) => circleInRectangle(Math.min(c, W + H) / 2, W, H) / (W * H));
  const covered = Math.min(...shares);
  const optical = (4 * W * H) / (l * N) ** 2 / 1e6;
  const nyquist = 1 / (2 * p);
  const z = S - rig.exitPupilFromShoulderMm;
  return [
    m,
    W / m,
    H / m,
    d / m,
    fo,
    f,
    corrected,
    lit,
    ...shares,
    covered,
    E,
    -Math.log2(E),
    N / Math.sqrt(E),
    Math.max((d * reference) / field, d / 2 / half),
    clearingSpans(rig, d / 2)[0]?.[1] ?? 0,
    (1000 * (AIRY_ZERO / 2) * l) / na,
    2000 * AIRY_ZERO * l * N,
    (2 * na) / l,
    1 / (l * N),
    nyquist,
    (1000 * p) / m,
    (l * N) / (2 * p),
    diffractionMtf(nyquist * l * N) * (2 / Math.PI),
    optical,
    Math.min(optical, (W * H) / (p * p) / 1e6) * covered,
    Dp,
    na,
    N,
    (1000 * l) / (na * na) + (1000 * p) / (m * na),
    0,
    (Math.atan(t * (1 - z / f)) * 180) / Math.PI,
    onsetSlope(seen) * f,
    half * f,
    cutoffSlope(seen) * f,
  ];
}
