import { useState } from 'preact/hooks';
import type { SeenPoint } from '../../core/glassworks.ts';
import { numberIn, short } from '../../core/index.ts';
import { Table } from '../charts/table.tsx';
import { Radios } from '../fields/radios.tsx';
import { useWidth } from '../plates/width.ts';
import type { Studied } from './studied.ts';

type Focus = 'oneFrame' | 'stack';
const FOCI: Record<Focus, string> = { oneFrame: 'in one frame', stack: 'in a stack' };

/** The spots along the radius at one scale, beside the length of the Airy disc, on a ruler of the picture. */
export function Spots({ studied: { for: evaluation, study, judging } }: { studied: Studied }) {
  const [focus, setFocus] = useState<Focus>(judging.focus === 'stack' ? 'stack' : 'oneFrame');
  const [box, width] = useWidth(1180);
  const airy = numberIn(evaluation.answers.airyDiameterUm);
  const narrow = width < 620;
  const points = narrow ? study.points.filter((_, i) => i % 2 === 0) : study.points;
  const says = captionOf(study.points, focus);
  return (
    <>
      <Radios legend="Focus" name="focus" options={FOCI} value={focus} onChoose={(name) => setFocus(name)} />
      <figure class="plate spots" ref={box} aria-labelledby="spots-caption">
        <Row points={points} focus={focus} airy={airy} width={width} softest={softestOf(study.points, focus, judging.criterion)} />
        <figcaption id="spots-caption">{says}</figcaption>
        <Table
          title="The same spots in numbers"
          columns={['from the middle, mm', 'rms blur, µm', 'sagittal contrast, %', 'tangential contrast, %', 'own focus, mm', 'light, %']}
          rows={() =>
            study.points.map(({ radiusMm, seen }) => [
              short(radiusMm),
              seen ? short(seen[focus].spot.rmsUm) : 'no light',
              seen ? short(100 * seen[focus].sagittal, 2) : '',
              seen ? short(100 * seen[focus].tangential, 2) : '',
              seen ? short(seen.focusMm) : '',
              seen ? short(100 * seen.light) : '',
            ])
          }
        />
      </figure>
    </>
  );
}

interface RowProps {
  points: Studied['study']['points'];
  focus: Focus;
  airy: number | undefined;
  width: number;
  /** Radius of the point that is least sharp, where that is not sharp enough. */
  softest: number | undefined;
}

/** The point of least contrast, where that falls short of what counts as sharp. */
function softestOf(points: RowProps['points'], focus: Focus, criterion: number): number | undefined {
  const judged = points.flatMap(({ radiusMm, seen }) =>
    seen ? [{ radiusMm, contrast: Math.min(seen[focus].sagittal, seen[focus].tangential) }] : [],
  );
  const least = judged.toSorted((a, b) => a.contrast - b.contrast)[0];
  return least && least.contrast < criterion ? least.radiusMm : undefined;
}

const SCALES_UM = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000];
const PAD = 8;
const WORDS = 46;
/** The spots' height is at most this, px. */
const TALLEST = 190;

/** How far the spots reach from their middles, µm: to a side, outward, inward. */
interface Reach {
  side: number;
  out: number;
  in: number;
}

/** Both ways of focusing reach into it, so that switching shows at one scale what a stack gains. */
function reachOf(points: RowProps['points'], airy: number | undefined): Reach {
  const reach = { side: (airy ?? 0) / 2, out: (airy ?? 0) / 2, in: (airy ?? 0) / 2 };
  for (const { seen } of points)
    for (const { spot } of seen ? [seen.oneFrame, seen.stack] : []) {
      reach.side = Math.max(reach.side, ...spot.xUm.map(Math.abs));
      reach.out = Math.max(reach.out, ...spot.yUm);
      reach.in = Math.max(reach.in, ...spot.yUm.map((y) => -y));
    }
  return reach;
}

