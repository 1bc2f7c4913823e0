/**
 * Tone as an engraver lays it: level lines that swell where it is darker. `light(x, y)` is 0 to 1 at a
 * place of the picture, all in px; returns the data of one SVG path. Full light leaves no line.
 */
export function tone(width: number, height: number, light: (x: number, y: number) => number, pitch = 4): string {
  const pieces: string[] = [];
  const across = Math.max(8, Math.round(width / 7));
  for (let y = pitch / 2; y < height; y += pitch) {
    const swell = Array.from({ length: across + 1 }, (_, i) => weight(light((i * width) / across, y)) * pitch * 0.5);
    for (let i = 0; i <= across; ) {
      if ((swell[i] as number) < 0.04) {
        i++;
        continue;
      }
      let j = i;
      while (j < across && (swell[j + 1] as number) >= 0.04) j++;
      const at = (n: number, side: number): string => `${round((n * width) / across)} ${round(y + side * (swell[n] as number))}`;
      const run = Array.from({ length: j - i + 1 }, (_, n) => i + n);
      if (run.length > 1)
        pieces.push(
          `M${run.map((n) => at(n, -1)).join('L')}L${run
            .toReversed()
            .map((n) => at(n, 1))
            .join('L')}Z`,
        );
      i = j + 1;
    }
  }
  return pieces.join('');
}

/** Loss to line weight: a third of a stop is seen, and two stops are nearly black. */
const weight = (light: number): number => (light >= 1 ? 0 : 0.9 * (1 - light) ** 0.8);
const round = (x: number): string => String(Number(x.toFixed(2)));
