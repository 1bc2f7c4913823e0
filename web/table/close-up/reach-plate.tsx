import { numberIn, short } from '../../../core/index.ts';
import { useWidth } from '../../plates/width.ts';
import { tabled } from '../tabled.ts';
import { type End, reachOf, type Track, ticksOf, tracksOf } from './tracks.ts';

/** Room for the lens at the left, and for a size beyond the farthest end, px. */
const LENS = { wide: 96, narrow: 44 };
const RIGHT = { wide: 62, narrow: 44 };
const NARROW = 560;
const ROW = 56;
const HALF_LENS = 30;
/** Over the tallest field, and at most so tall, px. */
const HEAD = 14;
const TALLEST = 150;

/** Where the subject stands and how much of it is seen, then each way to come close as a line on one scale. */
export function ReachPlate() {
  const [box, width] = useWidth(900);
  const tracks = tracksOf(tabled.value);
  if (tracks.length === 0) return null;
  return (
    <figure class="plate reach-plate" ref={box} aria-labelledby="reach-caption">
      <Drawn tracks={tracks} width={width} />
      <figcaption id="reach-caption">{captionOf(tracks)}</figcaption>
    </figure>
  );
}

function Drawn({ tracks, width }: { tracks: readonly Track[]; width: number }) {
  const narrow = width < NARROW;
  const left = narrow ? LENS.narrow : LENS.wide;
  const right = width - (narrow ? RIGHT.narrow : RIGHT.wide);
  const reach = reachOf(tracks);
  const px = (right - left) / reach;
  const x = (mm: number): number => left + Math.max(0, Math.min(reach, mm)) * px;
  const fields = fieldsOf().filter(({ at }) => at <= reach);
  const tall = Math.min(TALLEST, Math.max(2 * HALF_LENS, ...fields.map(({ width: w }) => w * px)));
  const axis = HEAD + tall / 2;
  const first = axis + tall / 2 + 42;
  const rail = first + ROW * tracks.length - 8;
  return (
    <svg width={width} height={rail + 42} viewBox={`0 0 ${width} ${rail + 42}`} role="img" aria-labelledby="reach-caption">
      <title>Where the subject may stand</title>
      <Lens x={left} y={axis} narrow={narrow} second={tabled.value.settings.secondPowerDioptre !== undefined} />
      <path class="axis" d={`M${left + 8} ${axis}H${right}`} />
      {fields.map(({ at, width: w, name }) => (
        <Field key={name} x={x(at)} half={Math.min(tall, w * px) / 2} axis={axis} from={left + 6} />
      ))}
      {tracks.map((track, i) => (
        <Line key={track.name} track={track} y={first + ROW * i} x={x} reach={reach} />
      ))}
      <Rail reach={reach} px={px} left={left} right={right} y={rail} />
    </svg>
  );
}

/** The fields at both ends of what the close-up lens reaches. */
function fieldsOf(): { at: number; width: number; name: string }[] {
  const { answers } = tabled.value;
  return (
    [
      ['closeUpNearestMm', 'closeUpNearFieldMm'],
      ['closeUpFarthestMm', 'closeUpFarFieldMm'],
    ] as const
  ).flatMap(([distance, field]) => {
    const [at, width] = [numberIn(answers[distance]), numberIn(answers[field])];
    return at === undefined || width === undefined ? [] : [{ at, width, name: field }];
  });
}

/** The front of the camera lens with the close-up lens on it; the glass stands at `x`. */
function Lens({ x, y, narrow, second }: { x: number; y: number; narrow: boolean; second: boolean }) {
  const h = HALF_LENS;
  const body = narrow ? 30 : 82;
  return (
    <g class="camera-lens" transform={`translate(${x} ${y})`}>
      <defs>
        <pattern id="reach-glass" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V4" />
        </pattern>
      </defs>
      <path class="barrel" d={`M${-body} ${-h + 6}H-16V${-h}H-7V${h}H-16V${h - 6}H${-body}`} />
      <path class="rib" d={narrow ? `M-22 ${-h + 6}V${h - 6}` : `M-66 ${-h + 6}V${h - 6}M-34 ${-h + 6}V${h - 6}M-62 ${-h + 6}V${h - 6}`} />
      {(second ? [0, 11] : [0]).map((dx) => (
        <g key={dx} transform={`translate(${dx} 0)`}>
          <path class="glass" d={`M-4 ${-h}Q12 0 -4 ${h}Q3 0 -4 ${-h}Z`} />
          <path class="mount" d={`M-7 ${-h - 3}H2V${-h}H-7M-7 ${h + 3}H2V${h}H-7`} />
        </g>
      ))}
    </g>
  );
}

