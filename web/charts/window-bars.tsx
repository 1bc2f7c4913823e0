import { holdsOf, LIMIT_WORDS, type WindowAnswer, where } from '../../core/choosing.ts';
import { short } from '../../core/index.ts';
import { rowsIn, widthOf } from '../plates/rows.ts';
import { useWidth } from '../plates/width.ts';
import { Table } from './table.tsx';
import {
  type Axis,
  axisOf,
  type Bar,
  barsOf,
  COMMON_RELAYS,
  lyingWithin,
  type Mark,
  type PlacedMark,
  placedMarks,
} from './window-geometry.ts';
import '../styles/window.css';

/** Narrower than this the names stand over what they name, px. */
const NARROW = 560;
const NAMES = 172;
const PAD = 26;
/** Room for the words over the rider, under the bars for the dimension, and a row of words, px. */
const HEAD = 26;
const BRACKET = 36;
const WORDS_ROW = 15;

const TITLES = {
  '/relay/focalLengthMm': "the relay's focal length, mm",
  '/infinitySpaceMm': 'the infinity space, mm',
  '/relay/clearApertureMm': "the relay's clear opening, mm",
} as const;

interface Props {
  answer: WindowAnswer;
  /** Relays of one's own; those that are commonly made are drawn besides. */
  marks?: readonly Mark[];
  /** The caption's id, one on a page. */
  id?: string;
}

/** Where each limit is met along one quantity, what they leave between them, and which relays lie there. */
export function WindowBars({ answer, marks = [], id = 'window-caption' }: Props) {
  const [box, width] = useWidth(640);
  return (
    <figure class="plate window" ref={box} aria-labelledby={id}>
      {answer.limits.length > 0 && <Drawn answer={answer} marks={marks} width={width} id={id} />}
      <figcaption id={id}>
        {answer.says} {lyingWithin(answer, marks)}
      </figcaption>
      <p class="hint">All else is held: {answer.held.join('; ')}.</p>
      {answer.limits.length > 0 && (
        <Table title="The same limits in numbers" columns={['what is asked', 'it is met', 'found by']} rows={() => rowsOf(answer)} />
      )}
    </figure>
  );
}

const FOUND = { 'closed form': 'formula', roots: 'trying', 'not known': 'not known' } as const;

const rowsOf = (answer: WindowAnswer): string[][] => [
  ...barsOf(answer, { x: (v) => v }).map(({ words }, i) => {
    const limit = answer.limits[i] as WindowAnswer['limits'][number];
    return [holdsOf(limit), words, FOUND[limit.how]];
  }),
  [
    'all of it',
    answer.window.length > 0 ? answer.window.map(([low, high]) => `${short(low, 4)} to ${short(high, 4)} mm`).join(', ') : 'nowhere',
    '',
  ],
];

/** A scale under the bars: a rail with ticks and figures, named. */
interface Scale {
  title: string;
  ticks: readonly (Omit<PlacedMark, 'mark'> & { words: string })[];
  fine: readonly number[];
}

const asTicks = (placed: readonly PlacedMark[]): Scale['ticks'] => placed.map(({ mark, ...rest }) => ({ ...rest, words: mark.label }));

function scalesOf(answer: WindowAnswer, marks: readonly Mark[], axis: Axis): Scale[] {
  const own: Scale = {
    title: TITLES[answer.vary],
    fine: axis.fine,
    ticks: axis.told.map((v) => ({ x: axis.x(v), middle: axis.x(v), row: 0, words: short(v), hung: false, within: false })),
  };
  const marked = (title: string, of: readonly Mark[]): Scale => ({ title, fine: [], ticks: asTicks(placedMarks(of, axis, answer)) });
  const common = (kind: Mark['kind']): Mark[] => COMMON_RELAYS.filter((mark) => mark.kind === kind);
  return [
    own,
    ...(answer.vary === '/relay/focalLengthMm'
      ? [marked('close-up lenses, D', common('close-up')), marked('camera lenses, mm', common('lens'))]
      : []),
    ...(marks.length > 0 ? [marked('your own', marks)] : []),
  ];
}

