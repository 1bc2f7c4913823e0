import { computed } from '@preact/signals';
import { DEFAULTS, percent, short } from '../../core/index.ts';
import { DASH } from '../plates/strokes.ts';
import { openView } from '../state/address.ts';
import { answered } from '../state/draft.ts';
import { fieldPointMm } from '../state/field-point.ts';
import { Curve } from './curve.tsx';
import type { Drawing, Line, Mark } from './drawing.ts';
import { apart, type ContrastPoint, contrastSays, isCut, type SubjectContrast, subjectContrast } from './subject-contrast.ts';

const contrast = computed(() => subjectContrast(answered.value, fieldPointMm.value));
const drawing = computed(() => contrast.value && drawingOf(contrast.value));
const rows = computed(() => {
  const finest = contrast.value?.pixelsFinest ?? Number.POSITIVE_INFINITY;
  return contrast.value?.points.filter((_, i) => i > 0 && i % 2 === 0).map((point) => cells(point, finest)) ?? [];
});

const COLUMNS = ['lp/mm at the subject', 'lines apart, µm', 'in the middle', 'sagittal here', 'tangential here', 'with the pixels'];

/** Beyond the finest that the pixels hold what they show are false lines. */
const cells = (p: ContrastPoint, pixelsFinest: number): string[] => [
  short(p.objectLpPerMm),
  apart(p.objectLpPerMm),
  ...[p.middle, p.sagittal, p.tangential].map(percent),
  p.recorded === undefined ? 'not known' : p.objectLpPerMm > pixelsFinest ? 'false' : percent(p.recorded),
];

/** What diffraction and pixels leave of the subject's detail, at the point whose beam is drawn. */
export function Contrast() {
  const { pairing } = answered.value;
  const now = contrast.value;
  return (
    <Curve
      id="contrast-caption"
      says={now ? contrastSays(now) : "How much contrast is left is not known without the relay's clear opening."}
      more={
        now && (
          <>
            {' '}
            In light of {short(pairing.wavelengthNm ?? DEFAULTS.wavelengthNm)} nm, the relay counted as free of faults
            {pairing.relay.glass ? (
              <>
                :{' '}
                <button type="button" class="lead" onClick={() => openView('glass')}>
                  what its glass takes
                </button>{' '}
                stands in a view of its own.
              </>
            ) : (
              '.'
            )}
          </>
        )
      }
      drawing={drawing.value}
      table={{ title: 'The same contrast in numbers', columns: COLUMNS, rows: () => rows.value }}
    />
  );
}

function drawingOf(now: SubjectContrast): Drawing {
  const { points, spoken, finest, pixelsFinest } = now;
  const line = (of: (p: ContrastPoint) => number | undefined): Line['points'] =>
    points.flatMap((p) => {
      const y = of(p);
      return y === undefined ? [] : [{ x: p.objectLpPerMm, y: 100 * Math.max(0, y) }];
    });
  const at = (share: number): number => Math.floor(share * points.length);
  const cut = isCut(now);
  const recorded: Line = {
    points: line((p) => p.recorded),
    dash: DASH.pixels,
    width: 1.6,
    label: { text: 'with the pixels', at: at(0.3), side: 'below' },
  };
  const optics: Line[] = cut
    ? [
        { points: line((p) => p.middle), dash: DASH.perfect, width: 0.8, label: { text: 'in the middle', at: at(0.62), side: 'above' } },
        { points: line((p) => p.sagittal), dash: DASH.sagittal, width: 1.9, label: { text: 'sagittal', at: at(0.16), side: 'above' } },
        {
          points: line((p) => p.tangential),
          dash: DASH.tangential,
          width: 1.9,
          label: { text: 'tangential', at: at(0.5), side: 'below' },
        },
      ]
    : [{ points: line((p) => p.middle), dash: DASH.perfect, width: 1.9, label: { text: 'the lens', at: at(0.4), side: 'above' } }];
  const marks: Mark[] = [
    { along: 'x', at: spoken.objectLpPerMm, text: `${apart(spoken.objectLpPerMm)} µm`, dash: DASH.here },
    ...(pixelsFinest !== undefined && pixelsFinest < finest
      ? [{ along: 'x' as const, at: pixelsFinest, text: 'the pixels end', top: true, dash: DASH.pixels }]
      : []),
    { along: 'x', at: finest, text: 'nothing finer', top: true, dash: DASH.here },
  ];
  return {
    x: { title: 'detail at the subject, lp/mm', least: 0, greatest: 1.03 * finest },
    y: { title: 'contrast' },
    lines: [recorded, ...optics],
    marks,
    bands: [],
  };
}
