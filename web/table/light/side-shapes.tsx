import type { SideView } from '../../../core/table.ts';
import { comesDown } from './side-caption.ts';
import type { Side } from './side-geometry.ts';

export const round = (n: number): number => Number(n.toFixed(1));
const path = (points: readonly (readonly [number, number])[], mirror: 1 | -1 = 1): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(mirror * x)} ${round(y)}`).join('');

/** Where lamps may stand: on either side, from beside the front of the subject up to the steepest light. */
export function Light({ side: { front, reach: r, up, edge } }: { side: Side }) {
  const [x, y] = [r * Math.cos((up * Math.PI) / 180), front - r * Math.sin((up * Math.PI) / 180)];
  return (
    <g class="room">
      {[1, -1].map((s) => (
        <g key={s}>
          <path
            class="free"
            d={`M0 ${round(front)}H${round(s * r)}A${round(r)} ${round(r)} 0 0 ${s > 0 ? 0 : 1} ${round(s * x)} ${round(y)}Z`}
          />
          <path class="steepest" d={`M0 ${round(front)}L${round(s * edge[0])} ${round(edge[1])}`} />
        </g>
      ))}
    </g>
  );
}

/** From the field's edges up to the nose. */
export function Beam({ view: { fieldMm, coneSlope, freeMm }, side: { k, front } }: { view: SideView; side: Side }) {
  const [low, high, top] = [(fieldMm / 2) * k, (fieldMm / 2 + freeMm * coneSlope) * k, round(front - freeMm * k)];
  return (
    <path class="beam" d={`M${round(-low)} ${round(front)}L${round(-high)} ${top}M${round(low)} ${round(front)}L${round(high)} ${top}`} />
  );
}

export function Nose({ side }: { side: Side }) {
  const { nose, lowest } = side;
  const [end] = nose as readonly [readonly [number, number]];
  const top = nose.at(-1) as readonly [number, number];
  return (
    <g class="nose">
      <path class="solid" d={`${path([...nose].reverse(), -1)}${path(nose).replace('M', 'L')}`} />
      <path class="front" d={`M${round(-end[0])} ${round(end[1])}H${round(end[0])}`} />
      {comesDown(side) && <path class="lowest" d={`M${round(-end[0])} ${round(lowest)}H${round(end[0])}`} />}
      {/* It goes on: a break. */}
      <path class="break" d={`M${round(-top[0])} ${round(top[1])}q${round(top[0] / 2)} -7 ${round(top[0])} 0t${round(top[0])} 0`} />
    </g>
  );
}

export function Diffuser({ view: { diffuser }, side: { k, stage } }: { view: SideView; side: Side }) {
  if (!diffuser) return null;
  const { foot, top, height, wall } = diffuser;
  return (
    <g class="diffuser">
      {([1, -1] as const).map((s) => (
        <g key={s}>
          <path
            d={path(
              [
                [foot * k, stage],
                [top * k, stage - height * k],
              ],
              s,
            )}
          />
          {wall > 0 && (
            <path
              d={path(
                [
                  [(foot + wall) * k, stage],
                  [(top + wall) * k, stage - height * k],
                ],
                s,
              )}
            />
          )}
        </g>
      ))}
    </g>
  );
}

/** As wide as the field, as high as it is deep: a low dome, or the field alone. */
export function Subject({ view: { fieldMm, depthMm }, side: { k, stage, axis } }: { view: SideView; side: Side }) {
  const [a, b] = [Math.max(2, (fieldMm / 2) * k), depthMm * k];
  return (
    <g class="subject">
      <path class="stage" d={`M${round(-axis + 6)} ${round(stage)}H${round(axis - 6)}`} />
      <path
        class="field"
        d={
          b > 1
            ? `M${round(-a)} ${round(stage)}A${round(a)} ${round(b)} 0 0 1 ${round(a)} ${round(stage)}Z`
            : `M${round(-a)} ${round(stage)}H${round(a)}`
        }
      />
    </g>
  );
}
