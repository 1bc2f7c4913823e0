import { computed } from '@preact/signals';
import { DEFAULTS, numberIn, percent, type Report, relativeIllumination, scaleOf, short, stopsOf } from '../../core/index.ts';
import { CIRCLE_DASH, DASH } from '../plates/strokes.ts';
import { answered, report } from '../state/draft.ts';
import { fieldPoint, fieldPointMm } from '../state/field-point.ts';
import { cornerOf } from '../state/vary.ts';
import { Curve } from './curve.tsx';
import type { Drawing, Mark } from './drawing.ts';

const drawing = computed((): Drawing | undefined => {
  const { pairing } = answered.value;
  const { vignetting, coverage } = report.value;
  if (vignetting.curve.length === 0) return undefined;
  const corner = cornerOf(pairing);
  const threshold = 100 * (pairing.litThreshold ?? DEFAULTS.litThreshold);
  const bites = coverage.bites === 'lit';
  return {
    x: { title: 'distance from the middle of the picture, mm', least: 0, greatest: vignetting.curve.at(-1)?.radiusMm ?? corner },
    y: { title: 'light' },
    lines: [
      { points: vignetting.curve.map(({ radiusMm: x, relativeIllumination: E }) => ({ x, y: 100 * E })), dash: DASH.light, width: 1.75 },
    ],
    marks: [{ along: 'y', at: threshold, text: `lit from ${short(threshold)} %`, bites, dash: CIRCLE_DASH.lit }, ...pointMarks(corner)],
    bands: [],
  };
});

/** The corner, and the point whose beam is drawn: one mark where they are the same. */
function pointMarks(corner: number): Mark[] {
  const stops = stopsOf(answered.value.sheet);
  const radius = fieldPointMm.value;
  const E = stops ? relativeIllumination(stops.seen, radius / scaleOf(stops.rig)) : undefined;
  const light = E === undefined ? '' : `: ${percent(E)}`;
  const end: Mark = { along: 'x', at: corner, text: 'the corner', dash: DASH.here };
  if (fieldPoint.value === 1) return [{ ...end, text: `the corner${light}` }];
  return [end, { along: 'x', at: radius, text: `${short(radius)} mm${light}`, point: E === undefined ? undefined : 100 * E }];
}

const rows = computed(() => {
  const { curve } = report.value.vignetting;
  const every = Math.max(1, Math.ceil(curve.length / 32));
  return curve
    .filter((_, i) => i % every === 0 || i === curve.length - 1)
    .map(({ radiusMm, relativeIllumination: E, lossEv }) => [
      short(radiusMm, 4),
      percent(E),
      lossEv === undefined ? 'no light' : short(lossEv, 3),
    ]);
});

/** How the light falls from the middle to the corner. */
export function CornerLight() {
  return (
    <Curve
      id="light-caption"
      says={captionOf(report.value, cornerOf(answered.value.pairing))}
      drawing={drawing.value}
      table={{ title: 'The same light in numbers', columns: ['from the middle, mm', 'light', 'loss, stops'], rows: () => rows.value }}
    />
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
