import { SETTINGS, type SettingKey, type Settings, settingsSchema } from '../../../core/table.ts';
import { type Random, random } from '../../support/random.ts';

/** Between what each number lies as people set it: numbers of the same kind as the drawn pairings. */
const RANGES: Partial<Record<SettingKey, readonly [number, number]>> = {
  overlap: [0.05, 0.5],
  railErrorUm: [0, 0.3],
  railIncrementUm: [0.02, 0.2],
  closeUpFocalLengthMm: [100, 400],
  closeUpClearApertureMm: [30, 80],
  cameraFocalLengthMm: [50, 300],
  closestFocusMm: [600, 2000],
  cameraMagnification: [0.25, 1],
  cameraSubjectDistanceMm: [200, 800],
  cameraLengthMm: [80, 300],
  cameraFNumber: [4, 22],
  pupilRatio: [0.5, 1.5],
  cameraPrincipalPlaneMm: [-40, 40],
  cameraPupilDepthMm: [10, 120],
  nearFocalLengthMm: [40, 60],
  secondPowerDioptre: [1, 5],
  secondSeparationMm: [1, 12],
  extensionMm: [10, 60],
  tubeErrorMm: [-6, 6],
  magnificationTolerance: [0.005, 0.02],
  strehlLimit: [0.7, 0.9],
  shiftLimitMm: [0.2, 3],
  farThingM: [5, 200],
  slipMm: [0, 0.3],
  slipIndex: [1.4, 1.6],
  resinMm: [0, 0.4],
  resinIndex: [1.45, 1.6],
  referenceFNumber: [4, 16],
  referencePupilRatio: [0.6, 2],
  exposureS: [0.002, 0.5],
  flashMs: [0.05, 2],
  blurPixels: [0.5, 2],
  driftUmPerS: [0.5, 20],
  swingUm: [0.2, 3],
  swingHz: [5, 80],
  fieldCurvatureUm: [1, 60],
  settlingS: [0.5, 5],
  flashRecycleS: [0, 3],
  noseFrontDiameterMm: [6, 20],
  noseTaperLengthMm: [1, 12],
  inTheWayMm: [0, 3],
  diffuserDiameterMm: [15, 45],
  diffuserTopDiameterMm: [12, 40],
  diffuserHeightMm: [3, 30],
  diffuserThicknessMm: [0.1, 2],
  relayLengthMm: [3, 27],
  seatBehindGlassMm: [0, 5],
  builtTubeMm: [50, 300],
};

/** A number of its own for each key, so that one more setting moves no other's. */
const numbered = (key: string): number => [...key].reduce((sum, letter) => (31 * sum + letter.charCodeAt(0)) % 1_000_003, 7);
const SEEDS = 1_000_000;

/** Every setting with a value, half of the numbers with a ±. */
export function fullSettings(r: Random): Settings {
  const seed = r.integer(1, SEEDS);
  const entries = SETTINGS.map((one) => {
    const own = random(seed + SEEDS * numbered(one.key));
    const [from, to] = RANGES[one.key as SettingKey] ?? [Number.NaN, Number.NaN];
    const value = own.between(from, to);
    return [one.key, own.chance(0.5) ? value : { value, plusMinus: 0.02 * Math.min(value - one.bounds[0], one.bounds[1] - value) }];
  });
  return settingsSchema.parse(Object.fromEntries(entries));
}

/** The power of length in the units that settings carry. */
const LENGTH: Record<string, number> = {
  mm: 1,
  µm: 1,
  m: 1,
  nm: 1,
  'mm/s': 1,
  'µm/s': 1,
  D: -1,
  '': 0,
  s: 0,
  ms: 0,
  Hz: 0,
  '°': 0,
  '%': 0,
};

/** The same settings with every length `k` times as large. */
export function scaledSettings(settings: Settings, k: number): Settings {
  const entries = SETTINGS.map((one) => {
    const given = settings[one.key as keyof Settings] as number | string | { value: number; plusMinus?: number };
    const power = LENGTH[one.leaf.unit];
    if (power === undefined) throw new Error(`${one.key}: what is the dimension of ${one.leaf.unit}?`);
    const times = k ** power;
    if (typeof given === 'string') return [one.key, given];
    if (typeof given === 'number') return [one.key, times * given];
    return [one.key, { ...given, value: times * given.value, plusMinus: times * (given.plusMinus ?? 0) }];
  });
  return settingsSchema.parse(Object.fromEntries(entries));
}
