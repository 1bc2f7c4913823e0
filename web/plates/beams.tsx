import type { Scene } from './path-geometry.ts';
import type { Point, Ray } from './path-rays.ts';
import type { PathScale } from './path-scale.ts';

interface Props {
  scene: Scene;
  scale: PathScale;
  axis: number;
}

/** Both fans of rays. One that a stop takes ends there with a tick. */
export function Beams({ scene, scale, axis }: Props) {
  return (
    <g class="beams">
      {scene.middle
        .filter((_, i) => i % 2 === 0)
        .map((ray) => (
          <One key={`m${ray.p}`} ray={ray} kind="middle" scale={scale} axis={axis} />
        ))}
      {scene.field.map((ray) => (
        <One key={`f${ray.p}`} ray={ray} kind="field" scale={scale} axis={axis} />
      ))}
    </g>
  );
}

function One({ ray, kind, scale, axis }: { ray: Ray; kind: string; scale: PathScale; axis: number }) {
  const at = ([z, y]: Point): string => `${round(scale.x(z))} ${round(axis - scale.h(y))}`;
  const line = (points: readonly Point[]): string => `M${points.map(at).join('L')}`;
  const end = (ray.seen.at(-1) ?? ray.points.at(-1)) as Point;
  const lost = ray.endsAt !== undefined;
  const [x, y] = at(end).split(' ').map(Number) as [number, number];
  return (
    <g class={`${kind}${lost ? ' lost' : ''}`} data-ends-at={ray.endsAt}>
      <path class="inside" d={line(ray.before)} />
      <path d={line(ray.points)} />
      {ray.seen.length > 0 && <path class="seen" d={line(ray.seen)} />}
      {lost && <path class="tick" d={`M${x - 3} ${y - 3}L${x + 3} ${y + 3}M${x - 3} ${y + 3}L${x + 3} ${y - 3}`} />}
    </g>
  );
}

const round = (x: number): number => Number(x.toFixed(2));
