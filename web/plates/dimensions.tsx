import { short } from '../../core/index.ts';
import type { Scene } from './path-geometry.ts';
import type { PathScale } from './path-scale.ts';
import { inRows, widthOf } from './rows.ts';

interface Dimension {
  from: number;
  to: number;
  words: string;
}

/** The lengths along the axis, as dimension lines with their figures. */
export function Dimensions({ scene, scale, top, width }: { scene: Scene; scale: PathScale; top: number; width: number }) {
  const mm = (x: number): string => `${short(x)} mm`;
  const lengths: Dimension[] = [
    ...(scene.lengthKnown ? [{ from: scene.subject, to: scene.nose, words: `working distance ${mm(scene.nose - scene.subject)}` }] : []),
    { from: 0, to: scene.rim, words: `infinity space ${mm(scene.rim)}` },
    { from: scene.plane, to: scene.sensor, words: `relay to sensor ${mm(scene.sensor - scene.plane)}` },
  ];
  const placed = inRows(
    lengths.map(({ from, to, words }) => ({
      at: (scale.x(from) + scale.x(to)) / 2,
      width: Math.max(widthOf(words), scale.x(to) - scale.x(from) - 14),
    })),
    2,
    width - 2,
    8,
  );
  return (
    <g class="dimensions">
      {lengths.map(({ from, to, words }, i) => {
        const { row } = placed[i] as { row: number };
        const y = top + 22 * row + 18;
        const a = scale.x(from);
        const b = scale.x(to);
        const half = widthOf(words) / 2;
        const middle = Math.min(width - 2 - half, Math.max(2 + half, (a + b) / 2));
        return (
          <g key={words}>
            <path class="extension" d={`M${a} ${top - 6}V${y + 4}M${b} ${top - 6}V${y + 4}`} />
            <path class="dimension" d={`M${a} ${y}H${b}M${a - 3} ${y + 3}L${a + 3} ${y - 3}M${b - 3} ${y + 3}L${b + 3} ${y - 3}`} />
            <text x={middle} y={y - 5} text-anchor="middle">
              {words}
            </text>
          </g>
        );
      })}
    </g>
  );
}