function Drawn({ answer, marks, width, id }: Required<Props> & { width: number }) {
  const narrow = width < NARROW;
  const axis = axisOf(answer, narrow ? PAD : NAMES + PAD, width - PAD);
  const bars = barsOf(answer, axis);
  const over = narrow ? 18 : 0;
  const barRow = 24 + over;
  const foot = HEAD + barRow * bars.length;
  const bracket = foot + BRACKET - 10;
  let y = foot + BRACKET;
  const scales = scalesOf(answer, marks, axis).map((scale) => {
    const at = y + over + 8;
    y = at + 22 + WORDS_ROW * (rowsIn(scale.ticks) - 1) + 6;
    return { scale, at };
  });
  const rail = scales[0]?.at ?? y;
  const riderLeft = answer.now !== undefined && axis.x(answer.now) < (axis.left + axis.right) / 2;
  const height = y + 4;
  const { now } = answer;
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby={id}>
      <title>Where each thing that is asked is met</title>
      <defs>
        <pattern id={`${id}-hatch`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path class="hatch" d="M0 0V5" />
        </pattern>
      </defs>
      {now !== undefined && now >= answer.from && now <= answer.to && (
        <Rider x={axis.x(now)} rail={rail} words={`yours, ${short(now)} mm`} axis={axis} />
      )}
      {answer.window.map(([low, high]) => (
        <path key={low} class="between" d={`M${axis.x(low)} ${bracket}V${height}M${axis.x(high)} ${bracket}V${height}`} />
      ))}
      {bars.map((bar, i) => (
        <BarRow
          key={bar.name}
          bar={bar}
          axis={axis}
          y={HEAD + barRow * i + over + 10}
          narrow={narrow}
          foot={bracket}
          hatch={`url(#${id}-hatch)`}
        />
      ))}
      <Bracket answer={answer} axis={axis} y={bracket} />
      {scales.map(({ scale, at }) => (
        <Rail key={scale.title} scale={scale} axis={axis} y={at} narrow={narrow} toRight={scale === scales[0]?.scale && riderLeft} />
      ))}
    </svg>
  );
}

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

function BarRow({ bar, axis, y, narrow, foot, hatch }: RowProps) {
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

/** The window as a dimension; where there is none, how far two limits are apart. */
function Bracket({ answer, axis, y }: { answer: WindowAnswer; axis: Axis; y: number }) {
  const { conflict, window } = answer;
  const gap = conflict && window.length === 0 ? conflict.between : undefined;
  const spans = gap ? [gap] : window;
  return (
    <g class={gap ? 'dimension bites' : 'dimension'}>
      {spans.map((span) => {
        const [a, b] = [axis.x(span[0]), axis.x(span[1])];
        const words = gap ? `${short(gap[1] - gap[0])} mm apart` : where([span], answer).replace(/^between (.*) and /, '$1 to ');
        const room = widthOf(words) / 2 + 4;
        const tick = (x: number, on: boolean): string => (on ? '' : `M${x - 3.5} ${y + 3.5}L${x + 3.5} ${y - 3.5}`);
        return (
          <g key={a}>
            <path d={`M${a} ${y}H${b}${tick(a, span[0] === answer.from)}${tick(b, span[1] === answer.to)}`} />
            <text x={Math.min(axis.right + PAD - room, Math.max(axis.left - PAD + room, (a + b) / 2))} y={y - 7} text-anchor="middle">
              {words}
            </text>
          </g>
        );
      })}
    </g>
  );
}

interface RailProps {
  scale: Scale;
  axis: Axis;
  y: number;
  narrow: boolean;
  /** Where there is little room: that its name stands at the right, out of the rider's way. */
  toRight: boolean;
}

function Rail({ scale: { title, ticks, fine }, axis, y, narrow, toRight }: RailProps) {
  const { left, right, x } = axis;
  const start = narrow && !toRight;
  return (
    <g class="scale">
      <text
        class="scale-name"
        x={start ? left : narrow ? right : left - PAD}
        y={narrow ? y - 6 : y + 5}
        text-anchor={start ? 'start' : 'end'}
      >
        {title}
      </text>
      <path class="rail" d={`M${left} ${y}H${right}`} />
      <path class="fine" d={fine.map((v) => `M${x(v)} ${y}v3`).join('')} />
      {ticks.map((tick) => (
        <g key={`${tick.x} ${tick.words}`} class={tick.within ? 'tick within' : 'tick'}>
          <path d={`M${tick.x} ${y}${leaderOf(tick, y)}`} />
          <text x={tick.middle} y={y + 19 + WORDS_ROW * tick.row} text-anchor={tick.hung ? 'start' : 'middle'}>
            {tick.words}
          </text>
        </g>
      ))}
    </g>
  );
}

/** Down to the words: beside them where they hang from it, else to their middle. */
function leaderOf({ x, middle, row, hung }: Scale['ticks'][number], y: number): string {
  if (hung) return `V${y + 18 + WORDS_ROW * row}`;
  return `V${y + 6}${row > 0 || Math.abs(middle - x) > 1 ? `L${middle} ${y + 7 + WORDS_ROW * row}` : ''}`;
}

/** The relay that there is, riding on the first scale. */
function Rider({ x, rail, words, axis }: { x: number; rail: number; words: string; axis: Axis }) {
  const room = widthOf(words) / 2;
  return (
    <g class="rider">
      <path class="post" d={`M${x} ${HEAD - 8}V${rail - 10}`} />
      <path class="foot-of-rider" d={`M${x - 5} ${rail - 10}h10l2.5 8h-15z`} />
      <text x={Math.min(axis.right + PAD - room, Math.max(axis.left - PAD + room, x))} y={HEAD - 12} text-anchor="middle">
        {words}
      </text>
    </g>
  );
}
