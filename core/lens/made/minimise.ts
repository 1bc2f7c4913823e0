/** A place and the value there. */
export interface Found {
  readonly at: readonly number[];
  readonly value: number;
}

/** Steps of a simplex at most. */
const STEPS = 160;
/** Parts of the grid's step to which a simplex shrinks: to see which minimum is best, and to find it. */
const ROUGHLY = 0.03;
const FINELY = 1e-4;
/** Parts of the grid's step: a place this near to where the function ends is no minimum of its own. */
const BESIDE = 0.1;

/** From and to along one dimension. */
export type Interval = readonly [low: number, high: number];

/**
 * The least of a function's minima over a box of one or two dimensions: looked for on a grid of so many
 * looks along each, then with a simplex from each of the grid's minima. Where the function cannot be had
 * it is Infinity; a place where it only falls until it ends is no minimum. Undefined where none is found.
 * The simplex may leave the box.
 */
export function least(of: (at: readonly number[]) => number, box: readonly Interval[], looks: number): Found | undefined {
  const steps = box.map(([low, high]) => (high - low) / (looks - 1));
  const place = (i: number): number[] => box.map(([low], d) => low + (steps[d] as number) * (Math.floor(i / looks ** d) % looks));
  const values = Array.from({ length: looks ** box.length }, (_, i) => of(place(i)));
  const ends = ({ at }: Found): boolean =>
    steps.some((step, d) => [-BESIDE, BESIDE].some((part) => !Number.isFinite(of(at.map((x, k) => (k === d ? x + part * step : x))))));
  const settled = (from: readonly number[], first: number, last: number): Found =>
    simplex(
      of,
      from,
      steps.map((step) => first * step),
      steps.map((step) => last * step),
    );
  let best: Found | undefined;
  for (const [i, value] of values.entries()) {
    if (!Number.isFinite(value) || neighbours(i, looks, box.length).some((k) => (values[k] as number) < value)) continue;
    const found = settled(place(i), 0.5, ROUGHLY);
    if (!(best && best.value <= found.value) && !ends(found)) best = found;
  }
  // From the best again: a simplex that has flattened along an edge of the function opens out anew.
  return best && settled(best.at, ROUGHLY, FINELY);
}

/** The grid's places beside one, along its lines. */
function neighbours(i: number, looks: number, dimensions: number): number[] {
  const beside: number[] = [];
  for (let d = 0; d < dimensions; d++) {
    const stride = looks ** d;
    const along = Math.floor(i / stride) % looks;
    if (along > 0) beside.push(i - stride);
    if (along < looks - 1) beside.push(i + stride);
  }
  return beside;
}

/** The downhill simplex (Nelder & Mead 1965, from memory), with the coefficients of that paper. */
function simplex(
  of: (at: readonly number[]) => number,
  start: readonly number[],
  size: readonly number[],
  small: readonly number[],
): Found {
  const tried = (at: readonly number[]): Found => ({ at, value: of(at) });
  const corners = [tried(start), ...start.map((_, d) => tried(start.map((x, k) => (k === d ? x + (size[k] as number) : x))))];
  const inOrder = (): void => {
    corners.sort((a, b) => a.value - b.value);
  };
  inOrder();
  for (let turn = 0; turn < STEPS; turn++) {
    const best = corners[0] as Found;
    const worst = corners[corners.length - 1] as Found;
    if (corners.every((c) => c.at.every((x, d) => Math.abs(x - (best.at[d] as number)) <= (small[d] as number)))) break;
    const others = corners.slice(0, -1);
    const middle = start.map((_, d) => others.reduce((sum, c) => sum + (c.at[d] as number), 0) / others.length);
    const toward = (k: number): Found => tried(middle.map((x, d) => x + k * ((worst.at[d] as number) - x)));
    let next = toward(-1);
    if (next.value < best.value) {
      const farther = toward(-2);
      if (farther.value < next.value) next = farther;
    } else if (!(next.value < (others[others.length - 1] as Found).value)) {
      const nearer = toward(next.value < worst.value ? -0.5 : 0.5);
      if (nearer.value < Math.min(next.value, worst.value)) next = nearer;
      else {
        for (let i = 1; i < corners.length; i++)
          corners[i] = tried((corners[i] as Found).at.map((x, d) => (x + (best.at[d] as number)) / 2));
        inOrder();
        continue;
      }
    }
    corners[corners.length - 1] = next;
    inOrder();
  }
  return corners[0] as Found;
}
