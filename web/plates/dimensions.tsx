import { inRows, widthOf } from './rows.ts';

export const DIMENSION_ROW = 30;

interface Dimension {
  words: string;
  /** Ends of the line, px. */
  a: number;
  b: number;
  /** Where the words begin or, centred, stand; beside the line where they do not fit over it. */
  x: number;
  beside: 'none' | 'right' | 'left';
  row: number;
}

/** Lengths with their words, in rows that keep them apart. */
export function laidOut(
  lengths: readonly (readonly [from: number, to: number, words: string])[],
  x: (z: number) => number,
  width: number,
): Dimension[] {
  const found = lengths.map(([from, to, words]) => {
    const a = x(from);
    const b = x(to);
    const room = widthOf(words);
    if (room + 10 <= b - a) return { words, a, b, x: (a + b) / 2, beside: 'none' as const, least: a, most: b };
    if (b + 10 + room < width) return { words, a, b, x: b + 8, beside: 'right' as const, least: a, most: b + 10 + room };
    return { words, a, b, x: a - 8, beside: 'left' as const, least: a - 10 - room, most: b };
  });
  const placed = inRows(
    found.map(({ least, most }) => ({ at: (least + most) / 2, width: most - least - 2 })),
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    0,
  );
  return found.map((one, i) => ({ ...one, row: placed[i]?.row ?? 0 }));
}

export function Dimensions({ dimensions, top }: { dimensions: readonly Dimension[]; top: number }) {
  return (
    <g class="dimensions">
      {dimensions.map(({ words, a, b, x, beside, row }) => {
        const y = top + DIMENSION_ROW * row + 18;
        return (
          <g key={words}>
            <path class="extension" d={`M${a} ${top - 6}V${y + 4}M${b} ${top - 6}V${y + 4}`} />
            <path class="dimension" d={`M${a} ${y}H${b}M${a - 3} ${y + 3}L${a + 3} ${y - 3}M${b - 3} ${y + 3}L${b + 3} ${y - 3}`} />
            <text
              x={x}
              y={beside === 'none' ? y - 5 : y + 4}
              text-anchor={beside === 'none' ? 'middle' : beside === 'right' ? 'start' : 'end'}
            >
              {words}
            </text>
          </g>
        );
      })}
    </g>
  );
}
