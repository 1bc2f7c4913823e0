import {
  Chart,
  type ChartData,
  type ChartOptions,
  LinearScale,
  LineController,
  LineElement,
  type Plugin,
  type Point,
  PointElement,
} from 'chart.js';
import type { Area, Band, Drawing, Mark } from './drawing.ts';
import type { Ink } from './ink.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale);

/** Draws on a canvas; the returned handle is drawn anew by `show` and taken down by `destroy`. */
export interface Drawn {
  show(drawing: Drawing, ink: Ink): void;
  destroy(): void;
}

export function draw(canvas: HTMLCanvasElement): Drawn {
  let chart: Chart | undefined;
  let showing: Showing;
  return {
    show(drawing, ink) {
      showing = { drawing, ink };
      if (!chart) {
        chart = new Chart(canvas, { type: 'line', data: dataOf(showing), options: optionsOf(showing), plugins: [written(() => showing)] });
        return;
      }
      chart.data = dataOf(showing);
      chart.options = optionsOf(showing);
      chart.update('none');
    },
    destroy: () => chart?.destroy(),
  };
}

interface Showing {
  drawing: Drawing;
  ink: Ink;
}

const dataOf = ({ drawing, ink }: Showing): ChartData<'line'> => ({
  datasets: drawing.lines.map((line) => ({
    data: line.points as Point[],
    borderColor: ink.ink,
    borderWidth: line.width,
    borderDash: line.dash as number[],
    pointRadius: 0,
    tension: 0,
  })),
});

function optionsOf({ drawing, ink }: Showing): ChartOptions<'line'> {
  const font = { family: ink.font, size: 13 };
  const axis = {
    grid: { display: false },
    border: { color: ink.ink, width: 1 },
    ticks: { color: ink.ink, font, maxRotation: 0, includeBounds: false },
  };
  return {
    animation: false,
    responsive: true,
    maintainAspectRatio: false,
    parsing: false,
    normalized: true,
    events: [],
    layout: { padding: { top: drawing.bands.length > 0 ? 26 : 16, right: 10 } },
    plugins: { legend: { display: false }, tooltip: { enabled: false } },
    scales: {
      x: {
        ...axis,
        type: 'linear',
        min: drawing.x.least,
        max: drawing.x.greatest,
        title: { display: true, text: drawing.x.title, color: ink.ink, font },
      },
      y: {
        ...axis,
        type: 'linear',
        min: 0,
        max: 1.06 * (drawing.y.greatest ?? 100),
        ticks: {
          ...axis.ticks,
          ...(drawing.y.greatest === undefined ? { stepSize: 25 } : { maxTicksLimit: 6 }),
          callback: (value) => `${value} ${drawing.y.unit ?? '%'}`,
        },
        title: { display: true, text: drawing.y.title, color: ink.ink, font },
      },
    },
  };
}

/** Marks, bands and the lines' own names, in the page's ink. */
function written(showing: () => Showing): Plugin {
  return {
    id: 'written',
    beforeDatasetsDraw(chart) {
      const { drawing, ink } = showing();
      for (const area of drawing.areas ?? []) drawArea(chart, area, ink);
    },
    afterDraw(chart) {
      const { drawing, ink } = showing();
      const { ctx } = chart;
      ctx.save();
      ctx.font = `13px ${ink.font}`;
      const named: Named[] = [];
      const words: Words[] = [];
      for (const mark of drawing.marks) {
        drawMark(chart, mark, ink);
        if (mark.along === 'x') named.push(nameOf(chart, mark, named));
        else placed(chart, ink, mark.text, chart.chartArea.left + 6, px(chart, 'y', mark.at) - 5, words);
      }
      // Names come last, so that no other mark runs through them.
      for (const { text, x, y, bites } of named) {
        ctx.fillStyle = bites ? ink.accent : ink.ink;
        placed(chart, ink, text, x, y, words);
      }
      for (const band of drawing.bands) drawBand(chart, band, ink);
      for (const { label, points } of drawing.lines) {
        const point = label && points[label.at];
        if (!label || !point) continue;
        ctx.fillStyle = ink.ink;
        ctx.font = `italic 14px ${ink.font}`;
        const x = px(chart, 'x', point.x);
        const y = px(chart, 'y', point.y);
        const width = ctx.measureText(label.text).width;
        const at = {
          end: [x + 6, y + 4],
          before: [x - 8 - width, y - 2],
          after: [x + 8, y + 16],
          above: [x + 9, y - 3],
          below: [x - 7 - width, y + 13],
          over: [x - width / 2, y - 9],
          under: [x - width / 2, y + 19],
        } as const;
        placed(chart, ink, label.text, ...at[label.side], words);
      }
      ctx.restore();
    },
  };
}

const px = (chart: Chart, axis: 'x' | 'y', value: number): number => chart.scales[axis]?.getPixelForValue(value) ?? 0;

/** Words that stand already: their left, baseline and width, px. */
interface Words {
  x: number;
  y: number;
  width: number;
}

/** Moved up and down by so much at a time until nothing else is in the way, px. */
const LINE_PX = 16;
const TRIES = [0, -1, 1, -2, 2, -3, 3];

