import { short } from '../../core/index.ts';
import { inRows, widthOf } from '../plates/rows.ts';
import type { Section } from './section-geometry.ts';
import { edges } from './section-glass.tsx';
import { RIM, type SectionScale } from './section-scale.ts';

export const ROW = 17;

export const glassHalf = (section: Section): number => Math.max(...section.pieces.map((p) => p.half), 0) + RIM;

interface Label {
  text: string;
  at: number;
  row: number;
  middle: number;
}

export function labelsOf(section: Section, names: readonly string[], { x }: SectionScale, width: number): Label[] {
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
export function Names({
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
export function ThreadName({ section, scale: { x, h }, axis, thread, words, width }: ThreadNameProps) {
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