/** A subject as wide as the field, and the lines of sight past it. */
const Field = ({ x, half, axis, from }: { x: number; half: number; axis: number; from: number }) => (
  <g class="seen-field">
    <path class="sight" d={`M${from} ${axis - 4}L${x} ${axis - half}M${from} ${axis + 4}L${x} ${axis + half}`} />
    <path class="subject" d={`M${x} ${axis - half}V${axis + half}M${x - 4} ${axis - half}h8M${x - 4} ${axis + half}h8`} />
  </g>
);

interface LineProps {
  track: Track;
  y: number;
  x: (mm: number) => number;
  reach: number;
}

function Line({ track: { name, near, far }, y, x, reach }: LineProps) {
  const [a, b] = [near && x(near.at), far && x(far.at)];
  const [left, right] = [x(0), x(reach)];
  const beyond = far !== undefined && far.at > reach;
  const known = [near, far].filter((end) => end !== undefined);
  const [low, high] = [Math.min(...known.map((end) => end.low)), Math.max(...known.map((end) => end.high))];
  return (
    <g class="track">
      <path class="base" d={`M${left} ${y}H${right}`} />
      <path class="spread" d={`M${x(low)} ${y - 4}v8M${x(low)} ${y}H${x(high)}${high > reach ? '' : `M${x(high)} ${y - 4}v8`}`} />
      {a !== undefined && b !== undefined && a < right && (
        <path class={near?.assumed ? 'line assumed' : 'line'} d={`M${a} ${y}H${Math.max(b, a + 1)}`} />
      )}
      <text class="track-name" x={left} y={y - 21}>
        {name}
      </text>
      {near && near.at <= reach && <Tick end={near} y={y} x={x(near.at)} side={-1} />}
      {far && !beyond && <Tick end={far} y={y} x={x(far.at)} side={1} />}
      {far && beyond && (
        <g class={far.assumed ? 'end assumed' : 'end'}>
          <text x={right} y={y - 5} text-anchor="end">
            {far.size}
          </text>
          <text class="far" x={right} y={y + 17} text-anchor="end">
            to {short(far.at, 3)}
          </text>
        </g>
      )}
    </g>
  );
}

/** One end: how large and how far. */
function Tick({ end: { at, size, assumed }, y, x, side }: { end: End; y: number; x: number; side: 1 | -1 }) {
  const anchor = side < 0 ? 'end' : 'start';
  return (
    <g class={assumed ? 'end assumed' : 'end'}>
      <path class="tick" d={`M${x} ${y - 8}V${y + 8}`} />
      <text x={x + 6 * side} y={y - 5} text-anchor={anchor}>
        {size}
      </text>
      <text class="far" x={x + 6 * side} y={y + 17} text-anchor={anchor}>
        {short(at, 3)}
      </text>
    </g>
  );
}

interface RailProps {
  reach: number;
  px: number;
  left: number;
  right: number;
  y: number;
}

function Rail({ reach, px, left, right, y }: RailProps) {
  const told = ticksOf(reach, px, 52);
  const fine = ticksOf(reach, px, 7);
  return (
    <g class="rail">
      <path d={`M${left} ${y}H${right}`} />
      <path class="fine" d={fine.map((mm) => `M${left + mm * px} ${y}v4`).join('')} />
      {told.map((mm) => (
        <g key={mm}>
          <path d={`M${left + mm * px} ${y}v8`} />
          <text x={left + mm * px} y={y + 22} text-anchor="middle">
            {mm}
          </text>
        </g>
      ))}
      <text class="rail-name" x={right} y={y + 38} text-anchor="end">
        mm before the front glass
      </text>
    </g>
  );
}

function captionOf(tracks: readonly Track[]): string {
  const ends = tracks.map(({ name, near, far }) => {
    const from = near ? `${short(near.at, 3)} mm${near.size && ` (${near.size})`}` : undefined;
    const to = far ? `${short(far.at, 3)} mm${far.size && ` (${far.size})`}` : undefined;
    if (from && to) return `${name} from ${from} to ${to}`;
    return `${name} ${to ? `at ${to}, with the camera lens at infinity` : `from ${from} on`}`;
  });
  const seen = fieldsOf().length > 0 ? " Above, as much of the subject as fills the picture's width, at the same scale." : '';
  return `Sharp ${ends.join('; ')}.${seen}`;
}
