import { computed } from '@preact/signals';
import { type Circle, type Coverage, numberIn, percent, type Report } from '../../core/index.ts';
import { Lead } from '../fields/lead.tsx';
import { answered, report } from '../state/draft.ts';
import { FieldInput, FieldPoint } from './field-point.tsx';
import { type SensorScene, sensorScene } from './sensor-geometry.ts';
import { Contours, Ring, Subject, toldApart, type View } from './sensor-marks.tsx';
import { tone, UNITS } from './tone.ts';
import { useWidth } from './width.ts';
import '../styles/sensor.css';

const PAD = 36;
const TALLEST = 330;

const scene = computed(() => sensorScene(answered.value, report.value));

/** The sensor to scale: its circles told apart by line and words, the light falling off as engraved tone. */
export function SensorPlate() {
  const [box, width] = useWidth(540);
  const { coverage } = report.value;
  const view = viewOf(scene.value, width);
  return (
    <figure class="plate sensor" ref={box} aria-labelledby="sensor-caption">
      <div class="over">
        <Drawn scene={scene.value} view={view} />
        <FieldPoint scene={scene.value} view={view} />
      </div>
      <figcaption id="sensor-caption">{captionOf(report.value)}</figcaption>
      <FieldInput />
      <Unknown coverage={coverage} />
    </figure>
  );
}

function viewOf(scene: SensorScene, width: number): View {
  const k = Math.min((width - 2 * PAD) / scene.width, TALLEST / scene.height);
  const height = Math.round(tallEnough(scene, k));
  return { cx: width / 2, cy: height / 2, k, width, height };
}

function Drawn({ scene, view }: { scene: SensorScene; view: View }) {
  const { cx, cy, k, width, height } = view;
  const w = scene.width * k;
  const h = scene.height * k;
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby="sensor-caption">
      <title>The sensor</title>
      <defs>
        <clipPath id="chip">
          <rect x={cx - w / 2} y={cy - h / 2} width={w} height={h} />
        </clipPath>
      </defs>
      <rect class={scene.light ? 'chip' : 'chip unknown'} x={cx - w / 2} y={cy - h / 2} width={w} height={h} />
      <Tone scene={scene} view={view} />
      <g clip-path="url(#chip)">
        {toldApart(scene, k, 9).map(({ ev, radius }) => (
          <circle key={ev} class="contour" cx={cx} cy={cy} r={radius * k} />
        ))}
      </g>
      <path class="diagonal" d={`M${cx + 0.36 * w} ${cy - 0.36 * h}L${cx + w / 2} ${cy - h / 2}`} />
      <Subject scene={scene} view={view} />
      <Contours scene={scene} view={view} />
      <rect class="chip-edge" x={cx - w / 2} y={cy - h / 2} width={w} height={h} />
      {scene.circles.map((drawn) => (
        <Ring key={drawn.circle} drawn={drawn} scene={scene} view={view} />
      ))}
    </svg>
  );
}

/** As high as the sensor and its margin, and a little more where that shows a circle whole. */
function tallEnough({ height, width, circles }: SensorScene, k: number): number {
  const worth = circles.map(({ radius }) => 2 * radius).filter((d) => d <= 1.12 * Math.hypot(width, height));
  return Math.max(height, ...worth) * k + 2 * PAD;
}

function Tone({ scene, view: { cx, cy, k } }: { scene: SensorScene; view: View }) {
  const { light } = scene;
  const d = light && tone(scene.width * k, scene.height * k, (radius) => light(radius / k));
  if (!d) return null;
  return (
    <g class="tone" transform={`translate(${cx} ${cy}) scale(${1 / UNITS})`}>
      <path id="tone-half" d={d} />
      <use href="#tone-half" transform="scale(1 -1)" />
    </g>
  );
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
