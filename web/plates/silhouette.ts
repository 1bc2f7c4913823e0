/**
 * An outline of our own for a subject of which only the size is known: a seed, blunt at one end and
 * drawn out at the other, that touches all four sides of its box. Data of an SVG path about the middle of the box.
 */
export function silhouette(width: number, height: number): string {
  const lies = width >= height;
  const long = Math.max(width, height) / 2;
  const wide = Math.min(width, height) / 2;
  const at = ([u, v]: Point): string => {
    const [x, y] = lies ? [u * long, v * wide] : [v * wide, -u * long];
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  };
  const [first, ...rest] = OUTLINE;
  return `M${at(first as Point)}${Array.from(
    { length: rest.length / 3 },
    (_, i) =>
      `C${rest
        .slice(3 * i, 3 * i + 3)
        .map(at)
        .join(' ')}`,
  ).join('')}Z`;
}

type Point = readonly [u: number, v: number];

/** Along from -1, the blunt end, to 1, and across; cubic curves, the upper side first. */
const OUTLINE: readonly Point[] = [
  [-1, 0.04],
  [-1, -0.54],
  [-0.7, -1],
  [-0.16, -1],
  [0.3, -1],
  [0.62, -0.8],
  [0.83, -0.5],
  [0.95, -0.33],
  [1, -0.2],
  [1, -0.02],
  [1, 0.16],
  [0.94, 0.34],
  [0.82, 0.52],
  [0.6, 0.84],
  [0.3, 1],
  [-0.14, 1],
  [-0.68, 1],
  [-1, 0.6],
  [-1, 0.04],
];

/** Half the outline's height at a place along it, nearly: for what lies inside. */
const bulge = (u: number): number => Math.sqrt(Math.max(0, 1 - Math.abs(u) ** 2.2)) * (1 - 0.08 * (1 + u));

interface Box {
  width: number;
  height: number;
}

/** The golden ratio, and its likeness in the plane: points that follow that lie evenly, whatever their number. */
const GOLDEN = 0.6180339887498949;
const [STEP_X, STEP_Y] = [0.7548776662466927, 0.5698402909980532];
const AREA_A_DOT = 17;
const MOST_DOTS = 2400;

/**
 * Stippling that rounds the outline off: dots get closer toward the shaded side, below and to the right.
 *
 * @param seen the part of the subject's box, about its middle, that is drawn
 * @returns data of an SVG path of dots, for a line with round ends
 */
export function stipple(width: number, height: number, seen: Box): string {
  const lies = width >= height;
  const count = Math.min(MOST_DOTS, Math.round((seen.width * seen.height) / AREA_A_DOT));
  let data = '';
  for (let i = 1; i <= count; i++) {
    const x = (((i * STEP_X) % 1) - 0.5) * seen.width;
    const y = (((i * STEP_Y) % 1) - 0.5) * seen.height;
    const [u, v] = lies ? [(2 * x) / width, (2 * y) / height] : [(-2 * y) / height, (2 * x) / width];
    const side = v / Math.max(0.05, bulge(u));
    // How far a place has turned away from the light, -1 to 1.
    const turned = lies ? 0.25 * u + 0.95 * side : 0.85 * side - 0.3 * u;
    const kept = 0.04 * Math.abs(side) ** 4 + 0.9 * Math.min(1, Math.max(0, (turned + 0.15) / 1.15)) ** 2.2;
    // Squares of the golden ratio's steps leave dots out evenly, and have nothing to do with where they lie.
    if ((i * i * GOLDEN) % 1 < kept) data += `M${x.toFixed(1)} ${y.toFixed(1)}h0`;
  }
  return data;
}
