import { useMemo, useState } from 'preact/hooks';
import { contrastAgainstDetail, type DetailPoint } from '../../core/glassworks.ts';
import { amount, numberIn, percent, short } from '../../core/index.ts';
import { Canvas } from '../charts/canvas.tsx';
import type { Drawing } from '../charts/drawing.ts';
import { Table } from '../charts/table.tsx';
import { DASH } from '../plates/strokes.ts';
import type { Studied } from './studied.ts';

const STEPS = 40;
const FOCI = { oneFrame: 'in one frame', stack: 'in a stack' } as const;
type Focus = keyof typeof FOCI;

/** Contrast against detail at the subject, at one point of the picture. */
export function Detail({ studied }: { studied: Studied }) {
  const { study, judging, for: evaluation } = studied;
  const last = study.points.length - 1;
  const [place, setPlace] = useState(last);
  const [focus, setFocus] = useState<Focus>(judging.focus === 'stack' ? 'stack' : 'oneFrame');
  const point = study.points[Math.min(place, last)] as Studied['study']['points'][number];
  const curve = useMemo(() => curveOf(studied, point, focus), [studied, point, focus]);
  const m = numberIn(evaluation.answers.systemMagnification) ?? 1;
  const judged = study.frequency * m;
  const says = captionOf(curve, judged, where(point.radiusMm, place, last), FOCI[focus]);
  return (
    <figure class="plate chart" aria-labelledby="detail-caption">
      <div class="choosers">
        <label>
          at{' '}
          <select value={String(place)} onChange={({ currentTarget }) => setPlace(Number(currentTarget.value))}>
            {study.points.map(({ radiusMm }, i) => (
              <option key={radiusMm} value={String(i)}>
                {where(radiusMm, i, last)}
              </option>
            ))}
          </select>
        </label>
        <label>
          focused{' '}
          <select value={focus} onChange={({ currentTarget }) => setFocus(currentTarget.value as Focus)}>
            {Object.entries(FOCI).map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </label>
      </div>
      {curve.length > 1 && <Canvas drawing={drawingOf(curve, judged)} says={says} />}
      <figcaption id="detail-caption">{says}</figcaption>
      <Table
        title="The same contrast in numbers"
        columns={['lp/mm at the subject', 'lines apart, µm', 'sagittal, %', 'tangential, %', 'perfect, %', 'pixel, %']}
        rows={() =>
          curve
            .filter((_, i) => i % 2 === 0 || i === curve.length - 1)
            .map((p) => [
              short(p.objectLpPerMm),
              short(1000 / p.objectLpPerMm),
              ...[p.sagittal, p.tangential, p.perfect, p.pixel].map((c) => short(100 * c, 2)),
            ])
        }
      />
    </figure>
  );
}

const where = (radiusMm: number, i: number, last: number): string =>
  i === 0 ? 'the middle' : i === last ? `the corner, ${short(radiusMm)} mm` : `${short(radiusMm)} mm from the middle`;

function curveOf({ for: evaluation, judging, study }: Studied, point: Studied['study']['points'][number], focus: Focus): DetailPoint[] {
  if (!point.seen) return [];
  const { pairing, answers } = evaluation;
  const cutoff = numberIn(answers.cutoffImageLpPerMm) ?? 0;
  return contrastAgainstDetail(judging, {
    infinitySpaceMm: amount(pairing.infinitySpaceMm),
    radiusMm: point.radiusMm,
    focusMm: focus === 'stack' ? point.seen.focusMm : study.flatFocusMm,
    magnification: numberIn(answers.systemMagnification) ?? 1,
    pixelMm: judging.pixelUm / 1000,
    frequencies: Array.from({ length: STEPS }, (_, i) => (cutoff * (i + 0.5)) / STEPS),
  });
}

function drawingOf(curve: readonly DetailPoint[], judged: number): Drawing {
  const line = (of: (p: DetailPoint) => number | undefined) =>
    curve.flatMap((p) => {
      const y = of(p);
      return y === undefined ? [] : [{ x: p.objectLpPerMm, y: 100 * Math.max(0, y) }];
    });
  const at = (share: number): number => Math.floor(share * curve.length);
  return {
    x: { title: 'detail at the subject, lp/mm', least: 0, greatest: (curve.at(-1)?.objectLpPerMm ?? 1) * 1.01 },
    y: { title: 'contrast' },
    lines: [
      { points: line((p) => p.perfect), dash: DASH.perfect, width: 0.8, label: { text: 'perfect', at: at(0.55), side: 'after' } },
      { points: line((p) => p.pixel), dash: DASH.pixels, width: 1, label: { text: 'pixel', at: at(0.6), side: 'after' } },
      { points: line((p) => p.sagittal), dash: DASH.sagittal, width: 1.9, label: { text: 'sagittal', at: at(0.2), side: 'after' } },
      { points: line((p) => p.tangential), dash: DASH.tangential, width: 1.9, label: { text: 'tangential', at: at(0.1), side: 'before' } },
    ],
    marks: [{ along: 'x', at: judged, text: 'judged', dash: DASH.here }],
    bands: [],
  };
}

function captionOf(curve: readonly DetailPoint[], judged: number, place: string, focused: string): string {
  const near = curve.findLast((p) => p.objectLpPerMm <= judged) ?? curve[0];
  if (!near) return `No light arrives at ${place}.`;
  const low = Math.min(near.sagittal, near.tangential);
  const apart = 1000 / judged;
  return `At ${place}, ${focused}, lines ${short(apart, 2)} µm apart at the subject keep ${short(100 * low, 2)} % of their contrast in the worse direction; without the relay’s faults they would keep ${short(100 * near.perfect, 2)} %, of which that is ${percent(Math.max(0, low) / near.perfect)}.`;
}
