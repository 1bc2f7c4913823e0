import { short } from '../../core/index.ts';
import type { Scene } from './path-geometry.ts';
import { offPlate, type PathScale } from './path-scale.ts';
import { inRows, letter, widthOf } from './rows.ts';

interface Props {
  scene: Scene;
  scale: PathScale;
  axis: number;
  head: number;
  cutting: ReadonlySet<number>;
  narrow: boolean;
  width: number;
}

/** Each stop as two edges with the opening between them, named above; the one that cuts in the accent. */
export function Stops({ scene, scale, axis, head, cutting, narrow, width }: Props) {
  const { x, h } = scale;
  const texts = scene.stops.map((stop, i) =>
    narrow ? letter(i) : `${stop.label.replace(/^the objective's own /, 'exit ').replace(/^the /, '')} Ø ${short(2 * stop.half)}`,
  );
  const placed = inRows(
    scene.stops.map((stop, i) => ({ at: x(stop.z), width: widthOf(texts[i] as string) })),
    4,
    width - 4,
  );
  return (
    <g class="stops">
      {scene.stops.map((stop, i) => {
        const at = x(stop.z);
        const off = offPlate(stop, scale);
        const edge = h(stop.half);
        const outer = off ? edge : edge + 13;
        const { row, middle } = placed[i] as { row: number; middle: number };
        const base = head - 12 - 17 * Math.min(row, 4);
        const text = `${texts[i]}${off && !narrow ? ', beyond the drawing' : ''}`;
        return (
          <g key={`${stop.path}${stop.label}`} class={`stop${cutting.has(i) ? ' bites' : ''}${stop.virtual ? ' virtual' : ''}`}>
            {i > 0 && <path class="edge" d={`M${at} ${axis - outer}V${axis - edge}M${at} ${axis + edge}V${axis + outer}`} />}
            <path class="leader" d={`M${at} ${axis - outer - 2}V${base + 8}L${middle} ${base + 4}`} />
            <text x={middle} y={base} text-anchor="middle">
              {text}
            </text>
          </g>
        );
      })}
    </g>
  );
}
