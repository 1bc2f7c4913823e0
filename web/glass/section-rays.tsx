import type { TracedRay } from './section-geometry.ts';
import type { SectionScale } from './section-scale.ts';

/** A beam by the edges of what comes through and its middle ray; every ray that a rim stops, up to there. */
export function Ribbon({
  rays,
  kind,
  scale,
  axis,
}: {
  rays: readonly TracedRay[];
  kind: 'middle' | 'field';
  scale: SectionScale;
  axis: number;
}) {
  const px = (ray: TracedRay) =>
    ray.points.map(([z, y]) => [Number(scale.x(z).toFixed(2)), Number((axis - scale.h(y)).toFixed(2))] as const);
  const whole = rays.filter((ray) => ray.endsAt === undefined);
  const [low, high] = [whole[0], whole.at(-1)];
  const chief = whole[Math.floor(whole.length / 2)];
  return (
    <g class={kind}>
      {low && high && kind === 'field' && (
        <path class="tone" d={`M${[...px(low), ...px(high).toReversed()].map((p) => p.join(' ')).join('L')}Z`} />
      )}
      {rays.map((ray) => {
        if (ray.endsAt === undefined && ray !== low && ray !== high && ray !== chief) return null;
        const points = px(ray);
        const [x, y] = points.at(-1) as readonly [number, number];
        return (
          <g key={ray.at} class={ray.endsAt === undefined ? (ray === chief ? 'chief' : '') : 'lost'} data-ends-at={ray.endsAt}>
            <path d={`M${points.map((p) => p.join(' ')).join('L')}`} />
            {ray.endsAt !== undefined && (
              <path class="tick" d={`M${x - 3} ${y - 3}L${x + 3} ${y + 3}M${x - 3} ${y + 3}L${x + 3} ${y - 3}`} />
            )}
          </g>
        );
      })}
    </g>
  );
}
