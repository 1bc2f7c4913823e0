import { type Band, type BandPoint, threadOf } from '../../core/glassworks.ts';
import { amount, percent, short } from '../../core/index.ts';
import { Canvas } from '../charts/canvas.tsx';
import type { Drawing, Line } from '../charts/drawing.ts';
import { Table } from '../charts/table.tsx';
import { DASH } from '../plates/strokes.ts';
import { answered } from '../state/draft.ts';
import type { Shown } from './shown.ts';

/** What lenses of a class do between them, both ways round, over the infinity space. */
export function BandCurves({ band, shown }: { band: Band; shown: Shown }) {
  const says = captionOf(band, shown);
  const space = amount(answered.value.pairing.infinitySpaceMm);
  return (
    <figure class="plate chart" aria-labelledby="spacing-caption">
      <Canvas drawing={drawingOf(band, shown, space)} says={says} />
      <figcaption id="spacing-caption">{says}</figcaption>
      <Table
        title="The lenses tried, one by one"
        columns={['lens', `best, ${threadOf(false)}`, 'at, mm', `best, ${threadOf(true)}`, 'at that, mm']}
        rows={() =>
          band.tried.map(({ name, best }) => [
            name,
            ...best.flatMap(({ contrast, point }) => [percent(contrast), short(point.infinitySpaceMm)]),
          ])
        }
      />
      <Table
        title="What is left of their faults as close-up lenses"
        columns={[
          'lens',
          'blur over its picture, µm',
          'at worst, µm',
          'in the middle, µm',
          'blue less red focus, mm',
          'yellow less both, mm',
          'edges, mm',
        ]}
        rows={() =>
          band.tried.flatMap(({ name, residuals: r }) =>
            r
              ? [
                  [
                    name,
                    short(r.pictureRmsUm),
                    short(r.worstRmsUm),
                    short(r.sphericalRmsUm, 2),
                    near0(r.axialColourMm),
                    near0(r.secondaryColourMm),
                    r.edgeThicknessesMm.map((mm) => short(mm, 2)).join(', '),
                  ],
                ]
              : [],
          )
        }
      />
    </figure>
  );
}

/** A colour error that is 0 but for rounding reads as 0. */
const near0 = (mm: number): string => (Math.abs(mm) < 1e-6 ? '0' : short(mm, 2));

const rangeOf = (p: BandPoint, shown: Shown): readonly [number, number] | undefined =>
  shown === 'contrast' ? [100 * p.contrast[0], 100 * p.contrast[1]] : p.blurUm;

function drawingOf({ ways, agreed, spacesMm }: Band, shown: Shown, space: number): Drawing {
  const end = (points: readonly BandPoint[], which: 0 | 1): Line['points'] =>
    points.flatMap((p) => {
      const range = rangeOf(p, shown);
      return range ? [{ x: p.infinitySpaceMm, y: range[which] }] : [];
    });
  const ends = ways.map((points) => [end(points, 0), end(points, 1)] as const);
  const mean = (line: Line['points']): number => line.reduce((sum, p) => sum + p.y, 0) / Math.max(1, line.length);
  const above = mean(ends[0]?.[1] ?? []) >= mean(ends[1]?.[1] ?? []) ? 0 : 1;
  const lines = ends.flatMap(([lower, upper], i): Line[] => {
    const dash = i === 0 ? DASH.better : DASH.turned;
    const at = Math.floor(upper.length * 0.6);
    const label = { text: threadOf(i === 1), at, side: i === above ? ('over' as const) : ('under' as const) };
    return [
      { points: upper, dash, width: 1.4, ...(i === above ? { label } : {}) },
      { points: lower, dash, width: 1.4, ...(i === above ? {} : { label }) },
    ];
  });
  const first = ways[0];
  return {
    x: { title: 'infinity space, mm', least: first[0]?.infinitySpaceMm ?? 0, greatest: first.at(-1)?.infinitySpaceMm ?? 1 },
    y:
      shown === 'contrast'
        ? { title: 'contrast' }
        : { title: 'rms blur', unit: 'µm', greatest: Math.max(1, ...ends.flat(2).map((p) => p.y)) },
    lines,
    marks: [{ along: 'x', at: space, text: 'now', dash: DASH.here }],
    bands: agreed !== undefined && spacesMm ? [{ from: spacesMm[0], to: spacesMm[1], text: 'good for all', style: 'solid' }] : [],
    areas: ends.map(([lower, upper], i) => ({ lower, upper, lean: i === 0 ? 1 : -1 })),
  };
}

function captionOf({ ways, tried }: Band, shown: Shown): string {
  const told = ways.map((points, i) => {
    const ranges = points.flatMap((p) => (rangeOf(p, shown) ? [rangeOf(p, shown) as readonly [number, number]] : []));
    if (ranges.length === 0) return `with the ${threadOf(i === 1)} part of the picture gets no light`;
    const lowest = Math.min(...ranges.map((r) => r[0]));
    const highest = Math.max(...ranges.map((r) => r[1]));
    const span =
      shown === 'contrast'
        ? `${short(lowest, 2)} to ${short(highest, 2)} % of the contrast stays`
        : `the blur is ${short(lowest)} to ${short(highest)} µm`;
    return `with the ${threadOf(i === 1)} ${span}`;
  });
  return `Between the ${tried.length} lenses and all places, in the worst point of the picture: ${told.join('; ')}.`;
}
