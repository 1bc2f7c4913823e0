/**
 * Inputs moved together, by a two-level orthogonal design: `runs` rows of +1 and -1, one column an
 * input, in which every two inputs meet in all four combinations of signs (Plackett & Burman 1946;
 * here Sylvester's matrices, whose entry is the parity of the bits that row and column share).
 */
export function signs(run: number, input: number): 1 | -1 {
  let shared = run & (input + 1);
  let parity = 0;
  while (shared > 0) {
    parity ^= shared & 1;
    shared >>= 1;
  }
  return parity === 0 ? 1 : -1;
}

/** The rows needed for so many inputs: the next power of two above their number. */
export const runsFor = (inputs: number): number => 2 ** Math.ceil(Math.log2(inputs + 1));
