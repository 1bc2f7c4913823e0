import { figure, Gap, openFigure } from '../../figure.ts';
import { rimToFocus, subjectNearer, totalLengthMm } from '../../pairing/bench.ts';
import {
  backFocalLength,
  infinitySpace,
  parfocalDistance,
  register,
  relayKind,
  sensorOffset,
  workingDistance,
} from '../../pairing/leaves.ts';
import { builtTube, relayLength, seatBehindGlass } from './settings.ts';

const ANYWHERE = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
const IN_A_ROW = 'lengths in a row';

export const CARRIES_ITS_OWN = 'a camera lens carries its own tube and mount: nothing is built behind it';

const focusBehindRelayMm = openFigure({
  id: 'focusBehindRelayMm',
  unit: 'mm',
  symbol: 'l_b',
  words:
    "from the seat behind the relay to its focus, where a far thing is sharp: by its back focal length, or without it by the relay's own length",
  source: IN_A_ROW,
  needs: [relayKind, backFocalLength, seatBehindGlass.leaf, rimToFocus, relayLength.leaf],
  of: (kind, b, seat, rim, length) => {
    if (kind === 'camera-lens') return Gap.none(CARRIES_ITS_OWN);
    // Seat and length are guessed where they are not told.
    if (typeof b === 'number') return b - (seat as number);
    return typeof rim === 'number' ? rim - (length as number) : rim;
  },
  as: (_, b, seat, rim, length) => (b ? `${b} − ${seat}` : `${rim} − ${length}`),
  bounds: ANYWHERE,
});

const tubeLengthMm = figure({
  id: 'tubeLengthMm',
  unit: 'mm',
  symbol: 'T',
  words: "tube to build between the seat behind the relay and the camera's flange",
  source: IN_A_ROW,
  needs: [focusBehindRelayMm, sensorOffset, register],
  of: (l, s, r) =>
    l + s >= r ? l + s - r : Gap.none('the picture lies nearer to the relay than this camera can come: its register is too long'),
  as: (l, s, r) => `${l} + ${s} − ${r}`,
});

const builtTooLongMm = figure({
  id: 'builtTooLongMm',
  unit: 'mm',
  symbol: 'e_T',
  words: 'how much longer the tube was built than this pairing needs; negative where it is too short',
  source: IN_A_ROW,
  needs: [builtTube.leaf, tubeLengthMm],
  of: (built, T) => built - T,
  as: (built, T) => `${built} − ${T}`,
  bounds: ANYWHERE,
});

const rimFromFlangeMm = figure({
  id: 'rimFromFlangeMm',
  unit: 'mm',
  symbol: 'c_r',
  words: "from the camera's flange forward to the relay's front rim",
  source: IN_A_ROW,
  needs: [rimToFocus, sensorOffset, register],
  of: (l, s, r) => l + s - r,
  as: (l, s, r) => `${l} + ${s} − ${r}`,
  bounds: ANYWHERE,
});

const shoulderFromFlangeMm = figure({
  id: 'shoulderFromFlangeMm',
  unit: 'mm',
  symbol: 'c_s',
  words: "from the camera's flange forward to the objective's shoulder",
  source: IN_A_ROW,
  needs: [rimFromFlangeMm, infinitySpace],
  of: (c, S) => c + S,
  as: (c, S) => `${c} + ${S}`,
  bounds: ANYWHERE,
});

const subjectFromFlangeMm = figure({
  id: 'subjectFromFlangeMm',
  unit: 'mm',
  symbol: 'c_o',
  words: "from the camera's flange forward to the subject",
  source: `${IN_A_ROW}; the parfocal distance is measured in focus at infinity (ISO 9345)`,
  needs: [shoulderFromFlangeMm, parfocalDistance, subjectNearer],
  of: (c, a, nearer) => c + a - nearer,
  as: (c, a, nearer) => `${c} + ${a} − ${nearer}`,
  bounds: ANYWHERE,
});

const subjectToSensorMm = figure({
  id: 'subjectToSensorMm',
  unit: 'mm',
  symbol: 'L_o',
  words: 'from the subject to the sensor',
  source: IN_A_ROW,
  needs: [totalLengthMm, parfocalDistance, subjectNearer],
  of: (L, a, nearer) => L + a - nearer,
  as: (L, a, nearer) => `${L} + ${a} − ${nearer}`,
});

const barrelLengthMm = figure({
  id: 'barrelLengthMm',
  unit: 'mm',
  symbol: 'l_o',
  words: 'length of the objective from its nose to its shoulder',
  source: 'parfocal distance = working distance + barrel, by their definitions (ISO 9345)',
  needs: [parfocalDistance, workingDistance],
  of: (a, w) => (a >= w ? a - w : Gap.none('the working distance is longer than the parfocal distance')),
  as: (a, w) => `${a} − ${w}`,
});

export const FIGURES = [
  tubeLengthMm,
  builtTooLongMm,
  focusBehindRelayMm,
  rimFromFlangeMm,
  shoulderFromFlangeMm,
  subjectFromFlangeMm,
  subjectToSensorMm,
  barrelLengthMm,
] as const;
