import { sag } from '../../core/glassworks.ts';
import type { Outline, Piece } from './section-geometry.ts';
import { RIM, type SectionScale } from './section-scale.ts';

type GlassScale = Pick<SectionScale, 'x' | 'h' | 'k' | 'stretch'>;

interface Props {
  section: Outline;
  scale: GlassScale;
  axis: number;
  /** Which way the male thread looks: toward the objective or toward the camera; undefined where there is none. */
  thread: 'objective' | 'camera' | undefined;
}

/** Each glass has a direction of its own. */
const ANGLES = [45, -45, 20, -70, 70, -20];

/** Denser glass is hatched closer: px between lines. */
const pitchOf = (index: number): number => Math.max(3.2, Math.min(7, 6.6 - 8 * (index - 1.48)));

/** The pieces of glass, hatched, in their mount. */
export function Glass({ section, scale, axis, thread }: Props) {
  const glasses = [...new Set(section.pieces.map((p) => p.glass))];
  return (
    <g class="glass">
      <defs>
        {glasses.map((name, i) => {
          const pitch = pitchOf(section.pieces.find((p) => p.glass === name)?.index ?? 1.5);
          return (
            <pattern
              key={name}
              id={`hatch-${i}`}
              width={pitch}
              height={pitch}
              patternUnits="userSpaceOnUse"
              patternTransform={`rotate(${ANGLES[i % ANGLES.length]})`}
            >
              <line x1={pitch / 2} x2={pitch / 2} y1="0" y2={pitch} class="hatch" />
            </pattern>
          );
        })}
      </defs>
      <Mount section={section} scale={scale} axis={axis} thread={thread} />
      {section.pieces.map((piece) => {
        const d = outline(section, piece, scale, axis);
        return (
          <g key={piece.front} data-glass={piece.glass}>
            <path class="body" d={d} />
            <g fill={`url(#hatch-${glasses.indexOf(piece.glass)})`}>
              <path class="tint" d={d} />
            </g>
            <path class="edge" d={d} />
          </g>
        );
      })}
    </g>
  );
}

/** Beyond this a sphere is drawn as a line: it leaves its plane by less than a hair, mm. */
const AS_PLANE = 20000;

/** A piece's outline: down its front, along its edge, up its back. */
function outline({ vertices, radii }: Outline, { front, back, half }: Piece, { x, h, k, stretch }: GlassScale, axis: number): string {
  const at = (i: number): number => x((vertices[i] as number) + sag(radii[i] as number, half));
  const [top, bottom] = [axis - h(half), axis + h(half)];
  const side = (i: number, down: boolean): string => {
    const r = radii[i] as number;
    const to = `${round(at(i))} ${round(down ? bottom : top)}`;
    if (Math.abs(r) > AS_PLANE) return `L${to}`;
    return `A${round(Math.abs(r) * k)} ${round(Math.abs(r) * k * stretch)} 0 0 ${r > 0 === down ? 0 : 1} ${to}`;
  };
  return `M${round(at(front))} ${round(top)}${side(front, true)}L${round(at(back))} ${round(bottom)}${side(back, false)}Z`;
}

/** How long the thread is, how far it stands out and in, mm. */
const THREAD = { length: 4, from: 1, to: 3.2 };

/** Where glass ends along the axis at its edge, mm. */
export function edges({ pieces, vertices, radii }: Outline): readonly [number, number] {
  const [first, last] = [pieces[0] as Piece, pieces.at(-1) as Piece];
  const ends = [first.front, last.back].map(
    (i) => (vertices[i] as number) + sag(radii[i] as number, i === first.front ? first.half : last.half),
  );
  return [Math.min(ends[0] as number, vertices[first.front] as number), Math.max(ends[1] as number, vertices[last.back] as number)];
}

/** The ring that holds the glass, cut above and below, with its thread's teeth on the side where they are. */
function Mount({ section, scale: { x, h, k, stretch }, axis, thread }: Props) {
  if (section.pieces.length === 0) return null;
  const half = Math.max(...section.pieces.map((p) => p.half));
  const [from, to] = edges(section);
  const [left, right] = [x(from - 1), x(to + 1)];
  const [inner, outer] = [h(half), h(half + RIM)];
  const end = thread === 'objective' ? x(from - 1 - THREAD.length) : x(to + 1 + THREAD.length);
  const begin = thread === 'objective' ? left : right;
  const tooth = Math.max(2.2, 0.75 * k);
  const depth = Math.min(2.4, 0.5 * k * stretch);
  const [low, high] = [h(half + THREAD.from), h(half + THREAD.to)];
  const teeth = (sign: number): string => {
    const way = Math.sign(end - begin);
    const count = Math.max(2, Math.round(Math.abs(end - begin) / tooth));
    const zigzag = Array.from({ length: 2 * count + 1 }, (_, i) => {
      const px = begin + (way * Math.abs(end - begin) * i) / (2 * count);
      return `${round(px)} ${round(axis + sign * (high - (i % 2 === 0 ? depth : 0)))}`;
    });
    return `M${begin} ${axis + sign * low}V${axis + sign * high}L${zigzag.join('L')}L${round(end)} ${axis + sign * low}Z`;
  };
  return (
    <g class="mount">
      {[-1, 1].map((sign) => (
        <path key={sign} d={`M${left} ${axis + sign * inner}H${right}V${axis + sign * outer}H${left}Z`} />
      ))}
      {thread && [-1, 1].map((sign) => <path key={`t${sign}`} class="thread" d={teeth(sign)} />)}
    </g>
  );
}

const round = (n: number): number => Number(n.toFixed(2));