function Row({ points, focus, airy, width, softest }: RowProps) {
  const cell = (width - WORDS - PAD) / points.length;
  const reach = reachOf(points, airy);
  const k = Math.min((0.47 * cell) / reach.side, TALLEST / (reach.out + reach.in));
  const bar = SCALES_UM.findLast((um) => um * k <= 0.8 * cell) ?? 1;
  const second = PAD + bar * k + 70;
  const axis = 30 + k * reach.out;
  const ruler = axis + k * reach.in + 18;
  const height = ruler + 46;
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby="spots-caption">
      <title>Spots from the middle to the corner</title>
      {points.map(({ radiusMm, seen }, i) => {
        const cx = WORDS + cell * (i + 0.5);
        return (
          <g key={radiusMm} data-radius-mm={radiusMm} class={radiusMm === softest ? 'bites' : undefined}>
            {seen ? (
              <Dots seen={seen} focus={focus} k={k} cx={cx} cy={axis} />
            ) : (
              <text x={cx} y={axis + 4} text-anchor="middle">
                no light
              </text>
            )}
            <path class="ruler" d={`M${cx} ${ruler - 5}V${ruler + 5}`} />
            <text x={cx} y={ruler + 20} text-anchor="middle">
              {short(radiusMm)}
            </text>
            <text x={cx} y={ruler + 38} text-anchor="middle" class="rms">
              {seen ? short(seen[focus].spot.rmsUm) : ''}
            </text>
          </g>
        );
      })}
      <path class="ruler" d={`M${WORDS + cell / 2} ${ruler}H${WORDS + cell * (points.length - 0.5)}`} />
      <text x={2} y={ruler + 20}>
        mm
      </text>
      <text x={2} y={ruler + 38} class="rms">
        µm rms
      </text>
      <g class="bar">
        <path d={`M${PAD} 6V12M${PAD} 9H${PAD + bar * k}M${PAD + bar * k} 6V12`} />
        <text x={PAD + bar * k + 6} y={13}>
          {short(bar)} µm
        </text>
        {airy !== undefined && (
          <>
            <path d={`M${second} 6V12M${second} 9H${second + airy * k}M${second + airy * k} 6V12`} />
            <text x={second + airy * k + 6} y={13}>
              Airy disc
            </text>
          </>
        )}
      </g>
    </svg>
  );
}

/** Dots as an engraver stipples: one path of little circles; outward is up. */
function Dots({ seen, focus, k, cx, cy }: { seen: SeenPoint; focus: Focus; k: number; cx: number; cy: number }) {
  const { xUm, yUm } = seen[focus].spot;
  const r = 1;
  const d = xUm.map(
    (x, i) =>
      `M${(cx + k * x - r).toFixed(1)} ${(cy - k * (yUm[i] as number)).toFixed(1)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`,
  );
  return <path class="dots" d={d.join('')} />;
}

const KEY = 'Diffraction alone makes the Airy disc. Outward is up.';

function captionOf(points: Studied['study']['points'], focus: Focus): string {
  const seen = points.flatMap((p) => (p.seen ? [{ radiusMm: p.radiusMm, rms: p.seen[focus].spot.rmsUm }] : []));
  if (seen.length === 0) return 'No light arrives.';
  const worst = seen.reduce((a, b) => (b.rms > a.rms ? b : a));
  const middle = seen[0] as { rms: number };
  const where =
    worst.radiusMm === 0
      ? 'in the middle'
      : worst.radiusMm === points.at(-1)?.radiusMm
        ? 'in the corner'
        : `${short(worst.radiusMm)} mm from the middle`;
  const taken = `With the picture taken ${FOCI[focus]} a point blurs to ${short(middle.rms)} µm rms in the middle`;
  if (short(middle.rms) === short(worst.rms)) return `${taken} and as much ${where}, and to less between. ${KEY}`;
  return `${taken} and to ${short(worst.rms)} µm ${where}, where it is worst. ${KEY}`;
}
