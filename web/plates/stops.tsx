import { short } from '../../core/index.ts';
import type { Scene } from './path-geometry.ts';
import { offPlate, type PathScale } from './path-scale.ts';
import { inRows, letter, widthOf } from './rows.ts';

export const ROW = 17;

interface Named {
  text: string;
  row: number;
  middle: number;
}

/** The stops' names above the drawing, in rows that keep them apart; letters where there is no room. */
export function namesOf(scene: Scene, scale: PathScale, narrow: boolean, width: number): Named[] {
  const texts = scene.stops.map((stop, i) => {
    if (narrow) return letter(i);
    const name = stop.label.replace(/^the objective's own /, 'exit ').replace(/^the /, '');
    return `${name} Ø ${short(2 * stop.half)}${offPlate(stop, scale) ? ', beyond the drawing' : ''}`;
  });
  const labels = scene.stops.map((stop, i) => ({ at: scale.x(stop.z), width: widthOf(texts[i] as string) }));
  return inRows(labels, 4, width - 4).map((place, i) => ({ ...place, text: texts[i] as string }));
}

interface Props {
  scene: Scene;
  scale: PathScale;
  axis: number;
  head: number;
  cutting: ReadonlySet<number>;
  names: readonly Named[];
}

/** Each stop as two edges with the opening between them, named above; the one that cuts in the accent. */
export function Stops({ scene, scale, axis, head, cutting, names }: Props) {
  return (
    <g class="stops">
      {scene.stops.map((stop, i) => {
        const at = scale.x(stop.z);
        const edge = scale.h(stop.half);
        const outer = offPlate(stop, scale) ? edge : edge + 13;
        const { row, middle, text } = names[i] as Named;
        const base = head - 12 - ROW * row;
        return (
          <g key={`${stop.path}${stop.label}`} class={`stop${cutting.has(i) ? ' bites' : ''}${stop.virtual ? ' virtual' : ''}`}>
            {stop.path !== '' && <path class="edge" d={`M${at} ${axis - outer}V${axis - edge}M${at} ${axis + edge}V${axis + outer}`} />}
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
