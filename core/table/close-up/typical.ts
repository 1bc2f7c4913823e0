import type { Guess } from '../../parts/typical.ts';
import type { Read } from '../setting.ts';

/**
 * What is taken of a camera lens of which only focal length and closest focus are known. All of it is common
 * practice from memory, without a source: intervals are wide, and every one is told as an assumption.
 */

const between = (low: number, high: number, why: string): Guess => ({ value: (low + high) / 2, plusMinus: (high - low) / 2, why });

/** What a camera lens reaches of the magnification that a thin lens of its focal length has at that distance. */
const REACHED = [0.5, 1.2] as const;

/**
 * Magnification of a thin lens of focal length `f` with subject and sensor `L` apart, the smaller of the two:
 * L = f (2 + m + 1/m). Undefined where they are closer than 4 f: no thin lens is sharp there.
 */
export function thinMagnification(f: number, L: number): number | undefined {
  const sum = L / f - 2;
  return sum < 2 ? undefined : 2 / (sum + Math.sqrt(sum * sum - 4));
}

export function magnification(read: Read): Guess | undefined {
  const [f, L, X] = [read('cameraFocalLengthMm'), read('closestFocusMm'), read('cameraSubjectDistanceMm')];
  if (f === undefined) return undefined;
  const thin = L !== undefined ? thinMagnification(f, L) : X !== undefined && X > f ? f / (X - f) : undefined;
  if (thin === undefined) return undefined;
  return between(
    REACHED[0] * thin,
    REACHED[1] * thin,
    'reckoned from focal length and closest focus as of a thin lens; lenses that focus inside grow shorter and reach less',
  );
}

/** From the rim to the sensor: about the focal length and a little more. */
export function length(read: Read): Guess | undefined {
  const f = read('cameraFocalLengthMm');
  if (f === undefined) return undefined;
  return { value: f + 50, plusMinus: 0.35 * f + 35, why: "a camera lens's length, rim to sensor, is a guess by focal length" };
}

/** The focal length that a lens works with at its nearest focus: what is left of its own where it focuses inside. */
export function nearFocalLength(read: Read): Guess | undefined {
  const f = read('cameraFocalLengthMm');
  return f === undefined
    ? undefined
    : between(
        0.55 * f,
        1.05 * f,
        'a lens that focuses inside works with a shorter focal length near by, one that moves as a whole does not',
      );
}

export function principalPlane(read: Read): Guess | undefined {
  const f = read('cameraFocalLengthMm');
  return f === undefined
    ? undefined
    : {
        value: 0,
        plusMinus: 20 + 0.6 * f,
        why: "a camera lens's front principal plane is taken at its rim; a telephoto has it far in front",
      };
}

export function pupilDepth(read: Read): Guess | undefined {
  const f = read('cameraFocalLengthMm');
  return f === undefined
    ? undefined
    : {
        value: 25 + 0.3 * f,
        plusMinus: 20 + 0.3 * f,
        why: "how deep a camera lens's aperture seems to lie behind its rim is a guess by focal length",
      };
}

export function pupilRatio(read: Read): Guess | undefined {
  return read('cameraFocalLengthMm') === undefined
    ? undefined
    : between(0.5, 1.5, "a camera lens's pupils are taken alike; a telephoto's is smaller behind, a wide lens's larger");
}

export function separation(read: Read): Guess | undefined {
  return read('secondPowerDioptre') === undefined
    ? undefined
    : between(0, 12, 'two close-up lenses in their mounts stand some millimetres apart');
}
