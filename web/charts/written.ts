import type { Plugin } from 'chart.js';
import type { Drawing } from './drawing.ts';
import type { Ink } from './ink.ts';
import { drawArea, drawBand, drawMark, px } from './marks.ts';
import { type Named, nameOf, placed, type Words } from './words-on-chart.ts';

export interface Showing {
  drawing: Drawing;
  ink: Ink;
}

/** Marks, bands and the lines' own names, in the page's ink. */
export function written(showing: () => Showing): Plugin {
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
