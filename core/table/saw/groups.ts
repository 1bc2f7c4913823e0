import type { Input } from '../../pairing/input.ts';
import * as leaves from '../../pairing/leaves.ts';
import { type Reading, readingOf, saidOf } from './readings.ts';
import { type Sighting, wallReading } from './sightings.ts';
import { EXIT_PUPIL, MAGNIFICATION, openingAt, RELAY_FOCAL_LENGTH, type Unknown } from './unknowns.ts';

export const isRuler = ({ kind }: Sighting): boolean => kind === 'ruler' || kind === 'micrometer';

/** A magnification settles the number that is known less well: the relay's focal length, or the objective's engraving. */
export function rulersGive(inputs: readonly Input[]): 'relay' | 'objective' {
  const doubt = (of: Unknown): number =>
    Math.max(0, ...inputs.filter((input) => of.replaces(input)).map(({ plusMinus, value }) => plusMinus / Math.abs(value)));
  return doubt(MAGNIFICATION) > doubt(RELAY_FOCAL_LENGTH) ? 'objective' : 'relay';
}

export function groupsOf(sightings: readonly Sighting[], usual: 'relay' | 'objective'): Record<'relay' | 'objective' | 'wall', Reading[]> {
  const groups: Record<'relay' | 'objective' | 'wall', Reading[]> = { relay: [], objective: [], wall: [] };
  sightings.forEach((s, i) => {
    const group = s.kind === 'wall' ? 'wall' : s.kind === 'far' || s.kind === 'extensions' ? 'relay' : (s.gives ?? usual);
    groups[group].push(readingOf(s, i));
  });
  return groups;
}

/** What is sought of a wall: two different sightings may tell an opening that is in doubt beside the pupil. */
export function wallUnknowns(
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
export const saidBeside = (unknowns: readonly Unknown[], inputs: readonly Input[]): Reading[] =>
  unknowns.slice(1).flatMap((unknown, i) => {
    const said = inputs.find((input) => input.path === unknown.path && input.origin !== 'measured' && input.greatest > input.least);
    return said ? [saidOf(i + 1, said)] : [];
  });
