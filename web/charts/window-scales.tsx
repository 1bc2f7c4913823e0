import type { WindowAnswer } from '../../core/choosing.ts';
import { short } from '../../core/index.ts';
import { type Axis, COMMON_RELAYS, type Mark, type PlacedMark, placedMarks } from './window-geometry.ts';

export const PAD = 26;
export const WORDS_ROW = 15;

const TITLES = {
  '/relay/focalLengthMm': "the relay's focal length, mm",
  '/infinitySpaceMm': 'the infinity space, mm',
  '/relay/clearApertureMm': "the relay's clear opening, mm",
} as const;

/** A scale under the bars: a rail with ticks and figures, named. */
interface Scale {
  title: string;
  ticks: readonly (Omit<PlacedMark, 'mark'> & { words: string })[];
  fine: readonly number[];
}

const asTicks = (placed: readonly PlacedMark[]): Scale['ticks'] => placed.map(({ mark, ...rest }) => ({ ...rest, words: mark.label }));

export function scalesOf(answer: WindowAnswer, marks: readonly Mark[], axis: Axis): Scale[] {
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

interface RailProps {
  scale: Scale;
  axis: Axis;
  y: number;
  narrow: boolean;
  /** Where there is little room: that its name stands at the right, out of the rider's way. */
  toRight: boolean;
}

export function Rail({ scale: { title, ticks, fine }, axis, y, narrow, toRight }: RailProps) {
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
