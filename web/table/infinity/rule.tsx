import { percent, short } from '../../../core/index.ts';
import { type TubePoint, tubeStudy, wayOf } from '../../../core/table.ts';
import { Table } from '../../charts/table.tsx';
import { widthOf } from '../../plates/rows.ts';
import { useWidth } from '../../plates/width.ts';
import { tabled } from '../tabled.ts';
import { type Rule, ruleOf, type Tick } from './rule-geometry.ts';
import '../../styles/table-infinity.css';

/** Narrower than this the scales' names stand over them, px. */
const NARROW = 620;
const NAMES = 204;
const PAD = 30;
/** Heights, px: over the curve, of it, of the dimension under it, and of a scale. */
const HEAD = { wide: 30, narrow: 50 };
const CURVE = 92;
const BRACKET = 34;
const SCALE = 44;

/** What an error of the tube does, along one axis as on a slide rule. */
export function TubeRule() {
  const [box, width] = useWidth(900);
  const narrow = width < NARROW;
  const rule = ruleOf(tabled.value, narrow ? PAD : NAMES, width - PAD);
  if (!rule) return null;
  return (
    <figure class="plate tube-rule" ref={box} aria-labelledby="rule-caption">
      <Drawn rule={rule} width={width} narrow={narrow} />
      <figcaption id="rule-caption">{captionOf(rule)}</figcaption>
      <Table
        title="The same in numbers"
        columns={[rule.of.scale, 'magnification', 'Strehl ratio on axis']}
        rows={() => TOLD.flatMap((error) => cells(tubeStudy(tabled.value)?.at(error)))}
      />
    </figure>
  );
}

const TOLD = [-100, -50, -20, -10, -5, -2, -1, 0, 1, 2, 5, 10, 20, 50, 100];
const cells = (point: TubePoint | undefined): string[][] =>
  point ? [[short(point.tubeErrorMm), short(point.magnification, 4), short(point.strehl, 3)]] : [];

function Drawn({ rule, width, narrow }: { rule: Rule; width: number; narrow: boolean }) {
  const gap = narrow ? 20 : 0;
  const head = narrow ? HEAD.narrow : HEAD.wide;
  const foot = head + CURVE;
  const scales = [
    { title: rule.of.scale, ticks: rule.errors },
    { title: 'magnification', ticks: rule.magnifications },
    { title: 'focused on a thing at, m', ticks: rule.things },
  ].filter(({ ticks }) => ticks.length > 0);
  const first = foot + BRACKET + gap;
  const height = first + (SCALE + gap) * scales.length - gap;
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby="rule-caption">
      <title>The sensor out of place, and what it does</title>
      <Curve rule={rule} foot={foot} narrow={narrow} />
      <Band rule={rule} foot={foot} head={head} bottom={height} y={foot + BRACKET - 12} />
      {scales.map(({ title, ticks }, i) => (
        <Scale key={title} title={title} ticks={ticks} rule={rule} y={first + (SCALE + gap) * i} narrow={narrow} />
      ))}
      <Rider rule={rule} head={head} foot={first} />
    </svg>
  );
}

/** The Strehl ratio over the axis; hatched where it is no longer sharp. */
function Curve({ rule: { curve, x, left, right, limit }, foot, narrow }: { rule: Rule; foot: number; narrow: boolean }) {
  const y = (strehl: number): number => foot - CURVE * strehl;
  const line = curve.map(({ tubeErrorMm, strehl }, i) => `${i ? 'L' : 'M'}${x(tubeErrorMm).toFixed(1)} ${y(strehl).toFixed(1)}`).join('');
  const words = (share: number, text: string) => (
    <text class="level" x={narrow ? left - 6 : left - 8} y={y(share) + 4} text-anchor="end">
      {text}
    </text>
  );
  return (
    <g class="strehl">
      <text class="scale-name" x={narrow ? left : left - 34} y={narrow ? 14 : foot - CURVE / 2 + 4} text-anchor={narrow ? 'start' : 'end'}>
        sharpness on axis (Strehl)
      </text>
      <path class="ground" d={`M${left} ${foot}H${right}`} />
      <path class="limit" d={`M${left} ${y(limit)}H${right}`} />
      <path class="line" d={line} />
      {words(1, '1')}
      {words(limit, short(limit, 2))}
      {words(0, '0')}
    </g>
  );
}

