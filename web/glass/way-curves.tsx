import type { Advice, SpacingPoint } from '../../core/glassworks.ts';
import { amount, percent, short } from '../../core/index.ts';
import { Canvas } from '../charts/canvas.tsx';
import type { Drawing, Line } from '../charts/drawing.ts';
import { Table } from '../charts/table.tsx';
import { DASH } from '../plates/strokes.ts';
import { answered } from '../state/draft.ts';
import type { Shown } from './shown.ts';

/** The relay's own glass, both ways round, over the infinity space. */
export function WayCurves({ advice, shown }: { advice: Advice; shown: Shown }) {
  const { pairing } = answered.value;
  const stack = pairing.sharp?.focus === 'stack';
  const says = captionOf(advice, shown, stack);
  const [a, b] = advice.ways;
  const cells = (p: SpacingPoint | undefined): string[] => {
    const blur = p && blurOf(p, stack);
    return p ? [percent(contrastOf(p, stack)), blur === undefined ? 'no light' : short(blur)] : ['', ''];
  };
  return (
    <figure class="plate chart" aria-labelledby="spacing-caption">
      <Canvas drawing={drawingOf(advice, shown, stack, amount(pairing.infinitySpaceMm))} says={says} />
      <figcaption id="spacing-caption">{says}</figcaption>
      <Table
        title="The same places in numbers"
        columns={[
          'infinity space, mm',
          `contrast, ${side(a)}`,
          `blur in µm, ${side(a)}`,
          `contrast, ${side(b)}`,
          `blur in µm, ${side(b)}`,
          'light in the corner',
        ]}
        rows={() => a.points.map((p, i) => [short(p.infinitySpaceMm, 4), ...cells(p), ...cells(b.points[i]), percent(p.cornerLight)])}
      />
    </figure>
  );
}

/** In short: by its side, or by its thread where both sides are as strong. */
const side = ({ standing }: Advice['ways'][number]): string => standing.split(',')[0] as string;
const contrastOf = (p: SpacingPoint, stack: boolean): number => (stack ? p.stack : p.oneFrame);
const blurOf = (p: SpacingPoint, stack: boolean): number | undefined => (stack ? p.stackBlurUm : p.oneFrameBlurUm);

/** Below this the corner loses light that is worth a line. */
const FULL = 0.995;

function drawingOf({ ways, better }: Advice, shown: Shown, stack: boolean, space: number): Drawing {
  const line = (i: 0 | 1): Line['points'] =>
    ways[i].points.flatMap((p) => {
      const y = shown === 'contrast' ? 100 * contrastOf(p, stack) : blurOf(p, stack);
      return y === undefined ? [] : [{ x: p.infinitySpaceMm, y }];
    });
  const points = [line(0), line(1)] as const;
  const mean = (line: Line['points']): number => line.reduce((sum, p) => sum + p.y, 0) / Math.max(1, line.length);
  const upper = mean(points[0]) >= mean(points[1]) ? 0 : 1;
  const own = ways[better];
  const { withinMm, point } = own.best;
  const light = own.points.map((p) => ({ x: p.infinitySpaceMm, y: 100 * p.cornerLight }));
  const lines = ([0, 1] as const).map((i): Line => {
    const own = points[i];
    const good = i === better;
    const text = side(ways[i]);
    return {
      points: own,
      dash: good ? DASH.better : DASH.turned,
      width: good ? 1.9 : 1.4,
      label: { text, at: Math.floor(own.length * 0.72), side: i === upper ? 'over' : 'under' },
    };
  });
  const dims = shown === 'contrast' && own.points.some((p) => p.cornerLight < FULL);
  return {
    x: { title: 'infinity space, mm', least: own.points[0]?.infinitySpaceMm ?? 0, greatest: own.points.at(-1)?.infinitySpaceMm ?? 1 },
    y:
      shown === 'contrast'
        ? { title: 'contrast' }
        : { title: 'rms blur', unit: 'µm', greatest: Math.max(1, ...points.flat().map((p) => p.y)) },
    lines: [
      ...lines,
      ...(dims
        ? [
            {
              points: light,
              dash: DASH.light,
              width: 1,
              label: { text: 'light in the corner', at: Math.floor(light.length * 0.35), side: 'under' as const },
            },
          ]
        : []),
    ],
    marks: [
      { along: 'x', at: point.infinitySpaceMm, text: 'best' },
      { along: 'x', at: space, text: 'now', dash: DASH.here, bites: space < withinMm[0] || space > withinMm[1] },
    ],
    bands: [{ from: withinMm[0], to: withinMm[1], text: 'within a tenth', style: 'solid' }],
  };
}

/** Less contrast than this is not worth a number. */
const HARDLY = 0.1;

function captionOf({ ways, better }: Advice, shown: Shown, stack: boolean): string {
  const [good, other] = [ways[better], ways[better === 0 ? 1 : 0]];
  const tell = (p: SpacingPoint): string => {
    if (shown === 'contrast') return `keeps ${percent(contrastOf(p, stack))} of its contrast`;
    const blur = blurOf(p, stack);
    return blur === undefined ? 'gets no light' : `blurs to ${short(blur)} µm`;
  };
  const { point, withinMm } = good.best;
  const turned =
    shown === 'contrast' && contrastOf(other.best.point, stack) < HARDLY
      ? 'The other way round hardly any contrast is left wherever it stands.'
      : `The other way round it ${tell(other.best.point)} where it is best, at ${short(other.best.point.infinitySpaceMm)} mm.`;
  return `The worst point of the picture ${tell(point)} at ${short(point.infinitySpaceMm)} mm, ${good.standing}; from ${Math.round(withinMm[0])} to ${Math.round(withinMm[1])} mm it is within a tenth of the best. ${turned}`;
}
