/** Units of a path's data a px: whole numbers are written and read fastest. */
export const UNITS = 20;
/** Places from the middle to the corner at which the light is worked out. */
const STEPS = 256;

/**
 * Tone as an engraver lays it: level lines that swell where it is darker. The light is the same all around
 * the middle, so it is worked out along one radius and looked up from there.
 *
 * @param light 0 to 1 at a distance from the middle in px
 * @returns data of one SVG path, the middle at 0 0 and `UNITS` a px: the upper half, and the lower is its
 * mirror image. Full light leaves no line.
 */
export function tone(width: number, height: number, light: (radius: number) => number, pitch = 4): string {
  const corner = Math.hypot(width, height) / 2;
  const swells = Float64Array.from({ length: STEPS + 2 }, (_, i) => weight(light((i / STEPS) * corner)) * pitch * 0.5 * UNITS);
  if (swells.every((swell) => swell < 1)) return '';
  const columns = Math.max(8, Math.round(width / 7));
  const xs = Array.from({ length: columns + 1 }, (_, i) => (i / columns - 0.5) * width);
  const across = xs.map((x) => Math.round(x * UNITS));
  const line = new Int32Array(columns + 1);
  let data = '';
  for (let y = pitch / 2; y < height / 2; y += pitch) {
    for (let i = 0; i <= columns; i++) {
      const place = (Math.sqrt((xs[i] as number) ** 2 + y * y) / corner) * STEPS;
      const before = Math.floor(place);
      const [a, b] = [swells[before] as number, swells[before + 1] as number];
      line[i] = Math.round(a + (b - a) * (place - before));
    }
    for (let i = 0; i <= columns; i++) {
      if (line[i] === 0) continue;
      const from = i;
      while (i < columns && line[i + 1] !== 0) i++;
      data += swelling(across, line, from, i, -Math.round(y * UNITS));
    }
  }
  return data;
}

/** One line from column to column: along its upper edge and back along the lower. */
function swelling(across: readonly number[], line: Int32Array, from: number, to: number, y: number): string {
  if (to === from) return '';
  let out = '';
  let back = '';
  for (let i = from; i < to; i++) {
    const dx = (across[i + 1] as number) - (across[i] as number);
    const grows = (line[i + 1] as number) - (line[i] as number);
    out += `l${dx} ${-grows}`;
    back = `l${-dx} ${-grows}${back}`;
  }
  return `M${across[from]} ${y - (line[from] as number)}${out}v${2 * (line[to] as number)}${back}Z`;
}

/** Loss to line weight: a third of a stop is seen, and two stops are nearly black. */
const weight = (light: number): number => (light >= 1 ? 0 : 0.9 * (1 - light) ** 0.8);