/** How wrong the tube may be: as a dimension, with its lines through all the scales. */
function Band({ rule, foot, head, bottom, y }: { rule: Rule; foot: number; head: number; bottom: number; y: number }) {
  const { x, left, right, band } = rule;
  const [a, b] = [Math.max(left, x(-band[0])), Math.min(right, x(band[1]))];
  const full = rule.bandWhy ? `${rule.bandWords}: ${rule.bandWhy}` : rule.bandWords;
  const words = widthOf(full) + 8 < b - a ? full : rule.bandWords;
  const room = widthOf(words) / 2 + 4;
  const tick = (at: number, on: boolean): string => (on ? `M${at - 3.5} ${y + 3.5}L${at + 3.5} ${y - 3.5}` : '');
  return (
    <g class="band">
      <path class="through" d={`M${a} ${head}V${bottom}M${b} ${head}V${bottom}`} />
      <path class="dimension" d={`M${a} ${y}H${b}${tick(a, a > left)}${tick(b, b < right)}`} />
      <text x={Math.min(right + PAD - room, Math.max(left - PAD + room, (a + b) / 2))} y={Math.min(y - 6, foot + 15)} text-anchor="middle">
        {words}
      </text>
    </g>
  );
}

interface ScaleProps {
  title: string;
  ticks: readonly Tick[];
  rule: Rule;
  y: number;
  narrow: boolean;
}

const Scale = ({ title, ticks, rule: { left, right }, y, narrow }: ScaleProps) => (
  <g class="scale">
    <text class="scale-name" x={narrow ? left : left - 34} y={narrow ? y - 6 : y + 5} text-anchor={narrow ? 'start' : 'end'}>
      {title}
    </text>
    <path class="rail" d={`M${left} ${y}H${right}`} />
    {ticks.map(({ x, words }) => (
      <g key={words} class="tick">
        <path d={`M${x} ${y}v6`} />
        <text x={x} y={y + 19} text-anchor="middle">
          {words}
        </text>
      </g>
    ))}
  </g>
);

/** The error that is set, riding on the first scale. */
function Rider({ rule: { x, now, left, right, of }, head, foot }: { rule: Rule; head: number; foot: number }) {
  const at = x(now);
  const words = now === 0 ? 'as it should be' : of.out(now);
  const room = widthOf(words) / 2;
  return (
    <g class="rider">
      <path class="post" d={`M${at} ${head - 10}V${foot - 10}`} />
      <path class="foot-of-rider" d={`M${at - 5} ${foot - 10}h10l2.5 8h-15z`} />
      <text x={Math.min(right + PAD - room, Math.max(left - PAD + room, at))} y={head - 15} text-anchor="middle">
        {words}
      </text>
    </g>
  );
}

function captionOf(rule: Rule): string {
  const { now, curve, of } = rule;
  const here = tubeStudy(tabled.value)?.at(now);
  const own = tubeStudy(tabled.value)?.at(0);
  const seen =
    here && own && now !== 0
      ? `With ${wayOf(tabled.value.pairing) === 'tube' ? 'a tube' : 'the sensor'} ${of.out(now)} the magnification is ${short(here.magnification, 4)} instead of ${short(own.magnification, 4)}, ${percent(Math.abs(here.magnification / own.magnification - 1))} ${here.magnification < own.magnification ? 'less' : 'more'}; on axis the picture is ${sharpness(here.strehl, rule.limit)}.`
      : `As it stands the picture is ${sharpness(own?.strehl ?? 1, rule.limit)} on axis.`;
  const worst = curve.reduce((a, b) => (b.strehl < a.strehl ? b : a), curve[0] as TubePoint);
  const drawn = `${seen} Drawn fine about the right place and coarse far from it;`;
  if (worst.strehl >= rule.limit) return `${drawn} it is sharp on axis all along.`;
  return `${drawn} at its worst, ${of.out(Number(worst.tubeErrorMm.toPrecision(2)))}, the Strehl ratio is ${short(worst.strehl, 2)}.`;
}

/** Strehl ratios as near to 1 as that are told as 1. */
const FULL = 0.995;

function sharpness(strehl: number, limit: number): string {
  if (strehl >= FULL) return 'as sharp as it can be';
  return `${strehl >= limit ? 'still sharp' : 'no longer sharp'} (Strehl ratio ${short(strehl, 2)})`;
}
