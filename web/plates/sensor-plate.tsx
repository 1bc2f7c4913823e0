import { type Circle, type Coverage, numberIn, percent, type Report } from '../../core/index.ts';
import { Lead } from '../fields/lead.tsx';
import { answered, report } from '../state/draft.ts';
import { type SensorScene, sensorScene } from './sensor-geometry.ts';
import { Contours, Ring, Subject, toldApart, type View } from './sensor-marks.tsx';
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
  const view: View = { cx, cy, k, width, height };
  const w = scene.width * k;
  const h = scene.height * k;
  return (
    <figure class="plate sensor" ref={box} aria-labelledby="sensor-caption">
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby="sensor-caption">
        <title>The sensor</title>
        <defs>
          <clipPath id="chip">
            <rect x={cx - w / 2} y={cy - h / 2} width={w} height={h} />
          </clipPath>
        </defs>
        <rect class="chip" x={cx - w / 2} y={cy - h / 2} width={w} height={h} />
        <Tone scene={scene} w={w} h={h} k={k} left={cx - w / 2} top={cy - h / 2} />
        <g clip-path="url(#chip)">
          {toldApart(scene, k, 9).map(({ ev, radius }) => (
            <circle key={ev} class="contour" cx={cx} cy={cy} r={radius * k} />
          ))}
        </g>
        <Contours scene={scene} view={view} />
        <Subject scene={scene} view={view} />
        {scene.circles.map((drawn) => (
          <Ring key={drawn.circle} drawn={drawn} scene={scene} view={view} />
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

const MISSING: Record<Circle, readonly [words: string, ...leads: [path: string, lead: string][]]> = {
  corrected: ['How far the objective stays corrected is not known:', ['/objective/fieldNumberMm', 'give its field number']],
  lit: ['How far the light reaches is not known:', ['/relay/clearApertureMm', "give the relay's clear opening"]],
  sharp: [
    'How far the relay is sharp is not known:',
    ['/relay/glass', 'give its glass'],
    ['/relay/imageCircleMm', 'its rated image circle'],
  ],
};

function Unknown({ coverage }: { coverage: Coverage }) {
  return (
    <>
      {coverage.unknown.map((circle) => {
        const [words, ...leads] = MISSING[circle];
        return (
          <p class="hint" key={circle}>
            {words}{' '}
            {leads.map(([path, lead], i) => (
              <span key={path}>
                {i > 0 && ' or '}
                <Lead path={path}>{lead}</Lead>
              </span>
            ))}
            .
          </p>
        );
      })}
    </>
  );
}
