import { z } from 'zod';
import { PairingError, shown } from '../../errors.ts';
import type { Answer } from '../../pairing/answer.ts';
import { evaluatePart, soundInputs } from '../../pairing/evaluate.ts';
import type { Glassworks } from '../../pairing/glassworks.ts';
import { type FigureId, planFor } from '../../pairing/registry.ts';
import type { Pairing } from '../../pairing/schema.ts';
import { sightingProblems } from './contradict.ts';
import { type Finding, seek, type Unsolved } from './findings.ts';
import { groupsOf, isRuler, rulersGive, saidBeside, wallUnknowns } from './groups.ts';
import { type Inconsistent, offsOf } from './inconsistent.ts';
import { magnificationSeen, type Seen } from './magnification.ts';
import type { Reading } from './readings.ts';
import { type Sighting, type SightingKind, sightingsSchema } from './sightings.ts';
import { taking } from './take.ts';
import { MAGNIFICATION, openingAt, RELAY_FOCAL_LENGTH, type Unknown } from './unknowns.ts';

/** What was seen, and which opening is to be found beside the exit pupil: the relay's rim where it is left out. */
export const sawShape = { sightings: sightingsSchema, opening: z.string().min(1).max(60).optional() };
export const sawSchema = z.strictObject(sawShape);
export type SawInput = z.infer<typeof sawSchema>;

/** A headline figure before and after what was seen is taken. */
export interface Tightened {
  readonly id: FigureId;
  readonly before: Answer;
  readonly after: Answer;
}

export interface Told {
  readonly results: readonly Finding[];
  readonly unsolved: readonly Unsolved[];
  readonly inconsistent: readonly Inconsistent[];
  /** The magnification itself, as the rulers show it, whatever the two focal lengths are. */
  readonly magnification?: Seen;
  /** The pairing with every result taken. */
  readonly pairing: Pairing;
}

export interface Saw extends Told {
  readonly figures: readonly Tightened[];
  readonly cautions: readonly string[];
}

/** The figures in which a person sees what was gained. */
const HEADLINES = [
  'systemMagnification',
  'objectFieldWidthMm',
  'workingFNumber',
  'depthOfFieldUm',
  'relayFocalLengthMm',
  'litCircleMm',
  'cornerIllumination',
  'longestUnvignettedSpaceMm',
] as const satisfies readonly FigureId[];
const PLAN = planFor(HEADLINES);

const CAUTIONS: Partial<Record<SightingKind, string>> = {
  far: 'Never take the sun for the far thing, nor a lamp or a laser: a lens burns and blinds.',
  wall: 'Light is compared in raw, linear numbers at the lens used, with every correction of shading off; where it begins to fall is seen late, so give it a wide ±.',
};

/**
 * What sightings say of a pairing: first of the relay alone and of the magnification, then, with that taken, of the
 * exit pupil and the opening that cuts.
 *
 * @throws PairingError where a sighting or the pairing contradicts itself; paths below `/sightings`, `/opening` and the pairing
 */
export function toldBy(pairing: Pairing, { sightings, opening }: SawInput, works?: Glassworks): Told {
  const start = soundInputs(pairing, works).list;
  const problems = sightingProblems(pairing, sightings);
  if (opening !== undefined && !openingAt(opening, start))
    problems.push({
      path: '/opening',
      code: 'unknownName',
      message: 'names no opening of this pairing',
      given: shown(opening),
      expected: '/relay/clearApertureMm, /relay/entrancePupilDiameterMm, or /stops/0/diameterMm and on',
    });
  if (problems.length > 0) throw new PairingError(problems);

  const byGives = rulersGive(start);
  const groups = groupsOf(sightings, byGives);
  const results: Finding[] = [];
  const unsolved: Unsolved[] = [];
  const inconsistent: Inconsistent[] = [];
  let now = pairing;
  const look = (seen: readonly Reading[], unknowns: readonly Unknown[]): void => {
    if (seen.length === 0) return;
    const inputs = soundInputs(now, works).list;
    const readings = [...seen, ...saidBeside(unknowns, inputs)];
    const sought = seek(now, readings, unknowns, inputs, works);
    unsolved.push(...sought.unsolved);
    inconsistent.push(...offsOf(sought, readings));
    for (const finding of sought.findings) {
      const next = taking(now, finding, works);
      const against = next.problems[0];
      if (against)
        unsolved.push({ path: finding.path, from: finding.from, why: 'contradicts', message: `${against.path} ${against.message}` });
      else results.push(finding);
      now = next.pairing;
    }
  };
  look(groups.relay, [RELAY_FOCAL_LENGTH]);
  look(groups.objective, [MAGNIFICATION]);
  look(groups.wall, wallUnknowns(sightings, groups.wall, start, opening));

  const rulers = [...groups.relay, ...groups.objective].filter(({ place }) => isRuler(sightings[place] as Sighting));
  const seen = magnificationSeen(now, rulers, works);
  return { results, unsolved, inconsistent, ...(seen ? { magnification: seen } : {}), pairing: now };
}

/**
 * The same with what it does to the headline figures, and what to mind.
 * @throws PairingError as `toldBy` does
 */
export function sawOf(pairing: Pairing, input: SawInput, works?: Glassworks): Saw {
  const told = toldBy(pairing, input, works);
  const before = evaluatePart(pairing, PLAN, works).answers;
  const after = evaluatePart(told.pairing, PLAN, works).answers;
  return {
    ...told,
    figures: HEADLINES.map((id) => ({ id, before: before[id] as Answer, after: after[id] as Answer })),
    cautions: [...new Set(input.sightings.flatMap(({ kind }) => CAUTIONS[kind] ?? []))],
  };
}
