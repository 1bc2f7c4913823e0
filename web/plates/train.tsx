import type { Scene } from './path-geometry.ts';
import type { PathScale } from './path-scale.ts';

/** What stands still: axis, subject, barrel, pupil, relay, sensor. */
export function Train({ scene, scale, axis }: { scene: Scene; scale: PathScale; axis: number }) {
  const { x, h } = scale;
  const field = Math.max(3, h(Math.abs(scene.corner[0]?.before[0]?.[1] ?? 0)));
  const barrel = h(scene.noseHalf * 1.25);
  const nose = h(scene.noseHalf * 0.7);
  const shoulder = x(0);
  const tip = x(scene.nose);
  const taper = tip + 0.35 * (shoulder - tip);
  const lens = glass(scene, scale, axis);
  return (
    <g class="train">
      <defs>
        <pattern id="glass" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="5" class="hatch" />
        </pattern>
      </defs>
      <line class="axis" x1={scale.left - 8} x2={x(scene.sensor) + 14} y1={axis} y2={axis} />
      <path
        class="barrel"
        d={`M${shoulder} ${axis - barrel}H${taper}L${tip} ${axis - nose}V${axis + nose}L${taper} ${axis + barrel}H${shoulder}Z`}
      />
      <line class="shoulder" x1={shoulder} x2={shoulder} y1={axis - barrel - 5} y2={axis + barrel + 5} />
      <line class="solid" x1={x(scene.subject)} x2={x(scene.subject)} y1={axis - field} y2={axis + field} />
      <path class="lens" d={lens} />
      <path class="lens-edge" d={lens} />
      <line class="solid" x1={x(scene.sensor)} x2={x(scene.sensor)} y1={axis - h(scene.cornerHeight)} y2={axis + h(scene.cornerHeight)} />
      <Pupil at={scene.pupil} between={scene.pupilBetween} half={scene.pupilHalf} scale={scale} axis={axis} />
    </g>
  );
}

/** The relay as one piece of glass at its principal plane, as high as its rim. */
function glass(scene: Scene, { x, h, most }: PathScale, axis: number): string {
  const rim = scene.stops.find((stop) => stop.path === '/relay/clearApertureMm');
  const half = h(Math.min(rim?.half ?? Number.POSITIVE_INFINITY, most)) - 1;
  const at = x(scene.plane);
  const bulge = Math.max(5, Math.min(11, half / 7));
  return `M${at} ${axis - half}Q${at + 2 * bulge} ${axis} ${at} ${axis + half}Q${at - 2 * bulge} ${axis} ${at} ${axis - half}Z`;
}

interface PupilProps {
  at: number;
  between: readonly [number, number];
  half: number;
  scale: Pick<PathScale, 'x' | 'h'>;
  axis: number;
}

/** The exit pupil, and a dotted bracket over the interval that surely holds it. */
export function Pupil({ at, between: [from, to], half, scale: { x, h }, axis }: PupilProps) {
  const y = axis + h(half) + 7;
  return (
    <g class="pupil">
      <line x1={x(at)} x2={x(at)} y1={axis - h(half)} y2={axis + h(half)} />
      {to > from && <path class="between" d={`M${x(from)} ${y - 4}V${y}H${x(to)}V${y - 4}`} />}
    </g>
  );
}
