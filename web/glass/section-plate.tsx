import '../styles/path.css';
import { useRef } from 'preact/hooks';
import { short } from '../../core/index.ts';
import { BeamTone } from '../plates/beams.tsx';
import { BENCH, Bench } from '../plates/bench.tsx';
import { DIMENSION_ROW, Dimensions, laidOut } from '../plates/dimensions.tsx';
import { Handle } from '../plates/handle.tsx';
import type { Movable } from '../plates/movables.ts';
import { PlateInput } from '../plates/plate-input.tsx';
import { inRows, rowsIn, widthOf } from '../plates/rows.ts';
import { Pupil } from '../plates/train.tsx';
import { useWidth } from '../plates/width.ts';
import { held } from '../state/held.ts';
import type { Section, TracedRay } from './section-geometry.ts';
import { edges, Glass } from './section-glass.tsx';
import { RIM, type SectionScale, sectionScale, spaceUnder } from './section-scale.ts';

export interface Told {
  section: Section;
  /** From the first vertex: negative, the objective's shoulder stands before it. */
  shoulder: number;
  /** The interval that surely holds the exit pupil, from the first vertex. */
  pupilBetween: readonly [number, number];
  /** What each surface is called, in the order in which light meets them. */
  names: readonly string[];
  thread: 'objective' | 'camera' | undefined;
  threadWords: string;
  caption: string;
  /** The infinity space, which the relay's rider sets. */
  space: Movable;
}

const ROW = 17;

/** The relay in section with the beams of the middle and of the corner, traced, to the sensor. */
export function SectionPlate({ section, shoulder, pupilBetween, names, thread, threadWords, caption, space }: Told) {
  const [box, width] = useWidth(1180);
  const before = useRef<number | undefined>(undefined);
  const scale = sectionScale(section, shoulder, width, held.value === undefined ? undefined : before.current);
  before.current = scale.stretch;
  const { x, h } = scale;
  const labels = labelsOf(section, names, scale, width);
  const dimensions = laidOut(
    [
      [0, section.length, `glass ${short(section.length)} mm`],
      [section.length, section.sensor, `glass to sensor ${short(section.sensor - section.length)} mm`],
    ],
    x,
    width,
  );
  const { half } = scale;
  const rows = useRef(0);
  rows.current = Math.max(rowsIn(labels), held.value === undefined ? 0 : rows.current);
  const head = 24 + ROW * rows.current;
  const axis = head + half;
  const foot = axis + half + 10;
  const height = foot + BENCH + 44 + DIMENSION_ROW * rowsIn(dimensions);
  const fromShoulder = { ...scale, x: (z: number) => x(z + shoulder), z: (px: number) => scale.z(px) - shoulder };
  const middle = Math.max(96, (x(shoulder) + x(0)) / 2);
  return (
    <figure class="plate path section" ref={box} aria-labelledby="section-caption">
      <div class="stage" style={{ height: `${height}px` }}>
        <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby="section-caption">
          <title>The relay in section</title>
          <BeamTone />
          <line class="axis" x1={6} x2={x(section.sensor) + 14} y1={axis} y2={axis} />
          <Objective shoulder={x(shoulder)} half={Math.max(h(section.pupilHalf) * 1.3, 22)} axis={axis} />
          <Pupil at={section.pupil} between={pupilBetween} half={section.pupilHalf} scale={scale} axis={axis} />
          <line
            class="solid"
            x1={x(section.sensor)}
            x2={x(section.sensor)}
            y1={axis - h(section.cornerHeight)}
            y2={axis + h(section.cornerHeight)}
          />
          <Glass section={section} scale={scale} axis={axis} thread={thread} />
          <g class="beams">
            <Ribbon rays={section.middle} kind="middle" scale={scale} axis={axis} />
            <Ribbon rays={section.corner} kind="field" scale={scale} axis={axis} />
          </g>
          <Names section={section} labels={labels} scale={scale} axis={axis} head={head} />
          {thread && section.pieces.length > 0 && (
            <ThreadName section={section} scale={scale} axis={axis} thread={thread} words={threadWords} width={width} />
          )}
          <Bench
            scale={fromShoulder}
            top={foot}
            from={fromShoulder.z(scale.left)}
            to={fromShoulder.z(width - 8)}
            riders={[{ name: 'relay', words: 'relay', x: x(0), from: axis + h(glassHalf(section)), held: held.value === 'relay' }]}
          />
          <Dimension from={x(shoulder)} to={x(0)} y={foot + BENCH + 4} />
          <Dimensions dimensions={dimensions} top={foot + BENCH + 28} />
        </svg>
        <Handle
          moved={space}
          x={x(0)}
          y={foot + 6}
          grain={scale.k >= 2 ? 0.5 : 1}
          follow={(px) => spaceUnder(px, section, shoulder, width)}
        />
        <span class="placed" style={{ left: `${middle}px`, top: `${foot + BENCH + 8}px` }}>
          <PlateInput entry={space} />
        </span>
      </div>
      <figcaption id="section-caption">
        {caption} {scaleNote(scale.stretch)}
      </figcaption>
    </figure>
  );
}

