import { readThread, type SheetPart } from '../../../core/table.ts';
import { NARROW } from '../../plates/path-scale.ts';
import { useWidth } from '../../plates/width.ts';
import { built } from './box.ts';

/** Least width of a part, and how long a thread is, px. */
const CELL = 62;
const THREAD = 11;
const TOOTH = 2.75;
const TOP = 44;
const HALF = 104;
/** Walls outside of a thread, mm. */
const WALL = 2;

interface Drawn {
  part: SheetPart;
  x: number;
  /** Radii of its threads in mm; undefined where there is none. */
  front: { radius: number; male: boolean; label: string } | undefined;
  rear: { radius: number; male: boolean; label: string } | undefined;
}

/** `male M25 x 0.75` as it is told in the list. */
function endIn(text: string | undefined): Drawn['front'] {
  const read = text === undefined ? undefined : readThread(text);
  if (!read || 'fault' in read) return undefined;
  return { radius: read.thread.diameterMm / 2, male: read.sex === 'male', label: read.thread.label.replace(/ \(.*/, '') };
}

/** The parts in a row, cut through above the axis, each thread going into the next: what is male, what is female. */
export function ThreadsPlate() {
  const [box, given] = useWidth(1100);
  // The camera itself has a mount and no thread; a lens on it has none behind.
  const parts = built.value.parts.filter(({ role }) => role !== 'camera');
  const width = Math.max(given, parts.length * CELL + 20);
  const cell = (width - 20) / parts.length;
  const drawn = parts.map((part, i): Drawn => ({ part, x: 10 + i * cell, front: endIn(part.front), rear: endIn(part.rear) }));
  const radii = drawn.flatMap(({ front: a, rear: b }) => [a?.radius ?? 0, b?.radius ?? 0]);
  const k = (HALF - 10) / (Math.max(12, ...radii) + WALL);
  const axis = TOP + HALF;
  const joints = drawn.slice(1).flatMap(({ part, x, front: end }, i) => {
    const before = drawn[i] as Drawn;
    // What is missing is told once, where its own place is.
    if (part.role === 'missing') return [];
    if (before.part.role === 'missing') return [{ x: x - cell / 2, joined: false, end }];
    const joined = end !== undefined && before.rear !== undefined && end.male !== before.rear.male && end.label === before.rear.label;
    return [{ x, joined, end: end ?? before.rear }];
  });
  const plate = (
    <figure class="plate threads" ref={box} aria-labelledby="threads-caption">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section class="scroll" tabIndex={0} aria-label="The threads in a row">
        <svg width={width} height={axis + 30} viewBox={`0 0 ${width} ${axis + 30}`} role="img" aria-label={inWords(parts)}>
          {drawn.map((one, i) => (
            <Part key={i} drawn={one} cell={cell} k={k} axis={axis} number={i + 1} />
          ))}
          <path class="axis" d={`M0 ${axis}H${width}`} />
          {joints.map(({ x, joined, end }, i) => (
            <g key={i} class={joined ? '' : 'bites'}>
              <path class="leader" d={`M${x} ${TOP - 18 + (i % 2) * 13}V${joined && end ? axis - k * end.radius - 2 : axis}`} />
              <text x={x} y={TOP - 22 + (i % 2) * 13} text-anchor="middle">
                {joined ? (end?.label ?? '') : 'not joined'}
              </text>
            </g>
          ))}
        </svg>
      </section>
      <figcaption id="threads-caption">
        Numbers are those of the list. A toothed spigot is a male thread: it goes into the female one of its neighbour.
      </figcaption>
    </figure>
  );
  // On a phone it must be scrolled: it waits until it is asked for.
  return given >= NARROW ? (
    plate
  ) : (
    <details class="fold">
      <summary>The threads, drawn in a row</summary>
      {plate}
    </details>
  );
}

const inWords = (parts: readonly SheetPart[]): string =>
  parts
    .map(
      ({ what, front, rear }, i) =>
        `${i + 1}, ${what}${front ? `, ${front} toward the objective` : ''}${rear ? `, ${rear} toward the camera` : ''}`,
    )
    .join('; ');

function Part({
  drawn: { part, x, front, rear },
  cell,
  k,
  axis,
  number,
}: {
  drawn: Drawn;
  cell: number;
  k: number;
  axis: number;
  number: number;
}) {
  if (part.role === 'missing')
    return (
      <text x={x + cell / 2} y={axis + 20} text-anchor="middle">
        {number}
      </text>
    );
  const own = Math.max(front?.radius ?? 0, rear?.radius ?? 0) || 10;
  const outer = axis - k * (own + WALL);
  // What is bored through: the narrower of its ends, a wall for a male one.
  const bore = axis - k * Math.max(2, Math.min(...[front, rear].map((end) => (end ? end.radius - (end.male ? WALL : 0.6) : own - WALL))));
  const [left, right] = [x, x + cell];
  const reach = Math.min(THREAD, cell / 4);
  const at = (end: Drawn['front']): number => axis - k * (end?.radius ?? 0);
  const recessFront = front && !front.male;
  const recessRear = rear && !rear.male;
  const body = [
    `M${left} ${outer}H${right}`,
    recessRear ? `V${at(rear)}H${right - reach}V${bore}` : `V${bore}`,
    `H${recessFront ? left + reach : left}`,
    recessFront ? `V${at(front)}H${left}Z` : 'Z',
  ].join('');
  return (
    <g class={`part ${part.role}`}>
      <path class="walls" d={body} />
      {front?.male && <Spigot from={left} to={left - reach} top={at(front)} bottom={bore} />}
      {rear?.male && <Spigot from={right} to={right + reach} top={at(rear)} bottom={bore} />}
      {part.role === 'relay' && <path class="lens" d={lens(x + cell / 2, bore, axis)} />}
      <text x={x + cell / 2} y={axis + 20} text-anchor="middle">
        {number}
      </text>
    </g>
  );
}

const lens = (x: number, top: number, axis: number): string =>
  `M${x} ${top}Q${x + 12} ${axis - (axis - top) / 3} ${x + 13} ${axis}H${x - 13}Q${x - 12} ${axis - (axis - top) / 3} ${x} ${top}Z`;

function Spigot({ from, to, top, bottom }: { from: number; to: number; top: number; bottom: number }) {
  const way = Math.sign(to - from);
  const count = Math.floor(Math.abs(to - from) / TOOTH);
  const teeth = Array.from(
    { length: count },
    (_, i) => `L${from + way * TOOTH * (i + 0.5)} ${top}L${from + way * TOOTH * (i + 1)} ${top + 3}`,
  ).join('');
  return <path class="spigot" d={`M${from} ${bottom}V${top + 3}${teeth}V${bottom}Z`} />;
}
