import { earned, short } from '../../../core/index.ts';
import { type SideView, sideViewOf } from '../../../core/table.ts';
import { useWidth } from '../../plates/width.ts';
import { tabled } from '../tabled.ts';
import { type Side, sideOf } from './side-geometry.ts';

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

const captionOf = (view: SideView, side: Side): string =>
  [
    `From the side, to scale, with the front of the subject in focus: light reaches the middle of it from the hatched part, up to ${told(side.up)}° above the stage on every side.`,
    deep(view) ? 'Farther down the subject shades itself.' : '',
    comesDown(side) ? 'The broken line is where the nose comes to for the back.' : '',
    view.byRelay ? 'The light ends at the rim of the relay, which is wider than the nose and stands above the drawing.' : '',
    'The fine lines are the light that makes the picture.',
    view.diffuser ? 'The diffuser is dashed.' : '',
  ]
    .filter(Boolean)
    .join(' ');

/** With the digits that the figure has in its own place. */
function told(up: number): string {
  const { low, high } = tabled.value.answers.lightMiddleDeg as { low?: number; high?: number };
  return earned(up, low, high);
}

const deep = ({ depthMm }: SideView): boolean => depthMm > 0;
/** By so many px that it can be seen. */
const comesDown = ({ nose: [end], lowest }: Side): boolean => end !== undefined && lowest - end[1] > 3;

const round = (n: number): number => Number(n.toFixed(1));
const path = (points: readonly (readonly [number, number])[], mirror: 1 | -1 = 1): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(mirror * x)} ${round(y)}`).join('');

/** Where lamps may stand: on either side, from beside the front of the subject up to the steepest light. */
function Light({ side: { front, reach: r, up, edge } }: { side: Side }) {
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
function Beam({ view: { fieldMm, coneSlope, freeMm }, side: { k, front } }: { view: SideView; side: Side }) {
  const [low, high, top] = [(fieldMm / 2) * k, (fieldMm / 2 + freeMm * coneSlope) * k, round(front - freeMm * k)];
  return (
    <path class="beam" d={`M${round(-low)} ${round(front)}L${round(-high)} ${top}M${round(low)} ${round(front)}L${round(high)} ${top}`} />
  );
}

function Nose({ side }: { side: Side }) {
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

function Diffuser({ view: { diffuser }, side: { k, stage } }: { view: SideView; side: Side }) {
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
function Subject({ view: { fieldMm, depthMm }, side: { k, stage, axis } }: { view: SideView; side: Side }) {
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

/** A height shorter than its words is told beside its upper end, px. */
const WORDS = 64;

function Figures({ view, side: { k, stage, front, nose, up, reach, axis } }: { view: SideView; side: Side }) {
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
