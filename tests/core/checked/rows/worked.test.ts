import { describe, expect, it } from 'vitest';
import type { Check } from '../../../../core/checked/check.ts';
import { APERTURE } from '../../../../core/checked/rows/aperture.ts';
import { CLOSE_UPS } from '../../../../core/checked/rows/close-up.ts';
import { CONJUGATES } from '../../../../core/checked/rows/conjugates.ts';
import { CONVENTIONS } from '../../../../core/checked/rows/conventions.ts';
import { DEPTH } from '../../../../core/checked/rows/depth.ts';
import { DIFFRACTION } from '../../../../core/checked/rows/diffraction.ts';
import { FIELD } from '../../../../core/checked/rows/field.ts';
import { OFF_INFINITY } from '../../../../core/checked/rows/off-infinity.ts';
import { RESOLUTION } from '../../../../core/checked/rows/resolution.ts';
import { SAMPLING } from '../../../../core/checked/rows/sampling.ts';
import { SIGHTINGS } from '../../../../core/checked/rows/sightings.ts';
import { TABLE_LIGHT } from '../../../../core/checked/rows/table-light.ts';

/**
 * A source prints a few digits, in which a wrong input could hide. So here each claim's own numbers are worked out
 * once more with a pocket calculator, to all digits, and core must give the same.
 */
type Worked = Readonly<Record<string, number | Readonly<Record<string, number>>>>;

/** The first zero of J1 over π: 1.2197. */
const AIRY = 3.831705970207512 / Math.PI;
/** Rayleigh's distance in µm, half of that times λ / NA. */
const apart = (na: number, um = 0.55): number => ((AIRY / 2) * um) / na;
/** The contrast of a round pupil at a share of its cut-off. */
const round = (share: number): number => (2 / Math.PI) * (Math.acos(share) - share * Math.sqrt(1 - share * share));

const FIELD_WORKED: Worked = {
  'INF-001': { f1: 200 / 10, φ1: 2 * 20 * 0.28 },
  // Half the 11 mm that the way of 232.7 mm leaves in full light: (24 − 11.2) · 200 / (2 · 232.7).
  'INF-002': { L: ((24 - 11.2) * 200) / 11, 'half the image': 1280 / 232.7 },
  'INF-012': 8800 / (50 * 0.5),
  'INF-015': { '1/3 inch': 6, '1/2 inch': 8, '2/3 inch': 11 },
  'PIX-003': { magnification: 8.45 / 100, field: 8.45 / 0.0845 },
  'PIX-004': 3.45 / 0.0845,
  'PIX-005': 6450 / 60,
};

const APERTURE_WORKED: Worked = {
  'AP-001': { 'with tubes': (1 + 1) * 4, 'working f-number': 1 / (2 * 0.0625), NA: 1 / (2 * 8) },
  'AP-003': { '5x/0.14': 5 / 0.28, '10x/0.28': 10 / 0.56, '20x/0.42': 20 / 0.84, '10x/0.25': 20 },
  'AP-005': {
    'f/1.2': 5 / 12,
    'f/1.4': 5 / 14,
    'f/2': 1 / 4,
    'f/2.8': 5 / 28,
    'f/4': 1 / 8,
    'f/5.6': 5 / 56,
    'f/8': 1 / 16,
    'f/11': 1 / 22,
    'f/16': 1 / 32,
  },
  // A stop is a factor √2; two of them are 2.
  'AP-006': Object.fromEntries(
    [1, 2, 4, 8, 16, 32].flatMap((N) => [
      [`after ${N}`, N * Math.SQRT2],
      [`second after ${N}`, 2 * N],
    ]),
  ),
};

const RESOLUTION_WORKED: Worked = {
  'RES-001': apart(0.12),
  'RES-002': apart(0.25),
  'RES-003': apart(0.45),
  'RES-004': apart(0.8),
  'RES-201': apart(0.9),
  'PIX-006': 1000 * apart(1.4, 0.5),
  'RES-202': 530 / (2 * 0.65),
  'RES-203': 0.55 / (2 * 1.4),
  'RES-204': ((AIRY / 2) * 400 * 2) / (1.45 + 0.95),
  'RES-205': { µm: apart(0.114, 0.546), 'lp/mm': 1000 / apart(0.114, 0.546) },
  'RES-401': { subject: apart(0.25), sensor: AIRY * 0.55 * 20 },
  'RES-211': apart(0.25),
  'RES-212': apart(0.65),
  'RES-213': apart(1.25),
};

