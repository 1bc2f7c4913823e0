import type { Chart } from 'chart.js';
import type { Area, Band, Mark } from './drawing.ts';
import type { Ink } from './ink.ts';

export const px = (chart: Chart, axis: 'x' | 'y', value: number): number => chart.scales[axis]?.getPixelForValue(value) ?? 0;

export function drawMark(chart: Chart, mark: Mark, ink: Ink): void {
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
export function drawArea(chart: Chart, { lower, upper, lean }: Area, ink: Ink): void {
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
export function drawBand(chart: Chart, band: Band, ink: Ink): void {
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
