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

/** What is taken where the opening example says nothing (mm): where the pupil lies behind the shoulder, how wide the nose is. */
const PUPIL_FROM_SHOULDER = -19.75;
const NOSE = 20.81108834234519;
/** Of a stack's frame, what it has in common with the next. */
const OVERLAP = 0.2;
const DEG = 180 / Math.PI;

/** The figures of a pairing with a close-up lens in focus at infinity, as one would write them down in a row: the bench's yardstick. */
export function straightLine({ objective, relay, sensor, infinitySpaceMm, subject }: Pairing): number[] {
  const M = plain(objective.magnification);
  const NA = plain(objective.na);
  const reference = plain(objective.referenceFocalLengthMm);
  const field = plain(objective.fieldNumberMm);
  const W = plain(sensor.widthMm);
  const H = plain(sensor.heightMm);
  const p = plain(sensor.pixelPitchUm) / 1000;
  const S = plain(infinitySpaceMm);
  const free = plain(objective.workingDistanceMm);
  const parfocal = plain(objective.parfocalDistanceMm);
  const rim = plain(relay.clearApertureMm);
  const [a, b, thick] = [subject?.widthMm as number, subject?.heightMm as number, 1000 * (subject?.depthMm as number)];
  const l = 550e-6;
  const fo = reference / M;
  const f = 1000 / plain(relay.powerDioptre);
  const m = f / fo;
  const Dp = 2 * NA * fo;
  const d = Math.sqrt(W * W + H * H);
  const rig = {
    stops: [
      { label: '', path: '', diameterMm: Dp, place: 'pupil' as const, atMm: 0 },
      { label: '', path: '', diameterMm: rim, place: 'relay' as const, atMm: 0 },
    ],
    infinitySpaceMm: S,
    exitPupilFromShoulderMm: PUPIL_FROM_SHOULDER,
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
  const across = d / m;
  const pixel = (1000 * p) / m;
  const rayleigh = (1000 * (AIRY_ZERO / 2) * l) / na;
  const depth = (1000 * l) / (na * na) + (1000 * p) / (m * na);
  const steps = Math.max(0, Math.floor((thick - depth) / (depth * (1 - OVERLAP))));
  return [
    m,
    W / m,
    H / m,
    across,
    m * Math.max(Math.max(a, b) / Math.max(W, H), Math.min(a, b) / Math.min(W, H)),
    Math.min(corrected, lit) / m,
    free,
    Math.min(Math.atan(free / ((NOSE + across) / 2)), Math.atan((parfocal + S) / ((rim + across) / 2))) * DEG,
    S + f,
    depth + steps * depth * (1 - OVERLAP) < thick ? steps + 2 : steps + 1,
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
    rayleigh,
    Math.max(rayleigh, 2 * pixel),
    2000 * AIRY_ZERO * l * N,
    (2 * na) / l,
    1 / (l * N),
    nyquist,
    pixel,
    (l * N) / (2 * p),
    diffractionMtf(nyquist * l * N) * (2 / Math.PI),
    optical,
    Math.min(optical, (W * H) / (p * p) / 1e6) * covered,
    Dp,
    na,
    N,
    depth,
    0,
    Math.atan(t * (1 - z / f)) * DEG,
    onsetSlope(seen) * f,
    half * f,
    cutoffSlope(seen) * f,
  ];
}
