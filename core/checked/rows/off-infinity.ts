import type { Check } from '../check.ts';
import { type Changes, engraved, figureValue, told } from '../rig.ts';

/** 10x/0.25 with the relay its focal length behind the pupil: the wavefront grows with the tube's error and nothing else changes. */
const slow = (tubeErrorMm: number): Changes => ({ ...engraved('10x/0.25'), infinitySpaceMm: 200, table: { tubeErrorMm } });
const perMm = (): number => told(slow(10), 'tubeWaves') / 10;

/** Wavefront of spherical aberration at best focus, from its highest to its lowest in waves: the picture's peak. */
const QUARTERS = [
  [1 / 4, '0.80'],
  [1 / 8, '0.95'],
  [1 / 16, '0.99'],
] as const;

export const OFF_INFINITY: readonly Check[] = [
  {
    id: 'SA-001',
    claim: "Rayleigh's quarter wave from peak to valley leaves a Strehl ratio of 0.80, an eighth 0.95, a sixteenth 0.99",
    source: 'optical-engineering',
    known: 'from memory',
    how: 'the Strehl ratio at the error of the tube that leaves so many waves',
    values: QUARTERS.map(([waves, printed]) => figureValue('tubeStrehl', printed, () => slow(waves / perMm()), { what: `${waves} waves` })),
  },
];