/** Words kept inside the chart and off the others, on a piece of paper that no line runs through. */
function placed(chart: Chart, ink: Ink, text: string, x: number, y: number, others: Words[]): void {
  const { ctx, chartArea: area } = chart;
  const width = ctx.measureText(text).width;
  const left = Math.max(area.left + 3, Math.min(area.right - width - 2, x));
  const within = (base: number): number => Math.min(area.bottom - 5, Math.max(area.top + 12, base));
  const free = (base: number): boolean =>
    !others.some((o) => Math.abs(o.y - base) < LINE_PX - 2 && o.x < left + width + 4 && left < o.x + o.width + 4);
  const base = within(y + LINE_PX * (TRIES.find((n) => free(within(y + LINE_PX * n))) ?? 0));
  others.push({ x: left, y: base, width });
  const written = ctx.fillStyle;
  ctx.fillStyle = ink.paper;
  ctx.fillRect(left - 3, base - 11, width + 6, 15);
  ctx.fillStyle = written;
  ctx.fillText(text, left, base);
}

/** The name of an upright mark, where it is written. */
interface Named {
  text: string;
  x: number;
  y: number;
  width: number;
  bites: boolean;
}

const ROW_PX = 17;

/** Beside its mark, at the foot or the head of the chart, in the first row where no other name is in the way. */
function nameOf({ ctx, chartArea: area, scales }: Chart, { at, text, top, bites = false }: Mark, others: readonly Named[]): Named {
  const width = ctx.measureText(text).width;
  const line = scales.x?.getPixelForValue(at) ?? 0;
  const x = line + 8 + width < area.right ? line + 5 : line - width - 5;
  const row = (n: number): number => (top ? area.top + 12 + ROW_PX * n : area.bottom - 8 - ROW_PX * n);
  let n = 0;
  const inTheWay = (other: Named): boolean => other.y === row(n) && other.x < x + width + 6 && x < other.x + other.width + 6;
  while (n < 5 && others.some(inTheWay)) n++;
  return { text, x, y: row(n), width, bites };
}

function drawMark(chart: Chart, mark: Mark, ink: Ink): void {
  const { ctx, chartArea: area } = chart;
  const at = px(chart, mark.along, mark.at);
  ctx.strokeStyle = mark.bites ? ink.accent : ink.ink;
  ctx.fillStyle = mark.bites ? ink.accent : ink.ink;
  ctx.lineWidth = mark.bites ? 1.5 : 1;
  ctx.setLineDash([...(mark.dash ?? [])]);
  ctx.beginPath();
  if (mark.along === 'x') {
    ctx.moveTo(at, area.top);
    ctx.lineTo(at, area.bottom);
  } else {
    ctx.moveTo(area.left, at);
    ctx.lineTo(area.right, at);
  }
  ctx.stroke();
  ctx.setLineDash([]);
  if (mark.along === 'x' && mark.point !== undefined) prick(chart, ink, at, px(chart, 'y', mark.point));
}

/** A point as the sensor's drawing has it: an open ring with a prick in it. */
function prick({ ctx }: Chart, ink: Ink, x: number, y: number): void {
  ctx.beginPath();
  ctx.arc(x, y, 4.5, 0, 2 * Math.PI);
  ctx.fillStyle = ink.paper;
  ctx.fill();
  ctx.lineWidth = 1.5;
  ctx.stroke();
  ctx.beginPath();
  ctx.arc(x, y, 1.1, 0, 2 * Math.PI);
  ctx.fillStyle = ink.ink;
  ctx.fill();
}

const HATCH_PX = 5;

/** Hatching between two lines. */
function drawArea(chart: Chart, { lower, upper, lean }: Area, ink: Ink): void {
  const { ctx, chartArea: area } = chart;
  if (lower.length < 2) return;
  ctx.save();
  ctx.beginPath();
  for (const { x, y } of [...upper, ...lower.toReversed()]) ctx.lineTo(px(chart, 'x', x), px(chart, 'y', y));
  ctx.clip();
  ctx.strokeStyle = ink.hair;
  ctx.lineWidth = 0.8;
  ctx.beginPath();
  const height = area.bottom - area.top;
  for (let x = area.left - height; x < area.right + height; x += HATCH_PX) {
    ctx.moveTo(x, area.bottom);
    ctx.lineTo(x + lean * height, area.top);
  }
  ctx.stroke();
  ctx.restore();
}

/** A bar above the picture: thick where it covers, dotted where it is open, thin where it crops. */
function drawBand(chart: Chart, band: Band, ink: Ink): void {
  const { ctx, chartArea: area } = chart;
  const from = px(chart, 'x', band.from);
  const to = px(chart, 'x', band.to);
  const y = area.top - 5;
  ctx.strokeStyle = ink.ink;
  ctx.fillStyle = ink.ink;
  ctx.lineWidth = band.style === 'solid' ? 4 : band.style === 'dotted' ? 2 : 0.75;
  ctx.setLineDash(band.style === 'dotted' ? [2, 4] : []);
  ctx.beginPath();
  ctx.moveTo(from + 1, y);
  ctx.lineTo(to - 1, y);
  ctx.stroke();
  ctx.setLineDash([]);
  const width = ctx.measureText(band.text).width;
  if (width < to - from) ctx.fillText(band.text, (from + to - width) / 2, y - 7);
}
