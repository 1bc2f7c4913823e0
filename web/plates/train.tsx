import type { Scene } from './path-geometry.ts';
import type { PathScale } from './path-scale.ts';

/** A barrel this long, px, has room for names about it. */
const ROOMY = 70;

/** Axis, subject, barrel, pupil, sensor; the relay is drawn by what is known of it. */
export function Train({ scene, scale, axis }: { scene: Scene; scale: PathScale; axis: number }) {
  const { x, h } = scale;
  const field = Math.max(3, h(Math.abs(scene.field[0]?.before[0]?.[1] ?? 0)));
  const barrel = h(scene.noseHalf * 1.25);
  const nose = h(scene.noseHalf * 0.7);
  const shoulder = x(0);
  const tip = x(scene.nose);
  const taper = tip + 0.35 * (shoulder - tip);
  return (
    <g class="train">
      <line class="axis" x1={scale.left - 8} x2={scale.right} y1={axis} y2={axis} />
      <path
        class="barrel"
        d={`M${shoulder} ${axis - barrel}H${taper}L${tip} ${axis - nose}V${axis + nose}L${taper} ${axis + barrel}H${shoulder}Z`}
      />
      <line class="shoulder" x1={shoulder} x2={shoulder} y1={axis - barrel - 5} y2={axis + barrel + 5} />
      <line class="solid" x1={x(scene.subject)} x2={x(scene.subject)} y1={axis - field} y2={axis + field} />
      <line class="solid" x1={x(scene.sensor)} x2={x(scene.sensor)} y1={axis - h(scene.cornerHeight)} y2={axis + h(scene.cornerHeight)} />
      {shoulder - tip > ROOMY && (
        <>
          <text class="part-name" x={x(scene.subject) - 8} y={axis - field - 9}>
            subject
          </text>
          <text class="part-name" x={(taper + shoulder) / 2} y={axis + barrel + 17} text-anchor="middle">
            objective
          </text>
        </>
      )}
      <Pupil at={scene.pupil} between={scene.pupilBetween} half={scene.pupilHalf} scale={scale} axis={axis} />
    </g>
  );
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
