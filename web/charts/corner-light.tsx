import { computed } from '@preact/signals';
import { DEFAULTS, numberIn, percent, type Report, short } from '../../core/index.ts';
import { answered, report } from '../state/draft.ts';
import { cornerOf } from '../state/vary.ts';
import { Canvas } from './canvas.tsx';
import type { Drawing } from './drawing.ts';
import { Table } from './table.tsx';

const drawing = computed((): Drawing => {
  const { pairing } = answered.value;
  const { vignetting, coverage } = report.value;
  const corner = cornerOf(pairing);
  const threshold = 100 * (pairing.litThreshold ?? DEFAULTS.litThreshold);
  const bites = coverage.bites === 'lit';
  return {
    x: { title: 'distance from the middle of the picture, mm', least: 0, greatest: vignetting.curve.at(-1)?.radiusMm ?? corner },
    y: { title: 'light' },
    lines: [{ points: vignetting.curve.map(({ radiusMm: x, relativeIllumination: E }) => ({ x, y: 100 * E })), dash: [], width: 1.75 }],
    marks: [
      { along: 'y', at: threshold, text: `lit from ${short(threshold)} %`, bites, dash: [6, 3] },
      { along: 'x', at: corner, text: 'the corner', dash: [2, 3] },
    ],
    bands: [],
  };
});

/** How the light falls from the middle to the corner. */
export function CornerLight() {
  const says = captionOf(report.value, cornerOf(answered.value.pairing));
  const { curve } = report.value.vignetting;
  const every = Math.max(1, Math.ceil(curve.length / 32));
  return (
    <figure class="plate chart" aria-labelledby="light-caption">
      {curve.length > 0 && <Canvas drawing={drawing.value} says={says} />}
      <figcaption id="light-caption">{says}</figcaption>
      {curve.length > 0 && (
        <Table
          title="The same light in numbers"
          columns={['from the middle, mm', 'light', 'loss, stops']}
          rows={curve
            .filter((_, i) => i % every === 0 || i === curve.length - 1)
            .map(({ radiusMm, relativeIllumination: E, lossEv }) => [
              short(radiusMm, 4),
              percent(E),
              lossEv === undefined ? 'no light' : short(lossEv, 3),
            ])}
        />
      )}
    </figure>
  );
}

function captionOf({ vignetting, figures }: Report, corner: number): string {
  const E = numberIn(figures.cornerIllumination);
  if (E === undefined) return "How the light falls toward the corner is not known without the relay's clear opening.";
  const onset = numberIn(vignetting.onsetRadiusMm) ?? Number.POSITIVE_INFINITY;
  if (onset >= corner) return `The light is even out to the corner, ${short(corner)} mm from the middle.`;
  const half = numberIn(vignetting.halfRadiusMm) ?? Number.POSITIVE_INFINITY;
  const dark = numberIn(vignetting.cutoffRadiusMm) ?? Number.POSITIVE_INFINITY;
  const steps = [
    `The light begins to fall ${short(onset)} mm from the middle`,
    ...(half < corner ? [`is halved at ${short(half)} mm`] : []),
    ...(dark < corner ? [`is gone at ${short(dark)} mm`] : []),
  ];
  const end = E < 0.001 ? 'the corner gets none' : `the corner keeps ${percent(E)}`;
  return `${steps.join(', ')}; ${end}.`;
}
