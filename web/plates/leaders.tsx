import type { Length, TopLabel } from './labels.ts';
import type { PathScale } from './path-scale.ts';
import { topOf } from './stops.tsx';

interface Props {
  labels: readonly TopLabel[];
  lengths: readonly Length[];
  scale: PathScale;
  axis: number;
  head: number;
  /** The height of a row of names, px. */
  row: number;
  foot: number;
}

/** The height of a row of lengths, px. */
export const LENGTH_ROW = 34;

/** The names' leaders and words, and the dimension lines; numbers that can be typed stand over them as inputs. */
export function Leaders({ labels, lengths, scale, axis, head, row, foot }: Props) {
  return (
    <>
      <g class="names">
        {labels.map(({ key, text, movable, at, reach, row: place, middle, bites }) => {
          const base = head - row * place - 8;
          return (
            <g key={key} class={bites ? 'bites' : ''}>
              <path class="leader" d={`M${round(at)} ${round(topOf(reach, scale, axis) - 3)}V${base + 8}L${round(middle)} ${base + 4}`} />
              {!movable && (
                <text x={round(middle)} y={base} text-anchor="middle">
                  {text}
                </text>
              )}
            </g>
          );
        })}
      </g>
      <g class="dimensions">
        {lengths.map(({ key, words, a, b, middle, row: place }) => {
          const y = foot + LENGTH_ROW * place + 4;
          return (
            <g key={key}>
              <path class="extension" d={`M${round(a)} ${foot - 8}V${y + 4}M${round(b)} ${foot - 8}V${y + 4}`} />
              <path
                class="dimension"
                d={`M${round(a)} ${y}H${round(b)}M${round(a - 3)} ${y + 3}L${round(a + 3)} ${y - 3}M${round(b - 3)} ${y + 3}L${round(b + 3)} ${y - 3}`}
              />
              {words && (
                <text x={round(middle)} y={y + 19} text-anchor="middle">
                  {words}
                </text>
              )}
            </g>
          );
        })}
      </g>
    </>
  );
}

const round = (n: number): number => Number(n.toFixed(2));
