import { Chart, type ChartData, type ChartOptions, LinearScale, LineController, LineElement, type Point, PointElement } from 'chart.js';
import type { Drawing } from './drawing.ts';
import type { Ink } from './ink.ts';
import { type Showing, written } from './written.ts';

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
