import { LIMIT_WORDS } from '../../core/choosing.ts';
import type { Axis, Bar } from './window-geometry.ts';
import { PAD } from './window-scales.tsx';

/** Beyond what was looked at a bar goes on in strokes that grow shorter. */
const goesOn = (x: number, way: 1 | -1): string => `M${x + 2 * way} 0h${6 * way}m${3 * way} 0h${4 * way}m${3 * way} 0h${2 * way}`;

interface RowProps {
  bar: Bar;
  axis: Axis;
  y: number;
  narrow: boolean;
  foot: number;
  hatch: string;
}

export function BarRow({ bar, axis, y, narrow, foot, hatch }: RowProps) {
  const { left, right } = axis;
  const bites = bar.known && bar.spans.length === 0;
  return (
    <g class={bites ? 'limit bites' : 'limit'} data-limit={bar.name}>
      <text x={narrow ? left : left - PAD} y={narrow ? y - 12 : y + 4} text-anchor={narrow ? 'start' : 'end'}>
        {LIMIT_WORDS[bar.name].short}
      </text>
      <path class="reach" d={`M${left} ${y}H${right}`} />
      {!bar.known && <rect class="unsure" x={left} y={y - 4} width={right - left} height="8" fill={hatch} />}
      {(!bar.known || bites) && (
        <text class="said" x={(left + right) / 2} y={y + 4} text-anchor="middle">
          {bar.words}
        </text>
      )}
      {bar.spans.map(({ a, b, low, high }) => (
        <g key={a} transform={`translate(0 ${y})`}>
          <path class="bar" d={`M${a} 0H${Math.max(b, a + 1)}`} />
          {low === 'beyond' ? <path class="on" d={goesOn(a, -1)} /> : <End x={a} closes={low === 'closes'} foot={foot - y} />}
          {high === 'beyond' ? <path class="on" d={goesOn(b, 1)} /> : <End x={b} closes={high === 'closes'} foot={foot - y} />}
        </g>
      ))}
    </g>
  );
}

/** Where a limit ends; where it closes the window a line goes down to the dimension. */
const End = ({ x, closes, foot }: { x: number; closes: boolean; foot: number }) => (
  <g class={closes ? 'end closes' : 'end'}>
    <path d={`M${x} -7V7`} />
    {closes && <path class="down" d={`M${x} 7V${foot}`} />}
  </g>
);
