import type { Objective } from './objective.ts';
import { amount, BOUNDS, type Bounded, type Quantity } from './quantity.ts';
import type { Relay } from './relay.ts';

/**
 * What is taken where nothing is known: class-typical values with an interval that surely holds the
 * truth. All of it is common practice of the trade, from memory, without a source; every one is told
 * as an assumption and gives way to what the user marks or measures.
 */
export interface Guess {
  readonly value: number;
  readonly plusMinus: number;
  readonly why: string;
}

/** Half-width, as a share of the value, of markings that the trade knows to be loose. */
const LOOSE_POWER = 0.05;
const LOOSE_FOCAL_LENGTH = 0.05;
/** Powers are engraved in halves and wholes, so weak ones are looser still: this much in dioptres at least. */
const LOOSE_POWER_AT_LEAST = 0.25;

/** How much less than its filter thread a close-up lens or tube leaves open, mm. */
const RIM_UNDER_THREAD = 4;
const RIM_UNDER_THREAD_PLUS_MINUS = 3;

/** Where a camera lens's entrance pupil sits behind its rim, as a share of its focal length: telephotos have it deep. */
const PUPIL_DEPTH_SHARE = 0.45;
const PUPIL_DEPTH_PLUS_MINUS = 0.45;

/**
 * How far from its rim a relay's front principal plane may lie: mm for a close-up lens and for a tube lens
 * of several pieces; focal lengths for a camera lens. A telephoto of two thin groups, f₁ and f₂ apart by d,
 * has it at f d / f₂: with f₁ = 110, f₂ = -80, d = 74 that is 0.9 focal lengths before the rim.
 */
const PLANE_PLUS_MINUS = { supplementary: 10, 'tube-lens': 30 } as const;
const PLANE_SHARE = 1.2;

/**
 * From a camera lens's front rim to the sensor, set to infinity: about its focal length and a little more, shorter
 * in a telephoto, longer in a retrofocus lens.
 */
const LENGTH_BEYOND_FOCAL = 20;
const LENGTH_SHARE_PLUS_MINUS = 0.4;
const LENGTH_PLUS_MINUS = 15;

/** Barrels of objectives are hardly wider than this where they end at the subject, mm. */
const WIDEST_NOSE = 34;

/** Half the diagonal of the largest common sensor that a camera lens is made for, mm (36 x 24). */
const HALF_FULL_FRAME = 21.6;

const middle = (low: number, high: number, why: string): Guess => ({ value: (low + high) / 2, plusMinus: (high - low) / 2, why });

/** Keeps a guess inside the bounds of its name. */
export function within(name: Bounded, guess: Guess): Guess {
  const low = Math.max(BOUNDS[name][0], guess.value - guess.plusMinus);
  const high = Math.min(BOUNDS[name][1], guess.value + guess.plusMinus);
  return middle(low, high, guess.why);
}

/** Exit pupil from the shoulder: somewhere in the barrel, or at most 10 mm outside it. */
export function exitPupil(objective: Objective): Guess {
  const { parfocalDistanceMm: parfocal, workingDistanceMm: working } = objective;
  if (parfocal !== undefined) {
    // Without the working distance the barrel may be as long as the parfocal distance.
    const barrel = Math.max(0, amount(parfocal) - (working === undefined ? 0 : amount(working)));
    return middle(-barrel, 10, "the exit pupil's place is hardly ever published: somewhere in the barrel or up to 10 mm outside");
  }
  return { value: 0, plusMinus: 30, why: "the exit pupil's place is hardly ever published, and the barrel's length is not known either" };
}

export const loosePower = (q: Quantity): Guess => ({
  value: q.value,
  plusMinus: Math.max(LOOSE_POWER * q.value, Math.min(LOOSE_POWER_AT_LEAST, q.value / 4)),
  why: 'the dioptres engraved on a close-up lens are rounded and loose',
});

export const looseFocalLength = (q: Quantity): Guess => ({
  value: q.value,
  plusMinus: LOOSE_FOCAL_LENGTH * q.value,
  why: `the focal length engraved on a camera lens is good to about ${100 * LOOSE_FOCAL_LENGTH} %`,
});

/** Clear opening inferred from a filter thread such as `58 x 0.75` or `M42 x 1`, or undefined. */
export function rimFromThread(relay: Relay): Guess | undefined {
  const threads = [relay.maleThread, relay.femaleThread].flatMap((t) => {
    const [, diameter, step] = t?.match(/^\s*M?\s*(\d+(?:\.\d+)?)(?:\s*[-–]\s*(\d+))?/i) ?? [];
    return [diameter, step].flatMap((d) => (d === undefined ? [] : [Number(d)]));
  });
  if (threads.length === 0) return undefined;
  const thread = Math.min(...threads);
  if (thread - RIM_UNDER_THREAD <= RIM_UNDER_THREAD_PLUS_MINUS) return undefined;
  return {
    value: thread - RIM_UNDER_THREAD,
    plusMinus: RIM_UNDER_THREAD_PLUS_MINUS,
    why: 'the clear opening is taken a little under the thread',
  };
}

/** A camera lens's rim: at least its entrance pupil, at most what lights its own picture evenly. */
export function rimOfCameraLens(pupilDiameter: number, pupilDepth: number, focalLength: number): Guess {
  const widest = pupilDiameter + 2 * Math.max(0, pupilDepth) * (HALF_FULL_FRAME / focalLength);
  return middle(pupilDiameter, widest, "the front rim is taken between the lens's aperture and what would light its own picture evenly");
}

export const entrancePupilDepth = (focalLength: number): Guess => ({
  value: PUPIL_DEPTH_SHARE * focalLength,
  plusMinus: PUPIL_DEPTH_PLUS_MINUS * focalLength,
  why: "the depth of the lens's aperture behind its rim is a guess by focal length",
});

/** The front principal plane: near the rim of a close-up lens, anywhere for a camera lens. */
export const principalPlane = (relay: Relay, focalLength: number): Guess => ({
  value: 0,
  plusMinus: relay.kind === 'camera-lens' ? PLANE_SHARE * focalLength : PLANE_PLUS_MINUS[relay.kind],
  why: "the relay's front principal plane is taken at its rim",
});

export const rimToSensor = (focalLength: number): Guess => ({
  value: focalLength + LENGTH_BEYOND_FOCAL,
  plusMinus: LENGTH_SHARE_PLUS_MINUS * focalLength + LENGTH_PLUS_MINUS,
  why: "a camera lens's length, rim to sensor, is a guess by focal length",
});

/** From flange to sensor: 16 to 20 mm in cameras without a mirror, 42 to 47 in those with one. */
export const register = (): Guess =>
  middle(16, 47, "the register is taken between a camera's without a mirror, 16 to 20 mm, and one's with, 42 to 47");

/** The objective's nose: no narrower than the light that it takes in at its working distance, hardly wider than any barrel. */
export function nose({ na, magnification, fieldNumberMm, workingDistanceMm = 0, immersionIndex = 1 }: Objective): Guess {
  const sine = Math.min(0.99, amount(na) / amount(immersionIndex));
  const field = fieldNumberMm === undefined ? 0 : amount(fieldNumberMm) / amount(magnification);
  const narrowest = 2 * amount(workingDistanceMm) * (sine / Math.sqrt(1 - sine * sine)) + field;
  return middle(
    narrowest,
    Math.max(WIDEST_NOSE, 1.5 * narrowest),
    "the nose's width is taken between the light that it takes in and a usual barrel",
  );
}
