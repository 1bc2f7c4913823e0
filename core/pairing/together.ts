/** An input that lies somewhere in its interval. */
interface Doubtful {
  readonly value: number;
  readonly least: number;
  readonly greatest: number;
}

/** Where an input stands that is moved by a part of its interval: -1 its least, 0 its value, 1 its greatest. */
export const movedBy = ({ value, least, greatest }: Doubtful, part: number): number =>
  value + Math.abs(part) * ((part > 0 ? greatest : least) - value);

/**
 * How far along its interval an input goes beside one that goes to the end of its own. Chosen so that
 * low to high holds nine draws of ten in a Monte Carlo run without growing past twice its width.
 */
const BESIDE = 0.6;
/** How often the design is gone through, each time with others at their ends. */
const TURNS = 2;

/**
 * How far `count` inputs are moved at once, a row a run, each by a part of its interval: a two-level
 * orthogonal design, in which every two inputs meet in all four combinations of signs (Plackett & Burman
 * 1946; here Sylvester's matrices, whose entry is the parity of the bits that row and column share). The
 * inputs take turns in going to the ends, the rest go part of the way. No rows for fewer than two inputs.
 */
export function movedTogether(count: number): readonly (readonly number[])[] {
  const known = DESIGNS.get(count);
  if (known) return known;
  const design = count < 2 ? [] : designFor(count);
  DESIGNS.set(count, design);
  return design;
}

/** Designs that have been asked for: a sweep asks for the same one hundreds of times. */
const DESIGNS = new Map<number, readonly (readonly number[])[]>();

function designFor(count: number): number[][] {
  const runs = runsFor(count);
  return Array.from({ length: TURNS * runs }, (_, run) => {
    const leading = (run + Math.floor(run / runs)) % count;
    return Array.from({ length: count }, (_, i) => sign(run % runs, i) * (i === leading ? 1 : BESIDE));
  });
}

function sign(run: number, input: number): 1 | -1 {
  let shared = run & (input + 1);
  let parity = 0;
  while (shared > 0) {
    parity ^= shared & 1;
    shared >>= 1;
  }
  return parity === 0 ? 1 : -1;
}

/** The rows needed for so many inputs: the next power of two above their number. */
const runsFor = (inputs: number): number => 2 ** Math.ceil(Math.log2(inputs + 1));
