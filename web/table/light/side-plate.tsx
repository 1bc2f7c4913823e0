import { sideViewOf } from '../../../core/table.ts';
import { useWidth } from '../../plates/width.ts';
import { tabled } from '../tabled.ts';
import { captionOf } from './side-caption.ts';
import { Figures } from './side-figures.tsx';
import { sideOf } from './side-geometry.ts';
import { Beam, Diffuser, Light, Nose, round, Subject } from './side-shapes.tsx';

/** Subject, nose and diffuser from the side, to scale, with the directions from which light can come. */
export function SidePlate() {
  const [box, width] = useWidth(900);
  const view = sideViewOf(tabled.value);
  if (!view) return null;
  const side = sideOf(view, Math.min(width, 760));
  return (
    <figure class="plate side-plate" ref={box} aria-labelledby="side-caption">
      <svg
        width={side.width}
        height={side.height}
        viewBox={`0 0 ${round(side.width)} ${round(side.height)}`}
        role="img"
        aria-labelledby="side-caption"
      >
        <title>Room for light, from the side</title>
        <defs>
          <pattern id="from-here" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(58)">
            <path d="M0 0V6" />
          </pattern>
        </defs>
        <g transform={`translate(${round(side.axis)} 0)`}>
          <Light side={side} />
          <Beam view={view} side={side} />
          <Nose side={side} />
          <Diffuser view={view} side={side} />
          <Subject view={view} side={side} />
          <Figures view={view} side={side} />
        </g>
      </svg>
      <figcaption id="side-caption">{captionOf(view, side)}</figcaption>
    </figure>
  );
}
