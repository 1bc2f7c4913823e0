/** Outside thread or inside thread. */
export const SEXES = ['male', 'female'] as const;
export type Sex = (typeof SEXES)[number];

/** Angle between a thread's flanks, degrees: metric and unified threads have 60, Whitworth's 55. */
export type FlankAngle = 55 | 60;

/** A parallel screw thread by its nominal measures. */
export interface Thread {
  /** As people write it: `M25 x 0.75`, `RMS`. */
  readonly label: string;
  /** Nominal (major) diameter. */
  readonly diameterMm: number;
  readonly pitchMm: number;
  readonly angleDeg: FlankAngle;
}

/** One end of a part: what can be screwed into it, or it into something. */
export interface End {
  readonly thread: Thread;
  readonly sex: Sex;
}

/**
 * Nominal measures count to a hundredth of a millimetre in the diameter and a thousandth in the pitch: 36 to the inch
 * is 0.7056 or 0.706 mm as it is written.
 */
const hundredths = ({ diameterMm }: Thread): number => Math.round(100 * diameterMm);
const thousandths = ({ pitchMm }: Thread): number => Math.round(1000 * pitchMm);

export const sameThread = (a: Thread, b: Thread): boolean =>
  hundredths(a) === hundredths(b) && thousandths(a) === thousandths(b) && a.angleDeg === b.angleDeg;

/** The same for ends that screw onto the same. */
export const endKey = ({ thread, sex }: End): string => `${hundredths(thread)} ${thousandths(thread)} ${thread.angleDeg} ${sex}`;

/** Whether two ends screw together: one male, one female, and the same diameter, pitch and flanks. */
export const mates = (a: End, b: End): boolean => a.sex !== b.sex && sameThread(a.thread, b.thread);

const otherSex = (sex: Sex): Sex => (sex === 'male' ? 'female' : 'male');
/** What screws onto an end. */
export const mateOf = ({ thread, sex }: End): End => ({ thread, sex: otherSex(sex) });

export const endWords = ({ thread, sex }: End): string => `${sex} ${thread.label}`;

/** Basic depth of the thread, both sides, in pitches: 2 x 5/8 of the sharp triangle's height (ISO 68-1), and Whitworth's 2 x 0.6403. */
const BASIC_DEPTH: Record<FlankAngle, number> = { 60: (5 / 8) * Math.sqrt(3), 55: 2 * 0.640327 };

/** The basic minor diameter, mm: what a female thread leaves open. */
export const minorDiameter = ({ diameterMm, pitchMm, angleDeg }: Thread): number => diameterMm - BASIC_DEPTH[angleDeg] * pitchMm;
