import { z } from 'zod';
import { PairingError, shown } from '../../errors.ts';
import type { Answer } from '../../pairing/answer.ts';
import { evaluatePart, soundInputs } from '../../pairing/evaluate.ts';
import type { Glassworks } from '../../pairing/glassworks.ts';
import type { Input } from '../../pairing/inputs.ts';
import * as leaves from '../../pairing/leaves.ts';
import { type FigureId, planFor } from '../../pairing/registry.ts';
import type { Pairing } from '../../pairing/schema.ts';
import { sightingProblems } from './contradict.ts';
import { type Finding, type Sought, seek, type Unsolved } from './findings.ts';
import { magnificationSeen, type Seen } from './magnification.ts';
import { type Reading, readingOf, saidOf } from './readings.ts';
import { type Sighting, type SightingKind, sightingsSchema, wallReading } from './sightings.ts';
import { taking } from './take.ts';
import { EXIT_PUPIL, MAGNIFICATION, openingAt, RELAY_FOCAL_LENGTH, type Unknown } from './unknowns.ts';
import { chiSquare95, NINETY_FIVE } from './weigh.ts';

/** What was seen, and which opening is to be found beside the exit pupil: the relay's rim where it is left out. */
export const sawShape = { sightings: sightingsSchema, opening: z.string().min(1).max(60).optional() };
export const sawSchema = z.strictObject(sawShape);
export type SawInput = z.infer<typeof sawSchema>;

/** A sighting that does not agree with the others. */
export interface Inconsistent {
  readonly sighting: number;
  /** What was read and what the others foretell, in the sighting's unit; absent where they foretell none. */
  readonly reads: number;
  readonly expected?: number;
  /** How far apart, in standard uncertainties of the distance. */
  readonly off: number;
}

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

const isRuler = ({ kind }: Sighting): boolean => kind === 'ruler' || kind === 'micrometer';

/** A magnification settles the number that is known less well: the relay's focal length, or the objective's engraving. */
function rulersGive(inputs: readonly Input[]): 'relay' | 'objective' {
  const doubt = (of: Unknown): number =>
    Math.max(0, ...inputs.filter((input) => of.replaces(input)).map(({ plusMinus, value }) => plusMinus / Math.abs(value)));
  return doubt(MAGNIFICATION) > doubt(RELAY_FOCAL_LENGTH) ? 'objective' : 'relay';
}

function groupsOf(sightings: readonly Sighting[], usual: 'relay' | 'objective'): Record<'relay' | 'objective' | 'wall', Reading[]> {
  const groups: Record<'relay' | 'objective' | 'wall', Reading[]> = { relay: [], objective: [], wall: [] };
  sightings.forEach((s, i) => {
    const group = s.kind === 'wall' ? 'wall' : s.kind === 'far' || s.kind === 'extensions' ? 'relay' : (s.gives ?? usual);
    groups[group].push(readingOf(s, i));
  });
  return groups;
}

/** What is sought of a wall: two different sightings may tell an opening that is in doubt beside the pupil. */
function wallUnknowns(
  sightings: readonly Sighting[],
  readings: readonly Reading[],
  inputs: readonly Input[],
  asked: string | undefined,
): readonly Unknown[] {
  const kinds = new Set(
    readings.map(({ place, stood }) => {
      const space = stood.find(({ leaf }) => leaf === leaves.infinitySpace)?.value;
      return `${wallReading(sightings[place] as Extract<Sighting, { kind: 'wall' }>)} ${space ?? ''}`;
    }),
  );
  const path = asked ?? '/relay/clearApertureMm';
  const said = inputs.find((input) => input.path === path);
  const settled = said !== undefined && (said.origin === 'measured' || said.greatest === said.least);
  const opening = openingAt(path, inputs);
  return kinds.size < 2 || !opening || (asked === undefined && settled) ? [EXIT_PUPIL] : [EXIT_PUPIL, opening];
}

/** What the pairing itself says of an opening that is sought, where it says so with a ±: it counts beside what was seen. */
const saidBeside = (unknowns: readonly Unknown[], inputs: readonly Input[]): Reading[] =>
  unknowns.slice(1).flatMap((unknown, i) => {
    const said = inputs.find((input) => input.path === unknown.path && input.origin !== 'measured' && input.greatest > input.least);
    return said ? [saidOf(i + 1, said)] : [];
  });

/** Who does not agree, where all together are too far apart: χ² beyond its 95 %. */
function offsOf({ solved }: Sought, readings: readonly Reading[]): Inconsistent[] {
  if (!solved || solved.freedom < 1 || solved.chiSquare <= chiSquare95(solved.freedom)) return [];
  const worst = solved.standings.toSorted((a, b) => Math.abs(b.off) - Math.abs(a.off));
  const off = worst.filter((standing, i) => i === 0 || Math.abs(standing.off) > NINETY_FIVE);
  const told = off.filter(({ place }) => place >= 0);
  return told.map(({ place, off: by, expected }) => {
    const { shown: back, value } = readings.find((r) => r.place === place) as Reading;
    const foretold = back(expected);
    return {
      sighting: place,
      reads: back(value),
      ...(foretold > 0 && Number.isFinite(foretold) ? { expected: foretold } : {}),
      off: Math.abs(by),
    };
  });
}
