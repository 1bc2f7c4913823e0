import type { Scene } from './path-geometry.ts';
import { offPlate, type PathScale } from './path-scale.ts';

interface Props {
  scene: Scene;
  scale: PathScale;
  axis: number;
  cutting: ReadonlySet<number>;
}

/** How far the body of a stop is drawn beyond its edge, px. */
const BODY = 13;

/** Where a stop's drawing ends above the axis, px. */
export const topOf = (half: number, scale: PathScale, axis: number): number => axis - Math.min(scale.half, scale.h(half) + BODY);

/** Each stop as two edges with the opening between them; the one that cuts in the accent. */
export function Stops({ scene, scale, axis, cutting }: Props) {
  return (
    <g class="stops">
      {scene.stops.map((stop, i) => {
        if (stop.path === '') return null;
        const at = scale.x(stop.z);
        const edge = scale.h(stop.half);
        const outer = offPlate(stop, scale) ? edge : Math.min(scale.half, edge + BODY);
        return (
          <g
            key={`${stop.path}${stop.label}`}
            data-stop={stop.path}
            class={`stop${cutting.has(i) ? ' bites' : ''}${stop.virtual ? ' virtual' : ''}`}
          >
            <path class="edge" d={`M${at} ${axis - outer}V${axis - edge}M${at} ${axis + edge}V${axis + outer}`} />
          </g>
        );
      })}
    </g>
  );
}
