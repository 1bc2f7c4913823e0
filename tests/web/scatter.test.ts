import { describe, expect, it } from 'vitest';
import type { Choice } from '../../core/choosing.ts';
import type { Answer } from '../../core/index.ts';
import { entriesOf } from '../../web/subject/entries.ts';
import { givesUp } from '../../web/subject/gives-up.ts';
import { scatterOf } from '../../web/subject/scatter.ts';
import { axisOver } from '../../web/subject/scatter-axis.ts';
import { random } from '../support/random.ts';
import { choice } from './a-choice.ts';

describe('the drawing', () => {
  const BOX = { left: 50, top: 20, right: 850, bottom: 400 };
  const XY = ['resolvedDetailUm', 'goodFieldMm'] as const;
  const at = (x: number, y: number, onFrontier = false, i = 0): Choice =>
    choice({ resolvedDetailUm: x, goodFieldMm: y }, { onFrontier, relay: `r${x} ${y} ${i}` });

  it('keeps every dot inside, draws equal dots once, and says of how many it cannot draw anything', () => {
    const r = random(Number(process.env.SEED ?? 5));
    for (let i = 0; i < 50; i++) {
      const all = Array.from({ length: r.integer(1, 30) }, () => at(r.between(0.3, 9), r.between(0.5, 50)));
      const unlimited = { ...at(1, 1), figures: { ...at(1, 1).figures, goodFieldMm: { state: 'unlimited', unit: 'mm' } as Answer } };
      const scatter = scatterOf([...all, unlimited], entriesOf([...all, unlimited]), XY, BOX);
      expect(scatter?.left).toBe(1);
      expect(scatter?.points.flatMap(({ places }) => places).length).toBe(all.length);
      for (const { x, y } of scatter?.points ?? []) {
        expect(x).toBeGreaterThan(BOX.left);
        expect(x).toBeLessThan(BOX.right);
        expect(y).toBeGreaterThan(BOX.top);
        expect(y).toBeLessThan(BOX.bottom);
      }
    }
    const twice = [at(1, 1, false, 1), at(1, 1, true, 2), at(2, 2)];
    const drawn = scatterOf(twice, entriesOf(twice), XY, BOX);
    expect(drawn?.points.map(({ places, onFrontier }) => [places, onFrontier])).toEqual([
      [[0, 1], true],
      [[2], false],
    ]);
    expect(scatterOf([], [], XY, BOX)).toBeUndefined();
  });
  it('steps its line so that no dot lies beyond it and every one of the frontier lies on it', () => {
    const r = random(Number(process.env.SEED ?? 6));
    for (let i = 0; i < 40; i++) {
      const raw = Array.from({ length: r.integer(2, 25) }, () => [r.between(0.3, 3), r.between(0.5, 5)] as const);
      const beaten = ([x, y]: readonly [number, number]): boolean => raw.some(([a, b]) => a <= x && b >= y && (a < x || b > y));
      const all = raw.map((point) => at(point[0], point[1], !beaten(point)));
      const scatter = scatterOf(all, entriesOf(all), XY, BOX);
      if (!scatter) throw new Error('no drawing');
      const first = scatter.points.filter(({ onFrontier }) => onFrontier);
      if (first.length < 2) {
        expect(scatter.line).toBe('');
        continue;
      }
      const corners = [...scatter.line.matchAll(/M([\d.]+) ([\d.]+)|H([\d.]+)V([\d.]+)/g)].map((m) => ({
        x: Number(m[1] ?? m[3]),
        y: Number(m[2] ?? m[4]),
      }));
      expect(corners).toHaveLength(first.length);
      // Finer is to the left, a wider field is up: the line's height at x is that of the last corner at or left of it.
      const heightAt = (x: number): number => corners.filter((c) => c.x <= x + 0.06).at(-1)?.y ?? Number.POSITIVE_INFINITY;
      for (const { x, y, onFrontier } of scatter.points) {
        expect(y).toBeGreaterThanOrEqual(heightAt(x) - 0.06);
        if (onFrontier) expect(corners.some((c) => Math.abs(c.x - x) < 0.06 && Math.abs(c.y - y) < 0.06)).toBe(true);
      }
    }
  });
  it('writes numbers over no dot and over no other number', () => {
    const r = random(7);
    const all = Array.from({ length: 40 }, (_, i) => at(r.between(0.3, 9), r.between(0.5, 5), i < 6));
    const scatter = scatterOf(all, entriesOf(all), XY, BOX);
    const boxes = (scatter?.labels ?? []).map(({ x, y, text, anchor }) => {
      const width = 7 * text.length;
      return { left: anchor === 'start' ? x : x - width, right: anchor === 'start' ? x + width : x, y };
    });
    expect(boxes.length).toBeGreaterThan(10);
    for (const [i, a] of boxes.entries()) {
      for (const b of boxes.slice(i + 1)) expect(a.right < b.left || b.right < a.left || Math.abs(a.y - b.y) >= 14).toBe(true);
      for (const p of scatter?.points ?? []) expect(p.x < a.left || p.x > a.right || Math.abs(p.y - a.y) > 5).toBe(true);
    }
  });
  it('steps an axis evenly, and by ratio where it goes far', () => {
    const even = axisOver([1, 6], 0, 600);
    expect(even.stepped).toBe('evenly');
    // 6 % of the spread are left free on either side.
    expect(even.at(1)).toBeCloseTo((600 * 0.3) / 5.6, 9);
    expect(even.at(6)).toBeCloseTo((600 * 5.3) / 5.6, 9);
    expect(even.ticks.map(({ text }) => text)).toEqual(['1', '2', '3', '4', '5', '6']);
    const far = axisOver([0.5, 50], 0, 600);
    expect(far.stepped).toBe('by ratio');
    expect(far.ticks.map(({ text }) => text)).toEqual(['0.5', '1', '2', '5', '10', '20', '50']);
    expect(far.at(5) - far.at(0.5)).toBeCloseTo(far.at(50) - far.at(5), 9);
    expect(axisOver([3, 3], 0, 600).ticks.length).toBeGreaterThan(0);
  });
  it('says what is given up for what, and where nothing has to be', () => {
    const all = [at(1, 2, true), at(1.5, 3, true), at(2, 5, true), at(3, 1)];
    expect(givesUp(all, entriesOf(all), XY)).toBe(
      'From 1 to 3 good field at the subject goes from 2 mm to 5 mm, and finest separation recorded from 1 mm to 2 mm: who wants more of one gives up some of the other.',
    );
    const one = [at(2, 4), at(1, 5, true)];
    expect(givesUp(one, entriesOf(one), XY)).toMatch(/^Here nothing has to be given up: 2 is as good as any/);
    expect(givesUp([at(1, 1)], entriesOf([at(1, 1)]), XY)).toBe('');
  });
});