/** λ/(2 NA) at the subject, `M` times that on the sensor, and two pixels to it. */
const line = (M: number, na: number) => {
  const limit = 0.55 / (2 * na);
  return {
    'resolution limit, µm': limit,
    'the same on the sensor, µm': M * limit,
    'pixel that just samples it, µm': (M * limit) / 2,
  };
};

const SAMPLING_WORKED: Worked = {
  'PIX-001': 500 / 3.45,
  'PIX-002': 500 / (8450 / 2448),
  'PIX-101': line(1, 0.04),
  'PIX-102': line(2, 0.06),
  'PIX-103': line(2, 0.1),
  'PIX-104': line(4, 0.1),
  'PIX-106': line(4, 0.2),
  'PIX-108': line(10, 0.3),
  'PIX-111': line(20, 0.5),
  'PIX-113': line(40, 0.65),
  'PIX-115': line(40, 0.95),
  'PIX-117': line(100, 0.9),
};

const DIFFRACTION_WORKED: Worked = {
  'DIF-002': AIRY,
  'DIF-009': { subject: 500 / 0.55, sensor: 1000 / (0.55 * 20) },
  'DIF-010': Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`${(i + 1) / 10}`, round((i + 1) / 10)])),
  'DIF-010b': Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`${(i + 1) / 10} of the way`, round((i + 1) / 10)])),
  // The rig's pixel of 1 mm asks for half a pair of lines to the mm, its optics end at 2 · 0.9 / 200 nm.
  'DIF-012': { pixel: 2 / Math.PI, 'of a whole rig': (2 / Math.PI) * round((0.5 * 200e-6) / (2 * 0.9)) },
  'DIF-014': { 'at 144.93 lp/mm': Math.sin(Math.PI * 0.5000085) / (Math.PI * 0.5000085), 'first zero': 0 },
};

const DEPTH_WORKED: Worked = {
  'DOF-001': 0.55 / 0.12 ** 2,
  'DOF-002': 0.55 / 0.25 ** 2,
  'DOF-003': 0.55 / 0.45 ** 2,
  'DOF-004': (0.55 * 1.515) / 0.8 ** 2,
  'DOF-322': { 'by name': 55 * (1 + 1 / 8), 'unless told otherwise': 55 * (1 + 1 / 8) },
  'DOF-341': { sensor: 10 * 10, subject: (10 * 10) / 5 ** 2 },
  'DOF-343': 2 * 0.55 * 10 ** 2,
  'THN-007': 0.55 / (2 * 0.25 ** 2),
};

const CONVENTIONS_WORKED: Worked = {
  'CNV-001': {
    "'wave-and-pixel'": 0.55 * 16,
    "'half-wave-term', on one side": 0.55 * 8,
    "'double-wave-term'": 0.55 * 32,
    "'high-aperture'": 0.55 / (4 * Math.sin(Math.asin(0.25) / 2) ** 2),
  },
  'CNV-002': apart(1),
  'CNV-003': { radius: AIRY, factor: AIRY },
  'AP-004': { 'f/1.4': 5 / 14, 'f/2': 1 / 4, 'f/4': 1 / 8 },
  'CNV-004': 40 * 0.28,
  'CNV-005': apart(0.1137, 0.546),
};

const CLOSE_UPS_WORKED: Worked = {
  'CU-002': { cm: 100 / 4, 'farthest, cm': 100 / 4, '3 and 4': 3 + 4, dioptres: 1 + 2 + 4 },
  'CU-003': {
    m: 1 / 3,
    'with 300 mm': 0.3 * 3,
    'farthest, m': 1 / 3,
    'on 300 mm': 0.3 * 3,
    // The 1.5 m are 2/3 of a dioptre: 3 + 2/3 of them in all.
    'nearest, m': 3 / 11,
    'times as large': 1.5 / (3 / 11),
    'closest, m': 3 / 11,
    gain: 1.5 / (3 / 11),
  },
  'CU-004': { 'as an objective': 0.2 * 5, 'screwed on': 0.2 * 5 },
  'CU-005': { '+2': 1 / 2, '+4': 1 / 4 },
};

const CONJUGATES_WORKED: Worked = {
  'WD-001': { 'image, mm': 1 / (1 / 6 - 1 / 6.2), magnification: -6 / 0.2, 'as a pairing': 30 },
  'WD-002': { 'image, mm': -1 / (1 / 44 - 1 / 50), eyepiece: 50 / (50 - 44), 'in all': (-30 * 50) / 6 },
  'WD-003': { 'x′, mm': 36 / 0.2, '1/x': 1 / 0.2 },
  'WD-005': { lengthwise: 10 ** 2, 'across, 1 mm off infinity': 10 },
};

