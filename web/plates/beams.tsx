import type { Scene } from './path-geometry.ts';
import type { Beam, Point, Ray } from './path-rays.ts';
import type { PathScale } from './path-scale.ts';

interface Props {
  scene: Scene;
  scale: PathScale;
  axis: number;
}

/**
 * Both beams as ribbons: the middle's in broken lines, the field point's in full ones and hatched. What a stop
 * takes goes as far as the stop, which is struck where it takes it.
 */
export function Beams({ scene, scale, axis }: Props) {
  const at = ([z, y]: Point): string => `${round(scale.x(z))} ${round(axis - scale.h(y))}`;
  const drawn = (points: readonly Point[]): string => `M${points.map(at).join('L')}`;
  const between = (a: readonly Point[], b: readonly Point[]): string => `M${[...a, ...b.toReversed()].map(at).join('L')}Z`;
  return (
    <g class={`beams${scene.openingsKnown ? '' : ' unsure'}`}>
      <BeamTone />
      {(['middle', 'field'] as const).map((kind) => {
        const beam = scene.beams[kind];
        const [low, , high] = beam.through;
        return (
          <g key={kind} class={kind}>
            {low && high && kind === 'field' && <path class="tone" d={between(low.points, high.points)} />}
            {low && high && <path class="inside" d={between(low.before, high.before)} />}
            {beam.through.map((ray, i) => (
              <path key={i} class={i === 1 ? 'chief' : 'edge-ray'} d={drawn(ray.points)} data-ends-at={ray.endsAt} />
            ))}
            <Lost beam={beam} drawn={drawn} between={between} />
          </g>
        );
      })}
    </g>
  );
}

/** The hatching of a beam. */
export const BeamTone = () => (
  <defs>
    <pattern id="beam" width="3.5" height="3.5" patternUnits="userSpaceOnUse" patternTransform="rotate(-62)">
      <line x1="0" x2="3.5" y1="1.75" y2="1.75" class="stroke" />
    </pattern>
  </defs>
);

interface LostProps {
  beam: Beam;
  drawn(points: readonly Point[]): string;
  between(a: readonly Point[], b: readonly Point[]): string;
}

/** What is lost, side by side with what is not: its outermost ray, and the height over which the stop takes it. */
function Lost({ beam, drawn, between }: LostProps) {
  return (
    <>
      {beam.lost.map(([outer, first]) => {
        const whole = (ray: Ray): Point[] => [...ray.points, ...ray.seen];
        const end = whole(outer).at(-1) as Point;
        const inner = heightAt(whole(first), end[0]);
        return (
          <g key={outer.p} class="lost" data-ends-at={outer.endsAt}>
            {beam.through.length === 0 && <path class="inside" d={between(outer.before, first.before)} />}
            <path class="edge-ray" d={drawn(outer.points)} />
            {beam.through.length === 0 && <path class="edge-ray" d={drawn(first.points)} />}
            {outer.seen.length > 0 && <path class="seen" d={drawn(outer.seen)} />}
            <path class="struck" d={drawn([end, [end[0], inner]])} />
          </g>
        );
      })}
    </>
  );
}

/** How high a course stands at a place along the axis; its last height beyond its end. */
function heightAt(points: readonly Point[], z: number): number {
  for (let i = 1; i < points.length; i++) {
    const [[za, ya], [zb, yb]] = [points[i - 1] as Point, points[i] as Point];
    if (za <= z && z <= zb) return zb === za ? yb : ya + ((yb - ya) * (z - za)) / (zb - za);
  }
  return (points.at(-1) as Point)[1];
}

const round = (x: number): number => Number(x.toFixed(2));