const Dimension = ({ from, to, y }: { from: number; to: number; y: number }) => (
  <path class="dimension" d={`M${from} ${y}H${to}M${from - 3} ${y + 3}l6 -6M${to - 3} ${y + 3}l6 -6`} />
);

const glassHalf = (section: Section): number => Math.max(...section.pieces.map((p) => p.half), 0) + RIM;

/** The end of the objective's barrel. */
function Objective({ shoulder, half, axis }: { shoulder: number; half: number; axis: number }) {
  return (
    <g>
      <path class="barrel" d={`M6 ${axis - half}H${shoulder}V${axis + half}H6`} />
      <line class="shoulder" x1={shoulder} x2={shoulder} y1={axis - half - 5} y2={axis + half + 5} />
    </g>
  );
}

/** A beam by the edges of what comes through and its middle ray; every ray that a rim stops, up to there. */
function Ribbon({ rays, kind, scale, axis }: { rays: readonly TracedRay[]; kind: 'middle' | 'field'; scale: SectionScale; axis: number }) {
  const px = (ray: TracedRay) =>
    ray.points.map(([z, y]) => [Number(scale.x(z).toFixed(2)), Number((axis - scale.h(y)).toFixed(2))] as const);
  const whole = rays.filter((ray) => ray.endsAt === undefined);
  const [low, high] = [whole[0], whole.at(-1)];
  const chief = whole[Math.floor(whole.length / 2)];
  return (
    <g class={kind}>
      {low && high && kind === 'field' && (
        <path class="tone" d={`M${[...px(low), ...px(high).toReversed()].map((p) => p.join(' ')).join('L')}Z`} />
      )}
      {rays.map((ray) => {
        if (ray.endsAt === undefined && ray !== low && ray !== high && ray !== chief) return null;
        const points = px(ray);
        const [x, y] = points.at(-1) as readonly [number, number];
        return (
          <g key={ray.at} class={ray.endsAt === undefined ? (ray === chief ? 'chief' : '') : 'lost'} data-ends-at={ray.endsAt}>
            <path d={`M${points.map((p) => p.join(' ')).join('L')}`} />
            {ray.endsAt !== undefined && (
              <path class="tick" d={`M${x - 3} ${y - 3}L${x + 3} ${y + 3}M${x - 3} ${y + 3}L${x + 3} ${y - 3}`} />
            )}
          </g>
        );
      })}
    </g>
  );
}

interface Label {
  text: string;
  at: number;
  row: number;
  middle: number;
}

function labelsOf(section: Section, names: readonly string[], { x }: SectionScale, width: number): Label[] {
  const all = [
    { text: `exit pupil Ø ${short(2 * section.pupilHalf)}`, at: x(section.pupil) },
    ...names.map((text, i) => ({ text, at: x(section.vertices[i] as number) })),
    { text: 'sensor', at: x(section.sensor) },
  ];
  const placed = inRows(
    all.map(({ text, at }) => ({ at, width: widthOf(text) })),
    4,
    width - 4,
    14,
  );
  return all.map((label, i) => ({ ...label, ...(placed[i] as { row: number; middle: number }) }));
}

/** What stands there, above the drawing, each with a leader to it. */
function Names({
  section,
  labels,
  scale,
  axis,
  head,
}: {
  section: Section;
  labels: readonly Label[];
  scale: SectionScale;
  axis: number;
  head: number;
}) {
  const glass = section.pieces.length === 0 ? 0 : glassHalf(section);
  return (
    <g class="stops">
      {labels.map(({ text, at, row, middle }, i) => {
        const top = i === 0 ? section.pupilHalf : i === labels.length - 1 ? section.cornerHeight : glass;
        const base = head - 12 - ROW * row;
        return (
          <g class="stop" key={`${text}${at}`}>
            <path class="leader" d={`M${at} ${axis - scale.h(top) - 3}V${base + 8}L${middle} ${base + 4}`} />
            <text x={middle} y={base} text-anchor="middle">
              {text}
            </text>
          </g>
        );
      })}
    </g>
  );
}

interface ThreadNameProps {
  section: Section;
  scale: SectionScale;
  axis: number;
  thread: 'objective' | 'camera';
  words: string;
  width: number;
}

/** The thread's name beside it, below the axis; on the other side of it where there is no room. */
function ThreadName({ section, scale: { x, h }, axis, thread, words, width }: ThreadNameProps) {
  const [from, to] = edges(section);
  const half = Math.max(...section.pieces.map((p) => p.half));
  const before = thread === 'objective';
  const at = before ? x(from - 6) : x(to + 6);
  const y = axis + h(half + RIM / 2) + 4;
  const room = widthOf(words);
  const fits = before ? at - room > 8 : at + room < width - 8;
  return (
    <text x={fits ? at : before ? 8 : width - 8} y={fits ? y : y + 18} text-anchor={before === fits ? 'end' : 'start'}>
      {words}
    </text>
  );
}