/** Strehl ratio of `waves` of primary spherical aberration at best focus: 6u² − 6u + 1 with u = ρ², 1.5 from its lowest to its highest. */
function strehl(waves: number): number {
  const phases = Array.from({ length: 2000 }, (_, i) => (i + 0.5) / 2000).map((u) => 2 * Math.PI * (waves / 1.5) * (6 * u * u - 6 * u + 1));
  const mean = (of: (x: number) => number): number => phases.reduce((sum, x) => sum + of(x), 0) / phases.length;
  return mean(Math.cos) ** 2 + mean(Math.sin) ** 2;
}

const TABLE_LIGHT_WORKED: Worked = {
  'AP-002b': { 'with tubes': (1 + 5 / 2) * 4, 'a macro lens': (1 + 5 / 2) * 4, 'f/4 at 1:1, ratio 1': 2 * 4 },
  'BRT-001': {
    '5x/0.12': (10 * 0.12 ** 2) ** 2 * (10 / 5) ** 2,
    '10x/0.25': (10 * 0.25 ** 2) ** 2,
    '20x/0.45': (10 * 0.45 ** 2) ** 2 * (10 / 20) ** 2,
    '25x/0.80, oil': (10 * 0.8 ** 2) ** 2 * (10 / 25) ** 2,
  },
  'AP-007': (0.25 / 0.12) ** 4 / 4,
};

/** Values over variances: 1.2 and 1.4 twice, 1.3 twice. */
const WEIGHED = [
  [1.2, 1 / 0.0025 + 1 / 0.0625],
  [1.3, 1 / 0.0225 + 1 / 0.5625],
  [1.4, 1 / 0.01 + 1 / 0.0006],
] as const;
const SIGHTINGS_WORKED: Worked = {
  'SAW-001': WEIGHED.reduce((sum, [x, w]) => sum + x * w, 0) / WEIGHED.reduce((sum, [, w]) => sum + w, 0),
  'SAW-002': 0.4 / Math.sqrt(3),
  // One degree of freedom: 1.96 standard deviations. Two leave exp(−χ²/2).
  'SAW-003': {
    '1 degree of freedom': Number((1.959964 ** 2).toFixed(3)),
    '2 degrees of freedom': Number((-2 * Math.log(0.05)).toFixed(3)),
  },
};

const SUBJECTS: readonly [name: string, checks: readonly Check[], worked: Worked, digits: number][] = [
  ['field', FIELD, FIELD_WORKED, 9],
  ['aperture', APERTURE, APERTURE_WORKED, 9],
  ['resolution', RESOLUTION, RESOLUTION_WORKED, 9],
  ['sampling', SAMPLING, SAMPLING_WORKED, 9],
  ['diffraction', DIFFRACTION, DIFFRACTION_WORKED, 9],
  ['depth', DEPTH, DEPTH_WORKED, 9],
  ['conventions', CONVENTIONS, CONVENTIONS_WORKED, 9],
  ['close-up lenses', CLOSE_UPS, CLOSE_UPS_WORKED, 9],
  ['conjugates', CONJUGATES, CONJUGATES_WORKED, 9],
  ['light', TABLE_LIGHT, TABLE_LIGHT_WORKED, 9],
  ['sightings', SIGHTINGS, SIGHTINGS_WORKED, 9],
];

describe.each(SUBJECTS)('%s: what a pocket calculator makes of the numbers that are claimed', (_, checks, worked, digits) => {
  it.each(Object.keys(worked))('%s', (id) => {
    const due = worked[id] as Worked[string];
    const values = (checks.find((check) => check.id === id) as Check).values;
    for (const [what, number] of Object.entries(typeof due === 'number' ? { '': due } : due)) {
      const value = values.find((one) => (one.what ?? '') === what);
      expect((value?.of() as number) / (Math.abs(number) || 1), `${id} ${what}`).toBeCloseTo(Math.sign(number), digits);
    }
  });
  it('leaves none of them out', () => {
    expect(Object.keys(worked)).toEqual(expect.arrayContaining(checks.map(({ id }) => id)));
  });
});

it.each([4, 8, 16])('a wave over %d loses as much of the peak as primary spherical aberration, within a few parts in a hundred', (part) => {
  const value = OFF_INFINITY[0]?.values.find(({ what }) => what === `${1 / part} waves`);
  expect((1 - (value?.of() as number)) / (1 - strehl(1 / part))).toBeCloseTo(1, 1);
});
