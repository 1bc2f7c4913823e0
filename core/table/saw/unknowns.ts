import type { Node } from '../../figure.ts';
import type { Input } from '../../pairing/input.ts';
import * as leaves from '../../pairing/leaves.ts';
import { BOUNDS, type Bounded } from '../../parts/quantity.ts';
import { MM_PER_M } from '../../units.ts';

/** An input of the pairing that is to be found from what was seen. */
export interface Unknown {
  /** JSON Pointer of the input that the finding replaces. */
  readonly path: string;
  readonly leaf: Node;
  readonly name: Bounded;
  /** The inputs that it stands in for: their ± are no doubt of the finding. */
  replaces(input: Input): boolean;
  put(current: unknown, x: number): unknown;
  /** Whether it is looked for in even ratios rather than in even steps. */
  readonly ratio: boolean;
}

const scalar = (_: unknown, x: number): number => x;

export const RELAY_FOCAL_LENGTH: Unknown = {
  path: '/relay/focalLengthMm',
  leaf: leaves.givenFocalLength,
  name: 'focalLengthMm',
  replaces: ({ leaf }) => leaf === leaves.givenFocalLength || leaf === leaves.power,
  put: scalar,
  ratio: true,
};

export const MAGNIFICATION: Unknown = {
  path: '/objective/magnification',
  leaf: leaves.magnification,
  name: 'magnification',
  replaces: ({ leaf }) => leaf === leaves.magnification,
  put: scalar,
  ratio: true,
};

export const EXIT_PUPIL: Unknown = {
  path: '/objective/exitPupilFromShoulderMm',
  leaf: leaves.exitPupilFromShoulder,
  name: 'exitPupilFromShoulderMm',
  replaces: ({ leaf }) => leaf === leaves.exitPupilFromShoulder,
  put: scalar,
  ratio: false,
};

/** The opening that an input of the pairing sets; undefined where it sets none. */
export function openingAt(path: string, inputs: readonly Input[]): Unknown | undefined {
  const input = inputs.find((i) => i.path === path);
  if (path === '/relay/clearApertureMm')
    return opening(path, leaves.clearAperture, 'clearApertureMm', ({ leaf }) => leaf === leaves.clearAperture);
  if (path === '/relay/entrancePupilDiameterMm')
    return opening(
      path,
      leaves.givenEntrancePupil,
      'entrancePupilDiameterMm',
      ({ leaf }) => leaf === leaves.givenEntrancePupil || leaf === leaves.fNumber,
    );
  if (!input || !/^\/stops\/\d+\/diameterMm$/.test(path)) return undefined;
  return { ...opening(path, input.leaf, 'diameterMm', (other) => other.path === path), put: input.put };
}

const opening = (path: string, leaf: Node, name: Bounded, replaces: Unknown['replaces']): Unknown => ({
  path,
  leaf,
  name,
  replaces,
  put: scalar,
  ratio: true,
});

const OPENINGS: ReadonlySet<Bounded> = new Set<Bounded>(['clearApertureMm', 'entrancePupilDiameterMm', 'diameterMm']);
/** No opening is told so many times too wide or too narrow. */
const OPENING_OFF = 4;

/** What is known of an unknown by the inputs: their interval in its own unit; undefined where they give it none. */
export interface Known {
  readonly least: number;
  readonly greatest: number;
  readonly measured: boolean;
}

export function knownOf(unknown: Unknown, inputs: readonly Input[]): Known | undefined {
  const input = inputs.find((i) => unknown.replaces(i) && i.greatest > i.least);
  if (!input) return undefined;
  const measured = input.origin === 'measured';
  if (input.leaf === unknown.leaf) return { least: input.least, greatest: input.greatest, measured };
  if (input.leaf === leaves.power) return { least: MM_PER_M / input.greatest, greatest: MM_PER_M / input.least, measured };
  return undefined;
}

/** By so much, as a share, a number that stands without a ± may be off before it is worth a word. */
const WORTH_A_WORD = 0.05;

/** What stood there without a ± and is far from what was found: one of the two is wrong. Undefined where they go together. */
export function clashOf(
  unknown: Unknown,
  { low, high }: { low: number; high: number },
  inputs: readonly Input[],
): { readonly value: number; readonly path: string } | undefined {
  const input = inputs.find((i) => unknown.replaces(i) && i.greatest === i.least);
  if (!input) return undefined;
  const value = input.leaf === leaves.power ? MM_PER_M / input.value : input.value;
  const off = WORTH_A_WORD * Math.abs(value);
  return value < low - off || value > high + off ? { value, path: input.path } : undefined;
}

/** Between which values it is looked for. */
export function rangeOf(unknown: Unknown, infinitySpaces: readonly number[], inputs: readonly Input[]): readonly [number, number] {
  const [least, greatest] = BOUNDS[unknown.name];
  const said = inputs.find((i) => i.path === unknown.path)?.value;
  if (OPENINGS.has(unknown.name) && said !== undefined)
    return [Math.max(least, said / OPENING_OFF), Math.min(greatest, said * OPENING_OFF)];
  if (unknown.leaf !== leaves.exitPupilFromShoulder) return [least, greatest];
  // A pupil beyond the relay's rim darkens as its mirror image before the rim does, and no objective has it there.
  const guessed = inputs.find((i) => unknown.replaces(i))?.greatest ?? least;
  return [least, Math.min(greatest, Math.max(guessed, ...infinitySpaces))];
}
