import type { PathScale } from './path-scale.ts';

/** The height that the bench and its riders take below the drawing, px. */
export const BENCH = 40;

const MARKS = [1, 2, 5, 10, 20, 50, 100, 200, 500];
/** Marks closer than this, and figures closer than that, run together, px. */
const APART = 6;
const FIGURES_APART = 44;

interface Rider {
  name: string;
  /** What it carries. */
  words: string;
  x: number;
  /** Where its post begins, px from the top. */
  from: number;
  held: boolean;
}

/** The optical bench under the light path: millimetres from the objective's shoulder, and a rider under everything that slides on it. */
export function Bench({
  scale,
  top,
  from,
  to,
  riders,
}: {
  scale: Pick<PathScale, 'x' | 'k' | 'left'>;
  top: number;
  from: number;
  to: number;
  riders: readonly Rider[];
}) {
  const fine = MARKS.find((m) => m * scale.k >= APART) ?? 500;
  const told = MARKS.find((m) => m * scale.k >= FIGURES_APART && m % fine === 0) ?? 1000;
  const first = Math.ceil(from / fine) * fine;
  const ticks = Array.from({ length: Math.max(0, Math.floor((to - first) / fine) + 1) }, (_, i) => first + i * fine);
  const rail = top + 12;
  const d = ticks.map((z) => `M${round(scale.x(z))} ${rail}v${z % told === 0 ? 8 : z % (5 * fine) === 0 ? 6 : 4}`).join('');
  return (
    <g class="bench">
      <path class="rail" d={`M${scale.left} ${rail}H${round(scale.x(to))}M${scale.left} ${rail - 2.5}H${round(scale.x(to))}`} />
      <path class="ticks" d={d} />
      {ticks
        .filter((z) => z % told === 0)
        .map((z) => (
          <text key={z} x={round(scale.x(z))} y={rail + 20} text-anchor="middle">
            {String(z).replace('-', '−')}
          </text>
        ))}
      {riders.map(({ name, words, x, from: post, held }) => (
        <g key={name} class={`rider${held ? ' held' : ''}`} data-rider={name}>
          <path class="post" d={`M${round(x)} ${round(post)}V${rail - 12}`} />
          <path class="foot-of-rider" d={`M${round(x - 6)} ${rail - 12}h12l3 9h-18z`} />
          <path class="index" d={`M${round(x)} ${rail - 10}V${rail + 6}`} />
          {words && (
            <text class="carried" x={round(x + 13)} y={rail - 6}>
              {words}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}

const round = (n: number): number => Number(n.toFixed(2));
