import { useMemo } from 'preact/hooks';
import { type Circle, short } from '../../core/index.ts';
import type { DrawnCircle, SensorScene } from './sensor-geometry.ts';
import { silhouette, stipple } from './silhouette.ts';
import { CIRCLE_DASH, dashes } from './strokes.ts';

/** The drawing in px: the sensor's middle, px a mm, and the whole size. */
export interface View {
  cx: number;
  cy: number;
  k: number;
  width: number;
  height: number;
}

/** Contours that can be told apart: those at least so far from the next, px. */
export function toldApart({ contours }: SensorScene, k: number, apart: number): SensorScene['contours'] {
  let last = 0;
  return contours.filter(({ radius }) => {
    const kept = (radius - last) * k >= apart;
    if (kept) last = radius;
    return kept;
  });
}

const EV_WORDS: Record<number, string> = { 0.5: '½ stop down', 1: '1 stop down' };
/** Contours closer than this to each other or to the middle get no name, px. */
const APART = 36;

/** The contours' names, on the diagonal toward the lower right. */
export function Contours({ scene, view: { cx, cy, k } }: { scene: SensorScene; view: View }) {
  const corner = Math.hypot(scene.width, scene.height) / 2;
  const spaced = toldApart(scene, k, APART).filter((c) => c.radius * k > 2 * APART);
  return (
    <g class="on-chip">
      {spaced.map(({ ev, radius }) => (
        <text
          key={ev}
          x={cx + ((radius * scene.width) / corner / 2) * k - 6}
          y={cy + ((radius * scene.height) / corner / 2) * k - 4}
          text-anchor="end"
        >
          {EV_WORDS[ev] ?? `${ev} stops`}
        </text>
      ))}
    </g>
  );
}

const ringWords = (circle: Circle, { traced }: SensorScene): string => (circle !== 'sharp' ? circle : traced ? 'sharp' : 'rated');
/** Each circle's name stands on a side of its own: above, below, to the right. */
const SIDES: Record<Circle, readonly [number, number]> = { corrected: [0, -1], lit: [0, 1], sharp: [0.8, -0.6] };

/** One circle with its name, which stays inside the drawing where the circle does not. */
export function Ring({ drawn, scene, view }: { drawn: DrawnCircle; scene: SensorScene; view: View }) {
  const { circle, radius, bites } = drawn;
  const { cx, cy, k, width, height } = view;
  const [dx, dy] = SIDES[circle];
  const bounded = Number.isFinite(radius);
  const name = `${ringWords(circle, scene)} ${bounded ? `Ø ${short(2 * radius)} mm` : 'without limit'}`;
  const x = cx + dx * radius * k;
  const y = cy + dy * radius * k;
  const inside = bounded && y > 20 && y < height - 16 && x < width;
  const unseen = radius * k > Math.hypot(width, height) / 2;
  // Above a circle, below it, or just inside its rim.
  const atX = dx === 0 ? cx : inside ? x - 8 : width - 4;
  const atY = dx !== 0 && inside ? y + 10 : inside ? y + (dy > 0 ? 16 : -6) : dy < 0 ? 14 : height - 6;
  const onChip = Math.abs(atY - cy) < (scene.height * k) / 2 && Math.abs(atX - cx) < (scene.width * k) / 2;
  return (
    <g class={`circle ${circle}${bites ? ' bites' : ''}${onChip ? ' on-chip' : ''}`} data-radius-mm={bounded ? radius : undefined}>
      {bounded && <circle cx={cx} cy={cy} r={radius * k} stroke-dasharray={dashes(CIRCLE_DASH[circle])} />}
      <text x={atX} y={atY} text-anchor={dx === 0 ? 'middle' : 'end'}>
        {unseen ? `${name}, past this drawing` : name}
      </text>
    </g>
  );
}

/** Outline and stippling of a subject of so many px, of which so many are seen. */
function Seed({ w, h, seenWidth, seenHeight }: Record<'w' | 'h' | 'seenWidth' | 'seenHeight', number>) {
  const outline = useMemo(() => silhouette(w, h), [w, h]);
  const dots = useMemo(() => stipple(w, h, { width: seenWidth, height: seenHeight }), [w, h, seenWidth, seenHeight]);
  return (
    <>
      <clipPath id="subject-outline">
        <path d={outline} />
      </clipPath>
      <path class="stipple" clip-path="url(#subject-outline)" d={dots} />
      <path class="outline" d={outline} />
    </>
  );
}

/** The subject's outline with its size on the sensor; where it is larger than the picture, what of it lies there. */
export function Subject({ scene, view: { cx, cy, k } }: { scene: SensorScene; view: View }) {
  const { subject } = scene;
  if (!subject) return null;
  const [w, h] = [subject.width * k, subject.height * k];
  const [seenWidth, seenHeight] = [Math.min(w, scene.width * k), Math.min(h, scene.height * k)];
  const larger = subject.width > scene.width || subject.height > scene.height;
  return (
    <g class="subject on-chip">
      <g clip-path="url(#chip)">
        <g transform={`translate(${cx} ${cy})`}>
          <Seed w={w} h={h} seenWidth={seenWidth} seenHeight={seenHeight} />
        </g>
      </g>
      <text x={cx} y={cy} text-anchor="middle">
        subject
      </text>
      <text x={cx} y={cy + 16} text-anchor="middle">
        {short(subject.width)} × {short(subject.height)} mm{larger && ', larger than the picture'}
      </text>
    </g>
  );
}
