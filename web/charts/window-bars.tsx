import '../styles/window.css';
import { holdsOf, type WindowAnswer, where } from '../../core/choosing.ts';
import { short } from '../../core/index.ts';
import { rowsIn, widthOf } from '../plates/rows.ts';
import { useWidth } from '../plates/width.ts';
import { Table } from './table.tsx';
import { type Axis, axisOf, barsOf, lyingWithin, type Mark } from './window-geometry.ts';
import { BarRow } from './window-rows.tsx';
import { PAD, Rail, scalesOf, WORDS_ROW } from './window-scales.tsx';

/** Narrower than this the names stand over what they name, px. */
const NARROW = 560;
const NAMES = 172;
/** Room for the words over the rider, under the bars for the dimension, and a row of words, px. */
const HEAD = 26;
const BRACKET = 36;
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
