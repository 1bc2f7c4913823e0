import type { Problem } from '../errors.ts';
import { problem } from '../pairing/contradict/statement.ts';
import { amount } from '../parts/quantity.ts';
import type { Relay } from '../parts/relay.ts';
import { rimFromThread } from '../parts/typical.ts';
import { reversed } from '../trace/lens.ts';
import { MM_PER_M } from '../units.ts';
import { type LensOrProblems, lensOf } from './listed.ts';
import { isMade, madeLens } from './made.ts';

/** What a relay says of its focal length, mm; undefined where it says nothing. */
export const statedFocalLength = ({ focalLengthMm: focal, powerDioptre: power }: Relay): number | undefined =>
  focal !== undefined ? amount(focal) : power !== undefined ? MM_PER_M / amount(power) : undefined;

/** The clear diameter of a relay, mm: as it is given, or a little under its thread. */
export const clearDiameter = (relay: Relay): number | undefined =>
  relay.clearApertureMm !== undefined ? amount(relay.clearApertureMm) : rimFromThread(relay)?.value;

/** The lens of a relay with glass as it is listed, from the side with the male thread, whichever way round it stands. */
export function listedLens(relay: Relay): LensOrProblems {
  const glass = relay.glass as NonNullable<Relay['glass']>;
  return 'class' in glass ? classLens(relay, glass) : lensOf(glass, false);
}

/** The lens of a relay with glass as it stands. */
export function lensOfRelay(relay: Relay): LensOrProblems {
  const listed = listedLens(relay);
  return listed.lens && relay.reversed ? { lens: reversed(listed.lens) } : listed;
}

/** A lens of the class that the relay says it is of: made for its focal length and its clear diameter. */
function classLens(relay: Relay, glass: Extract<NonNullable<Relay['glass']>, { class: string }>): LensOrProblems {
  const focalLength = statedFocalLength(relay);
  const diameter = clearDiameter(relay);
  const missing = (name: string, expected: string): Problem =>
    problem('missing', `/relay/${name}`, undefined, 'is missing: a lens of a class is made for it', expected);
  const problems = [
    ...(focalLength === undefined ? [missing('focalLengthMm', 'a focal length in mm, or a power in dioptres')] : []),
    ...(diameter === undefined ? [missing('clearApertureMm', 'a clear diameter in mm, or a thread')] : []),
  ];
  if (focalLength === undefined || diameter === undefined) return { problems };
  const { class: kind, ...recipe } = glass;
  const made = madeLens(kind, focalLength, diameter, recipe);
  if (isMade(made)) return { lens: made.lens };
  return {
    problems: [
      problem(
        'cannotBeMade',
        '/relay/glass',
        glass,
        `cannot be made with f = ${focalLength} mm and ${diameter} mm across: ${made.why}`,
        'another class, other glasses, a longer focal length or a smaller diameter',
      ),
    ],
  };
}
