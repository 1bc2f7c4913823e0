import type { Scene } from './path-geometry.ts';
import type { PathScale } from './path-scale.ts';

/** How long the barrel of a tube lens is drawn, and what a camera is drawn to need behind a lens, mm. */
const TUBE_LENGTH = 30;
const REGISTER = 44;
const SHORTEST = 14;

/**
 * A relay whose glass is not known, as what is known of it: its rim, the plane at which it counts as
 * bending the light, and a dashed outline that claims no shape.
 */
export function RelayOutline({ scene, scale: { x, h, most }, axis }: { scene: Scene; scale: PathScale; axis: number }) {
  const { kind, plane, rim, sensor } = scene;
  // Where it is not known it claims no edge that would cut a beam.
  const opening = scene.stops.find((stop) => stop.path === '/relay/clearApertureMm')?.half ?? most;
  const half = h(Math.min(opening, most));
  const at = x(plane);
  if (kind === 'supplementary') {
    const bulge = Math.max(5, Math.min(11, half / 7));
    return (
      <path
        class="supposed"
        d={`M${at} ${axis - half}Q${at + 2 * bulge} ${axis} ${at} ${axis + half}Q${at - 2 * bulge} ${axis} ${at} ${axis - half}Z`}
      />
    );
  }
  const end = kind === 'tube-lens' ? rim + TUBE_LENGTH : sensor - REGISTER;
  const [left, right] = [x(rim), x(Math.max(rim + SHORTEST, Math.min(end, sensor - 1)))];
  const outer = Math.min(half + 13, h(most));
  return (
    <g>
      <path class="supposed" d={`M${left} ${axis - outer}H${right}V${axis + outer}H${left}`} />
      <path class="plane" d={`M${at} ${axis - outer}V${axis + outer}`} />
    </g>
  );
}
