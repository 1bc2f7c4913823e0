import { short } from '../../../core/index.ts';
import type { SideView } from '../../../core/table.ts';
import { told } from './side-caption.ts';
import type { Side } from './side-geometry.ts';
import { round } from './side-shapes.tsx';

/** A height shorter than its words is told beside its upper end, px. */
const WORDS = 64;

export function Figures({ view, side: { k, stage, front, nose, up, reach, axis } }: { view: SideView; side: Side }) {
  const [end] = nose as readonly [readonly [number, number]];
  const r = Math.min(52, 0.6 * reach);
  const a = (up * Math.PI) / 180;
  const x = round(axis - 22);
  const middle = round((end[1] + front) / 2);
  const free = `${short(view.freeMm)} mm`;
  const widths = [
    [view.fieldMm, 'field'],
    [view.noseMm, 'nose'],
    ...(view.diffuser ? ([[2 * (view.diffuser.foot + view.diffuser.wall), 'diffuser']] as const) : []),
  ] as const;
  return (
    <g class="measure">
      <path d={`M${round(r)} ${round(front)}A${round(r)} ${round(r)} 0 0 0 ${round(r * Math.cos(a))} ${round(front - r * Math.sin(a))}`} />
      <text x={round((r + 8) * Math.cos(a / 2))} y={round(front - (r + 8) * Math.sin(a / 2) + 4)}>
        {told(up)}°
      </text>
      <path class="leader" d={`M${round(end[0] + 3)} ${round(end[1])}H${x + 5}`} />
      <path d={`M${x} ${round(end[1])}V${round(front)}M${x - 3} ${round(end[1] + 3)}l6 -6M${x - 3} ${round(front + 3)}l6 -6`} />
      {front - end[1] > WORDS ? (
        <text x={x + 15} y={middle} text-anchor="middle" transform={`rotate(-90 ${x + 15} ${middle})`}>
          {free}
        </text>
      ) : (
        <text x={x + 5} y={round(end[1] - 7)} text-anchor="end">
          {free}
        </text>
      )}
      {widths.map(([width, name], i) => (
        <Across key={name} half={(width / 2) * k} y={round(stage + 20 + 26 * i)} words={`${name} ${short(width)} mm`} />
      ))}
    </g>
  );
}

/** A width about the axis, its words in it or, where they do not fit, beside it. */
function Across({ half, y, words }: { half: number; y: number; words: string }) {
  const h = round(half);
  const fits = 2 * h > 8 * words.length + 24;
  return (
    <>
      <path d={`M${-h} ${y}H${h}M${-h - 3} ${y + 3}l6 -6M${h - 3} ${y + 3}l6 -6`} />
      <text x={fits ? 0 : h + 9} y={y + 4} text-anchor={fits ? 'middle' : 'start'}>
        {words}
      </text>
    </>
  );
}
