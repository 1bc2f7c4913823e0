import type { Chart } from 'chart.js';
import type { Mark } from './drawing.ts';
import type { Ink } from './ink.ts';

/** Words that stand already: their left, baseline and width, px. */
export interface Words {
  x: number;
  y: number;
  width: number;
}

/** Moved up and down by so much at a time until nothing else is in the way, px. */
const LINE_PX = 16;
const TRIES = [0, -1, 1, -2, 2, -3, 3];

/** Words kept inside the chart and off the others, on a piece of paper that no line runs through. */
export function placed(chart: Chart, ink: Ink, text: string, x: number, y: number, others: Words[]): void {
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
export interface Named {
  text: string;
  x: number;
  y: number;
  width: number;
  bites: boolean;
}

const ROW_PX = 17;

/** Beside its mark, at the foot or the head of the chart, in the first row where no other name is in the way. */
export function nameOf({ ctx, chartArea: area, scales }: Chart, { at, text, top, bites = false }: Mark, others: readonly Named[]): Named {
  const width = ctx.measureText(text).width;
  const line = scales.x?.getPixelForValue(at) ?? 0;
  const x = line + 8 + width < area.right ? line + 5 : line - width - 5;
  const row = (n: number): number => (top ? area.top + 12 + ROW_PX * n : area.bottom - 8 - ROW_PX * n);
  let n = 0;
  const inTheWay = (other: Named): boolean => other.y === row(n) && other.x < x + width + 6 && x < other.x + other.width + 6;
  while (n < 5 && others.some(inTheWay)) n++;
  return { text, x, y: row(n), width, bites };
}
