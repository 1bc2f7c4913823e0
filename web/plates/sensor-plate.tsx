import { type Circle, type Coverage, numberIn, percent, type Report, short } from '../../core/index.ts';
import { Lead } from '../fields/lead.tsx';
import { answered, report } from '../state/draft.ts';
import { type DrawnCircle, type SensorScene, sensorScene } from './sensor-geometry.ts';
import { tone } from './tone.ts';
import { useWidth } from './width.ts';

const PAD = 36;
const TALLEST = 330;

/** The sensor to scale: its circles told apart by line and words, the light falling off as engraved tone. */
export function SensorPlate() {
  const [box, width] = useWidth(540);
  const scene = sensorScene(answered.value, report.value);
  const k = Math.min((width - 2 * PAD) / scene.width, TALLEST / scene.height);
  const height = Math.round(tallEnough(scene, k));
  const cx = width / 2;
  const cy = height / 2;
  const w = scene.width * k;
  const h = scene.height * k;
  return (
    <figure class="plate sensor" ref={box} aria-labelledby="sensor-caption">
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby="sensor-caption">
        <defs>
          <clipPath id="chip">
            <rect x={cx - w / 2} y={cy - h / 2} width={w} height={h} />
          </clipPath>
        </defs>
        <rect class="chip" x={cx - w / 2} y={cy - h / 2} width={w} height={h} />
        <Tone scene={scene} w={w} h={h} k={k} left={cx - w / 2} top={cy - h / 2} />
        <g clip-path="url(#chip)">
          {scene.contours.map(({ ev, radius }) => (
            <circle key={ev} class="contour" cx={cx} cy={cy} r={radius * k} />
          ))}
        </g>
        <Contours scene={scene} cx={cx} cy={cy} k={k} />
        {scene.subject && <Subject size={scene.subject} scene={scene} cx={cx} cy={cy} k={k} />}
        {scene.circles.map((drawn) => (
          <Ring key={drawn.circle} drawn={drawn} cx={cx} cy={cy} k={k} width={width} height={height} />
        ))}
        <rect class="chip-edge" x={cx - w / 2} y={cy - h / 2} width={w} height={h} />
      </svg>
      <figcaption id="sensor-caption">{captionOf(report.value)}</figcaption>
      <Unknown coverage={report.value.coverage} />
    </figure>
  );
}

/** As high as the sensor and its margin, and a little more where that shows a circle whole. */
function tallEnough({ height, width, circles }: SensorScene, k: number): number {
  const worth = circles.map(({ radius }) => 2 * radius).filter((d) => d <= 1.12 * Math.hypot(width, height));
  return Math.max(height, ...worth) * k + 2 * PAD;
}

function Tone({ scene, w, h, k, left, top }: { scene: SensorScene; w: number; h: number; k: number; left: number; top: number }) {
  const { light } = scene;
  if (!light) return null;
  const d = tone(w, h, (x, y) => light(Math.hypot(x - w / 2, y - h / 2) / k));
  return d ? <path class="tone" transform={`translate(${left} ${top})`} d={d} /> : null;
}

const EV_WORDS: Record<number, string> = { 0.5: '½ stop down', 1: '1 stop down' };

/** The contours' names, on the diagonal toward the lower right. */
function Contours({ scene, cx, cy, k }: { scene: SensorScene; cx: number; cy: number; k: number }) {
  const corner = Math.hypot(scene.width, scene.height) / 2;
  const spaced = scene.contours.filter((c, i) => c.radius * k > 48 && (i === 0 || (c.radius - (scene.contours[i - 1]?.radius ?? 0)) * k > 26));
  return (
    <g class="labels">
      {spaced.map(({ ev, radius }) => (
        <text
          key={ev}
          x={cx + ((radius * scene.width) / corner / 2) * k - 6}
          y={cy + ((radius * scene.height) / corner / 2) * k - 2}
          text-anchor="end"
        >
          {EV_WORDS[ev] ?? `${ev} stops`}
        </text>
      ))}
    </g>
  );
}

const RING_WORDS: Record<Circle, string> = { corrected: 'corrected', lit: 'lit', sharp: 'rated' };
/** Each circle's name stands on a side of its own: above, below, to the right. */
const SIDES: Record<Circle, readonly [number, number]> = { corrected: [0, -1], lit: [0, 1], sharp: [0.8, -0.6] };

function Ring({
  drawn,
  cx,
  cy,
  k,
  width,
  height,
}: {
  drawn: DrawnCircle;
  cx: number;
  cy: number;
  k: number;
  width: number;
  height: number;
}) {
  const { circle, radius, bites } = drawn;
  const [dx, dy] = SIDES[circle];
  const name = `${RING_WORDS[circle]} ${Number.isFinite(radius) ? `Ø ${short(2 * radius)} mm` : 'without limit'}`;
  const x = cx + dx * radius * k;
  const y = cy + dy * radius * k;
  const inside = Number.isFinite(radius) && y > 20 && y < height - 16 && x < width - 10;
  const unseen = radius * k > Math.hypot(width, height) / 2;
  const atX = inside ? x : dx === 0 ? cx : width - 4;
  const atY = inside ? y + (dy > 0 ? 15 : -6) : dy < 0 ? 14 : height - 6;
  return (
    <g class={`circle ${circle}${bites ? ' bites' : ''}`} data-radius-mm={Number.isFinite(radius) ? radius : undefined}>
      {Number.isFinite(radius) && <circle cx={cx} cy={cy} r={radius * k} />}
      <text x={atX} y={atY} text-anchor={dx === 0 ? 'middle' : inside ? 'start' : 'end'}>
        {unseen ? `${name}, past this drawing` : name}
      </text>
    </g>
  );
}

function Subject({
  size,
  scene,
  cx,
  cy,
  k,
}: {
  size: { width: number; height: number };
  scene: SensorScene;
  cx: number;
  cy: number;
  k: number;
}) {
  const w = size.width * k;
  const h = size.height * k;
  const fits = size.width <= scene.width * 1.2 && size.height <= scene.height * 1.2;
  return fits ? (
    <g class="subject">
      <ellipse cx={cx} cy={cy} rx={w / 2} ry={h / 2} />
      <text x={cx} y={cy + 4} text-anchor="middle">
        subject
      </text>
    </g>
  ) : null;
}

function captionOf({ figures, coverage }: Report): string {
  const E = numberIn(figures.cornerIllumination);
  const light =
    E === undefined
      ? 'How much light the corner keeps is not known'
      : E >= 0.9995
        ? 'The corner keeps all of the light'
        : E < 0.001
          ? 'The corner gets no light'
          : `The corner keeps ${percent(E)} of the light`;
  const said = coverage.reasons.filter((reason) => !reason.startsWith('the light') && !reason.endsWith('not known'));
  return `${[light, ...said].join('; ')}.`;
}

const MISSING: Record<Circle, readonly [words: string, path: string, lead: string]> = {
  corrected: ['How far the objective stays corrected is not known:', '/objective/fieldNumberMm', 'give its field number'],
  lit: ['How far the light reaches is not known:', '/relay/clearApertureMm', "give the relay's clear opening"],
  sharp: ['How far the relay is sharp is not known:', '/relay/imageCircleMm', 'give its rated image circle'],
};

function Unknown({ coverage }: { coverage: Coverage }) {
  return (
    <>
      {coverage.unknown.map((circle) => {
        const [words, path, lead] = MISSING[circle];
        return (
          <p class="hint" key={circle}>
            {words} <Lead path={path}>{lead}</Lead>.
          </p>
        );
      })}
    </>
  );
}
