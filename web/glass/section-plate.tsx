import '../styles/path.css';
import '../styles/held.css';
import { useRef } from 'preact/hooks';
import { short } from '../../core/index.ts';
import { BeamTone } from '../plates/beams.tsx';
import { BENCH, Bench } from '../plates/bench.tsx';
import { DIMENSION_ROW, Dimensions, laidOut } from '../plates/dimensions.tsx';
import { Handle } from '../plates/handle.tsx';
import type { Movable } from '../plates/movable.ts';
import { scaleNote } from '../plates/path-caption.ts';
import { PlateInput } from '../plates/plate-input.tsx';
import { rowsIn } from '../plates/rows.ts';
import { Pupil } from '../plates/train.tsx';
import { useWidth } from '../plates/width.ts';
import { held } from '../state/held.ts';
import type { Section } from './section-geometry.ts';
import { Glass } from './section-glass.tsx';
import { glassHalf, labelsOf, Names, ROW, ThreadName } from './section-names.tsx';
import { Ribbon } from './section-rays.tsx';
import { sectionScale, spaceUnder } from './section-scale.ts';

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

/** The end of the objective's barrel. */
function Objective({ shoulder, half, axis }: { shoulder: number; half: number; axis: number }) {
  return (
    <g>
      <path class="barrel" d={`M6 ${axis - half}H${shoulder}V${axis + half}H6`} />
      <line class="shoulder" x1={shoulder} x2={shoulder} y1={axis - half - 5} y2={axis + half + 5} />
    </g>
  );
}
